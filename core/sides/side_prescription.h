// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/day.h"
#include "core/base/estimate.h"
#include "core/plan/progression.h"
#include "core/sides/side_difference.h"

#include <optional>
#include <span>
#include <vector>

namespace levelbar {

// How to train a left/right difference. Weaker side first with its reps as the other's limit:
// Moreno-Azze et al. 2021 (Int J Environ Res Public Health 18:8270; small groups, legs); equal
// work closes small gaps too: Baroni et al. 2016 (J Strength Cond Res 30:733-738). That doubling
// the weaker side's sets is better is not shown, hence one set at most. Numbers of weeks: common
// practice, no source, where nothing else is said.

inline constexpr int kOpenPairDays = 14;
inline constexpr int kExtraSetDays = 56;      // six to eight weeks
inline constexpr int kUnchangedDays = 84;     // twelve weeks
inline constexpr double kProbablySmall = 0.5; // P(under 5 %) that counts as closed

// Why the day looks as it does, in the order in which they were decided.
enum class SideRule {
    SentOn,          // not ours to train: nothing for either side
    PainEnds,        // last time hurt: nothing for either side
    Paused,          // the area hurts elsewhere: no verdict, so equal sets
    NotListed,       // no list: equal sets, starting side alternated
    NeverForThis,    // shown, not trained for (grip of the dominant hand): as not listed
    Closed,          // probably under 5 % in two open pairs running: back to equal sets
    UsualDifference, // twelve weeks unchanged: back to equal sets
    Rests,           // was trained, ended without change or by hand: equal sets for a while
    OpenPair,        // due: both sides to one in reserve, nobody capped
    WeakerFirst,     // and its clean reps are the other's limit
    ExtraSet,        // one more for the weaker side, as chosen
    ExtraSetTooMuch, // chosen, but more than three to two: not given
    ExtraSetOver,    // chosen, but its eight weeks are over
    UncappedSet,     // one for the stronger side this week: four weeks with four in reserve
    RepsFirst,       // the next load is over a tenth up: more reps before more load
    NoLoad,          // the weaker side has no load that exists
};

// All about one person and one single-sided exercise. Only what lies before today counts.
struct SidePlanQuestion {
    Day today;
    SideTier tier = SideTier::None;
    std::optional<Side> weaker;    // Left or Right; nothing: no clear side
    bool isPaused = false;         // pain in what stresses the same area
    bool isTrainable = true;       // false: differences here are shown, never trained for
    std::optional<Day> started;    // first day of the prescription; nothing: today would be
    std::optional<Day> restsUntil; // not trained again before that day
    std::span<const OpenPairVerdict> openPairs; // by day, since it started
    bool isClosing = false;                     // the difference has become smaller beyond doubt
    std::optional<Side> lastFirst;              // which side started last time
    int sets = 2;                               // of either side, 1 or more
    bool wantsExtraSet = false;
    double strongerReserve = 0.0;    // left in reserve under the cap, least of four weeks
    std::optional<Day> lastUncapped; // last uncapped set of the stronger side
    Progression weakerLoad;          // the weaker side's target: its load is both sides' load
    int twoSidedLifts = 0;           // of the same kind in the week
};

struct SidePlan {
    std::vector<SideRule> rules;
    Side first = Side::Left;
    bool isOpenPair = false;
    bool isCapped = false; // the second side stops at the first one's clean reps
    int leftSets = 0;
    int rightSets = 0;
    std::optional<Side> uncapped; // this side's last set goes past the cap
    std::optional<AvailableLoad> load;
    int reps = 0;
    double leastReserve = 1.0; // where the first side stops
    double mostReserve = 3.0;
    int leastRestSeconds = 0; // between the sides of an open pair; 0: as usual
    int mostRestSeconds = 0;
    int twoSidedReplaced = 0; // two-sided lifts of the week that this takes the place of
};

// NotInDomain: sets below 1, `weaker` or a starting side that is Both.
[[nodiscard]] Result<SidePlan> planSides(const SidePlanQuestion& question);

// What the first side's set means for the second one.
struct SideCap {
    std::optional<int> reps;   // stop there; nothing: no limit
    bool endsExercise = false; // for both sides
    bool isLessOne = false;    // the last rep was not clean and is not asked of the other side
};

[[nodiscard]] SideCap capAfter(const PerformedSet& first);

// Which side moved between two fits of both sides (1RM in kilograms, above 0).
enum class SideMove { Held, Rose, Fell };

enum class SideOutcome {
    WeakerRose,   // success: the weaker side rose, the other did not fall
    StrongerFell, // a warning, whatever the weaker side did
    WeakerFell,   // a warning
    NothingMoved,
    StrongerRose, // the difference grew
};

struct SideChange {
    double leftPercent = 0.0;
    double rightPercent = 0.0;
    SideMove left = SideMove::Held;
    SideMove right = SideMove::Held;
    SideOutcome outcome = SideOutcome::NothingMoved;
};

struct SideStrength {
    Estimate left;
    Estimate right;
};

// A side moved when it did so with a probability of nine in ten and by 2 % at least (the smallest
// change worth telling of a 1RM, assumed). NotInDomain: an estimate that is not above 0, or
// `weaker` is Both.
[[nodiscard]] Result<SideChange>
changeOfSides(const SideStrength& before, const SideStrength& now, Side weaker);

} // namespace levelbar
