// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/gym/available_loads.h"
#include "core/plan/progression.h"
#include "core/review/history.h"
#include "core/strength/last_move.h"
#include "core/strength/strength.h"

#include <optional>
#include <span>
#include <vector>

namespace levelbar {

struct TargetQuestion {
    ExerciseId exercise;
    // Nothing: both at once, or for a single-sided exercise the weaker side, whose load then
    // serves both.
    std::optional<Side> side;
    int reps = 8; // 1 to 30
    Reserve reserve{20};
    Day on;
};

inline constexpr int kMostTargetReps = 30;
inline constexpr int kMostTargetReserve = 10;

// A load near the reps that someone trains with is surer than the parts it is put together from:
// their errors cancel more than the model knows. Set on the simulated gym, where without it 98 % of
// the truths lay inside instead of nine in ten.
inline constexpr double kTargetSpreadScale = 0.85;

// Why the cautious side of the estimate was taken.
enum class Caution {
    None,
    NeverDone, // only a related lift speaks
    New,       // fewer than three counted days
    Returning, // nothing for more than three weeks
    Uncertain, // the load's spread is over 6 %
};

struct WarmUpSet {
    AvailableLoad load;
    int reps = 0;
};

// A load to aim at, and what it rests on.
struct Target {
    ExerciseId exercise;
    Side side = Side::Both;
    int reps = 0;
    Reserve reserve;
    StrengthEstimate strength;
    RepsAtFourFifths repsAtFourFifths;
    Estimate load;                 // kg, that allows reps + reserve to the end
    double percentOfMaximum = 0.0; // load over the 1RM
    Caution caution = Caution::None;
    double aimKilograms = 0.0;   // the centre, or its cautious quantile
    Progression progression;     // the load that exists, and the rule that chose it
    std::vector<WarmUpSet> ramp; // lightest first; empty when the load is the lightest there is
    // With no load light enough: the lightest there is, and the reps it allows to the end.
    std::optional<AvailableLoad> lightest;
    double lightestReps = 0.0;
    std::optional<LastMove> lastMove; // of targetFor() only
    bool isKitAssumed = false;
};

// One person, one exercise, one day; only what was done up to that day counts. Faults:
// OutOfRange (reps, reserve), WrongSide, NotByLoad, NothingKnown, UnknownExercise.
// Warm-up: 10, 5, 3 and 1 reps at 50, 70, 80 and 90 % of the maximum (a college's page on 1RM
// testing), here of the load that comes, as far as loads exist and lie under it. Cautious
// quantiles: the lower 30 %, and the lower 10 % for a lift never done; assumed.
[[nodiscard]] Result<Target> targetFor(const MemberHistory& history,
                                       const Library& library,
                                       const Kit& kit,
                                       const TargetQuestion& question);

// The same for several questions about one person, in their order, without the last moves: one fit
// of the person serves all questions of a day, where targetFor() needs three for each. Give those
// of one day together.
[[nodiscard]] std::vector<Result<Target>> targetsFor(const MemberHistory& history,
                                                     const Library& library,
                                                     const Kit& kit,
                                                     std::span<const TargetQuestion> questions);

} // namespace levelbar
