// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/floor/floor_model.h"
#include "ui/floor/floor_writer.h"

#include <QString>

namespace levelbar::ui {

// "Mara Linden, Barbell bench press, set 2: 60 kg × 9, 2 in reserve (counted)"; the set's number
// is the one of the grid when it answers a plan there.
[[nodiscard]] QString describeSet(const FloorModel& model, const DoneSet& set);

// "Taken back: ...": what is undone now.
[[nodiscard]] QString describeTakenBack(const FloorModel& model, const TakenBack& taken);

} // namespace levelbar::ui
