// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/trend/trend.h"

#include "core/base/distributions.h"
#include "core/strength/strength.h"

#include <algorithm>
#include <cmath>

namespace levelbar {

namespace {

constexpr double kSure = 0.8;
constexpr int kUsualGapDays = 7; // when there is only one day to judge the pace from

// When the missing days and the span can be expected, at the pace so far.
Day askAgain(const std::vector<Day>& days, Day today)
{
    if (days.empty()) {
        return today + kTrendSpanDays;
    }
    const int seen = static_cast<int>(days.size());
    const int pace =
        seen < 2 ? kUsualGapDays : std::max(1, (days.back() - days.front()) / (seen - 1));
    const int missing = std::max(0, kTrendDays - seen);
    const Day byCount = std::max(days.back(), today) + missing * pace;
    return std::max({byCount, days.front() + kTrendSpanDays, today + 1});
}

} // namespace

std::string_view trendWord(TrendCall call)
{
    switch (call) {
    case TrendCall::Rising:
        return "rising";
    case TrendCall::Steady:
        return "steady";
    case TrendCall::Falling:
        return "falling";
    case TrendCall::Unclear:
        return "unclear";
    case TrendCall::TooEarly:
        break;
    }
    return "too_early";
}

Trend trendOf(const ExerciseFit& exercise, Day today)
{
    const std::vector<Day>& days = exercise.evidence.measuredDays;
    Trend trend;
    trend.daysSeen = static_cast<int>(days.size());
    const int span = days.empty() ? 0 : days.back() - days.front();
    trend.spanWeeks = span / 7;
    trend.lastSeen = days.empty() ? std::nullopt : std::optional(days.back());
    if (trend.daysSeen < kTrendDays || span < kTrendSpanDays) {
        trend.askAgainOn = askAgain(days, today);
        return trend;
    }
    const double centre = 100.0 * exercise.fit.slope;
    const double spread = 100.0 * std::sqrt(std::max(exercise.fit.slopeVariance, 1e-14));
    trend.percentPerWeek = Estimate{centre,
                                    centre - kNormalQuantile * spread,
                                    centre + kNormalQuantile * spread,
                                    kLevel,
                                    trend.daysSeen};
    trend.probabilityRising = normalBelow((centre - kMatteringPercentPerWeek) / spread);
    trend.probabilityFalling = normalBelow((-kMatteringPercentPerWeek - centre) / spread);
    const double steady = 1.0 - trend.probabilityRising - trend.probabilityFalling;
    // Without two sizing days in the stretch itself, the slope is what the model expects, not
    // what anyone saw.
    const int recent = static_cast<int>(std::count_if(days.begin(), days.end(), [&](Day day) {
        return (today - day) / 7.0 <= exercise.lookBackWeeks;
    }));
    trend.call = TrendCall::Unclear;
    trend.isOld = recent < 2 || today - days.back() > kOldTrendDays;
    if (recent >= 2 && trend.probabilityRising >= kSure) {
        trend.call = TrendCall::Rising;
    } else if (recent >= 2 && trend.probabilityFalling >= kSure) {
        trend.call = TrendCall::Falling;
    } else if (recent >= 2 && steady >= kSure) {
        trend.call = TrendCall::Steady;
    }
    return trend;
}

} // namespace levelbar
