// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/day.h"
#include "core/base/estimate.h"
#include "core/base/side.h"
#include "core/strength/member_strength.h"

#include <optional>
#include <string_view>

namespace levelbar {

// How old the newest evidence is: up to 4 weeks, up to 12, older.
enum class Evidence { Recent, GettingOld, TooOld };

[[nodiscard]] std::string_view evidenceWord(Evidence evidence); // "recent", "getting_old", ...
[[nodiscard]] Evidence evidenceOf(Day last, Day today);

// Strength today in one exercise and side.
struct StrengthEstimate {
    Estimate oneRepMax;      // kg; count = sets and tests that size it
    double logSpread = 0.0;  // standard deviation of ln 1RM
    Estimate repCurveFactor; // reps beyond the first at a load, over the average person's
    int bounds = 0;          // sets that say only "at least" or "at most"
    Day lastSet;
    Evidence evidence = Evidence::Recent;
    bool isFromRelated = false; // guessed from a related lift, nothing of its own
};

// Reads one side off an exercise's fit. The count is over all sides of the exercise: left and
// right share their sets' evidence.
[[nodiscard]] StrengthEstimate strengthOf(const ExerciseFit& fit, Side side, Day today);

// Reps to the end with 80 % of the maximum: where most is published (Nuzzo 2024: 8.8 on average).
struct RepsAtFourFifths {
    Estimate own;
    double average = 0.0; // of people in this gym
    int people = 0;       // who taught the average; 0: as published
};

[[nodiscard]] RepsAtFourFifths repsAtFourFifths(const ExerciseFit& fit,
                                                const RepCurveExpectation& curve);

// For an interval at kLevel: the standard normal's 0.95 quantile.
inline constexpr double kNormalQuantile = 1.6448536269514722;

} // namespace levelbar
