// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/mass.h"
#include "core/exercise/exercise.h"
#include "core/gym/kit.h"
#include "core/plan/class_plan.h"

namespace levelbar::ui {

// The next load up (direction 1) or down (-1), never below 0, in the unit that was typed: 5 lb;
// in kilograms 1 up to 10 and 2 above for dumbbells and kettlebells, 2.5 for the rest (common
// practice, no source: what racks usually hold).
[[nodiscard]] Mass steppedLoad(const Mass& load, Implement implement, int direction);

// A plan that gives nothing to lift: storing 0 kg for it would be untrue.
[[nodiscard]] bool lacksLoad(const PlannedSet& planned, const Exercise* exercise);

// The same steps among the loads that this gym has for the exercise, in whatever unit they are; at
// the heaviest and the lightest it stays (what is added to the body comes down to nothing). While
// nobody has said what stands there, or nothing does that could be it: as above.
[[nodiscard]] Mass
steppedLoad(const Mass& load, const Kit& kit, const Exercise& exercise, int direction);

// A load as typed: "62.5", "62,5 kg", "135 lb", "135lb"; without a unit it is in `unit`.
[[nodiscard]] Result<Mass> parseTypedLoad(std::string_view text, MassUnit unit);

} // namespace levelbar::ui
