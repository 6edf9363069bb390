// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/day.h"
#include "core/base/estimate.h"

#include <optional>
#include <span>
#include <string_view>

namespace levelbar {

enum class TrendCall { Rising, Steady, Falling, Unclear, TooEarly };

// One value a day; ln-percent, that is 100 ln(value), so that differences are in percent.
struct DayValue {
    Day day;
    double logPercent = 0.0;
    double variance = 0.0; // of this value's own error, in (ln-%)²; 0 = not known
};

// How a strength moved over the last eight weeks.
struct Trend {
    TrendCall call = TrendCall::TooEarly;
    std::optional<Estimate> percentPerWeek; // nothing when too early
    double probabilityRising = 0.0;         // P(change > 0.25 % a week); 0 when too early
    double probabilityFalling = 0.0;
    int daysSeen = 0;
    std::optional<Day> askAgainOn; // when too early
};

[[nodiscard]] std::string_view trendWord(TrendCall call); // "rising", "too_early", ...

// values by day, one a day; those after `today` are passed over.
[[nodiscard]] Trend estimateTrend(std::span<const DayValue> values, Day today);

} // namespace levelbar
