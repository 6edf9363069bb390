// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/exercise/done_set.h"
#include "core/exercise/exercise.h"
#include "core/gym/available_loads.h"
#include "core/member/member.h"

#include <optional>
#include <span>
#include <vector>

namespace levelbar {

// What happens to the load of last time.
enum class LoadDecision {
    Start, // nothing to compare with: never done, or for other reps
    Raise,
    Hold,
    Lower,
};

// Away for more days than this, somebody comes back: three weeks (common practice, no source).
inline constexpr int kReturnDays = 21;

// Which rule decided. Safety first: the first rule that applies, in this order.
enum class ProgressionRule {
    Pain,            // last time hurt
    Return,          // back after more than three weeks
    NothingBefore,   // never done with this side
    OtherReps,       // last time was for other reps
    MissedTwice,     // fell short two sessions running
    Deload,          // the same after five weeks without a lighter one
    HarderThanMeant, // what was counted leaves less in reserve than asked
    NotCounted,      // a raise needs a counted set among the last three sessions
    NotClean,        // a raise needs clean sets last time
    RepsFirst,       // the next load is more than a tenth up: more reps before more load
    TwoForTwo,       // two reps beyond the aim in the last set, two sessions running
    EasierThanMeant, // two more in reserve than asked
    StrengthGrew,    // the estimate's cautious side allows the next load
    NoHeavierPiece,  // the gym has nothing heavier
    AsPlanned,       // fits as it is
};

// The aim of a set.
struct RepGoal {
    int reps = 8;
    double reserve = 2.0;
};

// What the decision rests on. Loads are this exercise's and side's.
struct ProgressionQuestion {
    std::span<const PerformedSet> sets; // by day, then number; only those before today count
    Day today;
    RepGoal goal;
    double loadKilograms = 0.0;           // that allows the goal, by the estimate
    double mostKilograms = 0.0;           // the upper end of its interval; 0: not known
    std::optional<AvailableLoad> allowed; // the heaviest that exists under its cautious side
    bool isLowerBody = false;             // steps of the handbook are larger there
    std::optional<Experience> experience;
};

// The load of next time, and why.
struct Progression {
    LoadDecision decision = LoadDecision::Start;
    ProgressionRule rule = ProgressionRule::NothingBefore;
    std::optional<AvailableLoad> load; // nothing: even the lightest is too heavy
    int reps = 0;                      // asked for; above the goal with RepsFirst
    std::optional<Mass> last;          // the heaviest work set of last time
    std::optional<Day> lastDay;
    double jumpPercent = 0.0; // from `last` to the next load that exists; 0: there is none
    int pain = 0;             // with Pain: the score
};

// Never raised above the load that the estimate allows: rules hold back, they do not push; the load
// at which a counted set of last time reached the aim is held all the same while it lies within the
// estimate's interval (a slip of the pen does not). Steps and
// two-for-two: Baechle, Earle and Wathen in NSCA Essentials (from memory); at most a tenth up:
// ACSM 2009 (2 to 10 %); deload after five weeks: Rogerson 2024 (5.6 weeks on average); a tenth
// lighter after pain, a miss or a break: common practice, no source.
[[nodiscard]] Progression decideLoad(const ProgressionQuestion& question,
                                     const AvailableLoads& loads);

} // namespace levelbar
