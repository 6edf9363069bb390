// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/estimate.h"
#include "core/trend/trend.h"
#include "core/trend/trend_noise.h"

#include <optional>
#include <span>
#include <vector>

namespace levelbar {

// The trend of anything that is measured now and then: test results, reps at a load, body mass,
// the load of a push-up, a difference of sides. Changes are in percent (100 times the change of
// ln) on a ratio scale, in the measure's unit on a plain one; levels always in the unit.
struct ValueTrend {
    TrendCall call = TrendCall::TooEarly;
    Estimate level; // today
    // Mean change a week over the last eight weeks of values, or as far back as the fourth last
    // value. Nothing when too early.
    std::optional<Estimate> changePerWeek;
    double probabilityRising = 0.0;  // P(change > what matters); 0 when too early
    double probabilityFalling = 0.0; // P(change < -what matters); 0 when too early
    int valuesSeen = 0;
    int spanWeeks = 0; // from the first to the last
    int offDays = 0;   // values that lie off all others and weigh less
    Day last;
    bool isOld = false; // the last value is older than three weeks and one and a half usual gaps
    // Too early: when a clear change would show, at the pace so far. Unclear: when a change that
    // just matters would. Nothing when that is over a year away, or when the values are old.
    std::optional<Day> askAgainOn;
};

// Values up to `today`, by day. Rising, falling and steady need four values over four weeks, a
// probability of 0.8, and a last value that is not old. NotInDomain as checkSeries(), or when a
// value lies after today.
[[nodiscard]] Result<ValueTrend> valueTrend(std::span<const DatedValue> series,
                                            const TrendMeasure& measure,
                                            const TrendNoise& noise,
                                            Day today);

// For tests where less is better a rise is worse. Neither: not rising and not falling, or no
// direction is better.
enum class TrendVerdict { Neither, Better, Worse };

[[nodiscard]] TrendVerdict verdictOf(TrendCall call, Direction direction);

// "No gain we can see": eight weeks or more, not getting worse for certain, and the probability
// of a change for the better that matters is 0.2 or less.
[[nodiscard]] bool showsNoGain(const ValueTrend& trend, Direction direction);

// Whether a difference of sides that rises or falls goes to nought; nothing for other calls.
[[nodiscard]] std::optional<bool> isClosing(const ValueTrend& difference);

// One day of the band.
struct TrendBandDay {
    Day day;
    Estimate level;     // what all values say of it
    Estimate nextValue; // where a value measured on that day would lie
};

inline constexpr int kForecastDays = 42;

// The smoothed level on each of `days` (ascending), in the measure's unit, from the first value
// to six weeks after the last; OutOfRange beyond, NotInDomain as valueTrend().
[[nodiscard]] Result<std::vector<TrendBandDay>> trendBand(std::span<const DatedValue> series,
                                                          const TrendMeasure& measure,
                                                          const TrendNoise& noise,
                                                          std::span<const Day> days);

// What changed between two days, noise taken away.
struct TrendProgress {
    Day since;
    Day until;
    Estimate change;               // percent, or the unit
    double probabilityAbove = 0.0; // P(change > 0)
    bool isBeyondNoise = false;    // that, or the mirror, is 0.95, and the change matters
};

// A change since a day matters when it is that of eight weeks at the mattering pace: 2 % where
// 0.25 % a week matters. Between `since`, not before the first value, and the last value;
// OutOfRange when since is not before the last value.
[[nodiscard]] Result<TrendProgress> progressSince(std::span<const DatedValue> series,
                                                  const TrendMeasure& measure,
                                                  const TrendNoise& noise,
                                                  Day since);

} // namespace levelbar
