// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/floor/class_floor.h"
#include "core/review/wording.h"

#include <string>
#include <vector>

namespace levelbar {

// What one entry did: the hour afterwards, the sets to be stored (a set of the same person,
// exercise, side and number takes the place of the earlier one), and a sentence.
struct FloorChange {
    ClassFloor floor;
    std::vector<DoneSet> recorded;
    Phrase said;
};

// "14 Mara"; without a name "14".
[[nodiscard]] std::string calledOut(const FloorPerson& person);

// "60 kg × 9, 2 in reserve", "12.5 kg, tried", "9 reps" without a load.
[[nodiscard]] std::string setText(const PerformedSet& set);

// "60 kg", "135 lb".
[[nodiscard]] std::string loadText(const Mass& load);

} // namespace levelbar
