// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/length.h"
#include "core/base/mass.h"
#include "core/member/member.h"

#include <optional>

namespace levelbar {

enum class PushUpKind {
    Floor,
    HandRelease, // on the floor; its reps are a scale of their own
    HandsRaised, // on a bar, box or bench at a height
    Wall,        // standing: hands higher than the formula reaches
    Knees,
    FeetRaised,
};

// One variation of the push-up, with its load.
struct PushUp {
    PushUpKind kind = PushUpKind::Floor;
    // Of the hands (HandsRaised) or feet (FeetRaised) over the floor; 0 with any other kind.
    Length height;
    Mass added; // vest or plate on the upper back

    friend bool operator==(const PushUp&, const PushUp&) = default;
};

// Who does it, on the day it is done.
struct Presser {
    std::optional<Sex> sex; // not known: midway between both
    Length stature;
    Mass bodyMass; // on that day
};

} // namespace levelbar
