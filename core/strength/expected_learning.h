// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/strength/strength_filter.h"

namespace levelbar {

// A set that is to come, and what is known before it.
struct ComingSet {
    double logLoad = 0.0; // ln kg
    double side = 0.0;    // -0.5 left, 0 both, +0.5 right
    double reps = 0.0;    // planned
    double reserve = 0.0; // planned
    int seenToday = 0;    // sets of the exercise and side that were counted today already
};

// By how much the variance of ln 1RM (of that side) is expected to fall when the set's reps and
// reserve are counted, at the fit of the days before today; 0 or more. Taken as planned, a set is
// a lower bound that the plan itself expects, so its fall is as good as none. Sets of one day
// share the day's effect: the second tells less than the first.
[[nodiscard]] double
expectedFall(const StrengthFit& fit, const ComingSet& set, const StrengthParameters& parameters);

// The same for somebody of whom nothing is known but that the plan was thought right.
[[nodiscard]] double expectedFallUnknown(const ComingSet& set,
                                         const StrengthParameters& parameters);

} // namespace levelbar
