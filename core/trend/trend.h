// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/day.h"
#include "core/base/estimate.h"
#include "core/strength/member_strength.h"

#include <optional>
#include <string_view>

namespace levelbar {

enum class TrendCall { Rising, Steady, Falling, Unclear, TooEarly };

// How a strength moved over the last eight weeks (or since the first set, when that is less).
struct Trend {
    TrendCall call = TrendCall::TooEarly;
    // 100 times the mean change of ln 1RM a week; nothing when too early. count: days.
    std::optional<Estimate> percentPerWeek;
    double probabilityRising = 0.0;  // P(change > 0.25 % a week); 0 when too early
    double probabilityFalling = 0.0; // P(change < -0.25 % a week); 0 when too early
    int daysSeen = 0;                // days with a set or test that sizes the strength
    int spanWeeks = 0;               // from the first to the last of them
    std::optional<Day> lastSeen;     // the last of them
    bool isOld = false;              // hardly any of them in the weeks looked at
    std::optional<Day> askAgainOn;   // when too early: when enough days can be expected
};

// A change that matters, in percent a week (about 3 % in a quarter; assumed).
inline constexpr double kMatteringPercentPerWeek = 0.25;
// What a call needs: so many sizing days over so many days of calendar.
inline constexpr int kTrendDays = 4;
inline constexpr int kTrendSpanDays = 28;

// From so many days without one on, what cannot be told is put down to that.
inline constexpr int kOldTrendDays = 21;

[[nodiscard]] std::string_view trendWord(TrendCall call); // "rising", "too_early", ...

// Reads the trend off an exercise's fit. Rising, falling and steady need a probability of 0.8;
// days known only by a key or for a group never count towards a call.
[[nodiscard]] Trend trendOf(const ExerciseFit& fit, Day today);

} // namespace levelbar
