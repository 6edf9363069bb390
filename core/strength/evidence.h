// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/day.h"
#include "core/exercise/done_set.h"
#include "core/strength/strength_filter.h"

#include <span>
#include <vector>

namespace levelbar {

// A tested maximum on a day: the best valid trial.
struct TestedMaximum {
    Day day;
    double kilograms = 0.0; // > 0

    friend bool operator==(const TestedMaximum&, const TestedMaximum&) = default;
};

// What one side (or both at once) did of one exercise, by day, then number.
struct SideHistory {
    std::span<const PerformedSet> sets;
    std::span<const TestedMaximum> tests;
};

// What the sets of one exercise say, for the model.
struct StrengthEvidence {
    std::vector<StrengthObservation> observations; // by day; both sides mixed
    std::vector<Day> days;                         // with observations, each once
    int measured = 0;              // sets and tests that size the strength, both sides
    int bounds = 0;                // sets that say only "at least" or "at most"
    std::vector<Day> measuredDays; // days with at least one that sizes it
    bool hasSides = false;
};

// How a set is known decides what it says:
// counted or from a sheet, reserve known or nothing left: sizes the strength;
// counted, reserve not known: "at least these reps" (or about one more, in a history that
// hardly ever knows the reserve); accepted and group: "at least", never more; stopped by pain or
// on an easy day: "at least"; tried and not lifted: "at most"; ramp sets, sets without load or
// reps, more than 40 reps: nothing. Sets and tests after `today` are passed over. `left` and
// `right` are empty for two-sided work, `both` for single-sided.
[[nodiscard]] StrengthEvidence gatherEvidence(const SideHistory& both,
                                              const SideHistory& left,
                                              const SideHistory& right,
                                              Day today);

} // namespace levelbar
