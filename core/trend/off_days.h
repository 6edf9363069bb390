// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/trend/trend_fit.h"

// Days off the line; inside the trend engine only.
namespace levelbar {

// A value further from what all others say than this many standard deviations is off.
inline constexpr double kOffDeviations = 2.5;

// Weighs down values that lie off what all others say, by (deviations / 2.5) squared, in a few
// rounds: like a heavy-tailed law, and unlike a cut, it never throws a value away. Two in a row
// on one side, more than a week apart, are a change and no accident: both count in full.
void weighOffDays(TrendSeries& series);

} // namespace levelbar
