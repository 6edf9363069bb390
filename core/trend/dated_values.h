// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/day.h"
#include "core/testing/trial.h"

#include <span>
#include <vector>

namespace levelbar {

// A value with its date: a test's result, a body mass, a difference of sides.
struct DatedValue {
    Day day;
    double value = 0.0; // in the measure's unit

    friend bool operator==(const DatedValue&, const DatedValue&) = default;
};

// Ratio: changes are told in percent (100 times the change of ln); values lie above 0.
// Plain: changes are told in the measure's own unit; any value.
enum class TrendScale { Ratio, Plain };

// How the trend of a measure is judged.
struct TrendMeasure {
    TrendScale scale = TrendScale::Ratio;
    double mattering = 0.25; // a change a week that matters: percent, or the unit; above 0
    double spread = 4.0;     // usual standard deviation of one value: percent, or the unit; above 0
    int gapDays = 28;        // usual time between values, while a person has but one
    double expected = 0.0;   // change a week of somebody of whom nothing is known
};

// Changes that matter are 3 % in a quarter for a maximum, and assumed for the rest. Spreads:
// a 1RM, coefficient of variation 4.2 % (Grgic 2020, Sports Med Open 6:31); grip 5 to 7 % (from
// Bohannon 2019, J Phys Ther Sci 31:75); side differences 6 ln-% (side_noise.h); the rest assumed.
// Expected: 0.5 % a week of somebody who trains and whose weeks of training nobody knows (Steele
// 2022, RQES 94:913: linear in ln weeks, so 2.5 % in the fourth week, 0.4 after half a year).
inline constexpr TrendMeasure kMaximumMeasure{TrendScale::Ratio, 0.25, 4.0, 28, 0.5};
inline constexpr TrendMeasure kGripMeasure{TrendScale::Ratio, 0.25, 5.5, 28};
inline constexpr TrendMeasure kBodyMassMeasure{TrendScale::Ratio, 0.15, 1.0, 14};
inline constexpr TrendMeasure kPushUpLoadMeasure{TrendScale::Ratio, 0.25, 3.0, 7};
inline constexpr TrendMeasure kRepsMeasure{TrendScale::Plain, 0.15, 1.5, 28}; // reps
// 100 ln(right / left): what SidePair::logPercent holds.
inline constexpr TrendMeasure kSideMeasure{TrendScale::Plain, 0.30, 6.0, 28};

// The measure of a test of the library: reps, and what may be negative, in their own unit; the
// rest in percent.
[[nodiscard]] TrendMeasure measureOf(const TestKind& test);

// Nothing, or why a series has no trend. NotInDomain: no value, days not ascending (two values
// of one day are fine), a number not finite, or not above 0 on a ratio scale; a measure whose
// numbers are not above 0.
[[nodiscard]] Result<void> checkSeries(std::span<const DatedValue> series,
                                       const TrendMeasure& measure);

// 100 ln(value) or the value; and back.
[[nodiscard]] double onScale(double value, TrendScale scale);
[[nodiscard]] double offScale(double value, TrendScale scale);

// Days between neighbours in the middle of all; the measure's when there is one value.
[[nodiscard]] int medianGapDays(std::span<const DatedValue> series, const TrendMeasure& measure);

// The best valid result of each day up to `asOf`, best by the test's direction; the mean where
// no direction is better. `trials` by day.
[[nodiscard]] std::vector<DatedValue>
resultsOf(std::span<const Trial> trials, Direction direction, Day asOf);

} // namespace levelbar
