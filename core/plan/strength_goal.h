// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/review/review.h"
#include "core/review/strength_course.h"
#include "core/review/wording.h"

#include <optional>
#include <span>
#include <vector>

namespace levelbar {

// A 1RM that a person works towards in one exercise and side.
struct StrengthGoal {
    ExerciseId exercise;
    Side side = Side::Both;
    Mass load;
    std::optional<Day> by; // nothing: no day set
    Day setOn;

    friend bool operator==(const StrengthGoal&, const StrengthGoal&) = default;
};

// OutOfRange: a load of nothing. DateOutOfRange: a day that does not come after the one on which
// the goal was set.
[[nodiscard]] Result<StrengthGoal> checkGoal(StrengthGoal goal);

// How far it is, and whether the pace so far leads there.
enum class GoalStanding {
    Reached,  // today's whole interval lies at or above it
    There,    // today's interval holds it
    OnPace,   // the pace needed lies below the whole interval of the pace so far
    Possible, // it lies within that interval
    TooFast,  // it lies above that interval
    Open,     // no day set, or the pace is not known yet
    Past,     // its day is over
};

struct GoalOutlook {
    GoalStanding standing = GoalStanding::Open;
    double percentToGo = 0.0;                   // of today's 1RM; 0 when that is as high
    std::optional<double> percentPerWeekNeeded; // 100 ln, as the trend's; with a day to come only
    std::optional<double> probabilityOnTheDay;  // of being there, when the forecast reaches it
};

// `review`: today's. `forecast` as in StrengthCourse.
[[nodiscard]] GoalOutlook goalOutlook(const StrengthGoal& goal,
                                      const StrengthReview& review,
                                      std::span<const BandPoint> forecast,
                                      Day asOf);

// "Goal 80 kg by 12 Dec: 8 % to go. That takes 1.1 % a week; the pace so far is 0.2 to 0.7: faster
// than so far."
[[nodiscard]] std::vector<Phrase>
phrases(const StrengthGoal& goal, const GoalOutlook& outlook, const Trend& trend);

} // namespace levelbar
