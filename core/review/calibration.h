// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/estimate.h"
#include "core/plan/answered_plan.h"

#include <optional>
#include <span>
#include <utility>
#include <vector>

namespace levelbar {

// How right were we: ranges that were kept when planned sets were given, beside what was then
// done. Nothing is computed anew.

// What a set shows against what was said of it, in reps to the end.
struct RangeCheck {
    MemberId member;
    ExerciseId exercise;
    std::optional<Experience> experience; // on the day it was given
    double expected = 0.0;
    double low = 0.0;
    double high = 0.0;
    double seen = 0.0; // done and told to be left

    [[nodiscard]] bool isInside() const { return low <= seen && seen <= high; }
};

// Nothing for a set that shows nothing: without a kept range, not counted, at another load than
// planned, a ramp set, of which the reserve is not known (and that did not go to the end), or
// stopped by pain, form, time or the other side.
[[nodiscard]] std::optional<RangeCheck> rangeCheck(const AnsweredPlan& answered);

// The score test's interval of a share (Wilson 1927), at kLevel; 0 <= hits <= of, of > 0. The
// value is the plain share. Takes what is counted as independent.
[[nodiscard]] Estimate wilsonShare(int hits, int of);

// One group of checks. Sets of one person are alike, so the lean's interval goes by persons
// (variance between the persons' sums), and needs two of them.
struct RangeScore {
    int checks = 0;
    int people = 0;
    int inside = 0;
    Estimate share;               // of checks that fell inside; 0.90 is what the ranges promise
    double leanReps = 0.0;        // mean of seen less expected: below 0, loads were too heavy
    std::optional<Estimate> lean; // the same with its interval
};

struct Calibration {
    RangeScore all;                                            // checks = 0: nothing to judge by
    std::vector<std::pair<ExerciseId, RangeScore>> byExercise; // most checks first
    std::vector<std::pair<std::optional<Experience>, RangeScore>> byExperience; // unknown first
    int unread = 0; // answered plans with a range that show nothing
};

[[nodiscard]] Calibration calibrationOf(std::span<const AnsweredPlan> answered);

// What the lean says: nothing while its interval holds 0, else too heavy or too light.
enum class LoadLean { NotClear, TooHeavy, TooLight };
[[nodiscard]] LoadLean loadLean(const RangeScore& score);

} // namespace levelbar
