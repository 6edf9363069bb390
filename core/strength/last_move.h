// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/strength/member_strength.h"

#include <optional>
#include <span>

namespace levelbar {

// What the last day with evidence did to an estimate: the account that goes with it.
struct LastMove {
    Day day;
    int sets = 0;               // sets and tested maxima of that day, all sides
    bool isFirst = false;       // nothing was known before; the numbers below are 0 then
    double percent = 0.0;       // by how much the 1RM of that day moved through them
    double kilograms = 0.0;     // the set or test that speaks most plainly: its load
    double reps = 0.0;          // its reps and reported reserve
    double expectedReps = 0.0;  // what was expected of that load before, told in the same way
    bool isOnlyAtLeast = false; // no set of the day sizes the strength
};

// For exercise `place` of fitMember's question, as of `today`; nothing without evidence of its
// own. Fits the person twice more: for one person at a time.
[[nodiscard]] std::optional<LastMove> lastMove(std::span<const ExerciseHistory> exercises,
                                               std::size_t place,
                                               const StrengthPrior& prior,
                                               Day today);

} // namespace levelbar
