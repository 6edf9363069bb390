// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/strength/strength_filter.h"

namespace levelbar {

// Reps to the end that a load allows, and how sure the strength and the curve are of it. The
// variance holds no part for the day's effect nor for the set itself.
struct ExpectedReps {
    double reps = 0.0; // under 1: more than the maximum
    double variance = 0.0;
};

// The inverse of loadForReps. logLoad: ln kg; side: -0.5 left, 0 both, +0.5 right.
[[nodiscard]] ExpectedReps expectedReps(const StrengthFit& fit, double logLoad, double side);

} // namespace levelbar
