// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/strength/evidence.h"
#include "core/strength/strength_filter.h"

#include <optional>
#include <span>
#include <vector>

namespace levelbar {

// How an exercise's 1RM relates to another of the same person's.
struct RelatedLift {
    std::size_t base = 0;    // place in the list of exercises
    double ratio = 1.0;      // 1RM over the base's, per implement as typed
    double logSpread = 0.10; // standard deviation of ln ratio between people
};

// One exercise of a person.
struct ExerciseHistory {
    SideHistory both;
    SideHistory left;
    SideHistory right;
    std::optional<RelatedLift> related;
};

// The model's answer for one exercise, all sides together.
struct ExerciseFit {
    StrengthFit fit;
    StrengthEvidence evidence;
    double lookBackWeeks = 8.0;
    bool isFromRelated = false; // nothing of its own: only a related lift speaks
};

struct MemberFitOptions {
    bool wantsPath = false; // with the past as seen today, for charts
    // For forecasts: from this day on people train as they did, so that the days to come are no
    // lay-off.
    std::optional<Day> trainsOnFrom;
};

// Fits all exercises of one person: each alone, then once more with what the others tell about
// the rep-curve factor and about each day. Nothing where neither a set nor a related lift says
// anything. Cost: linear in sets.
[[nodiscard]] std::vector<std::optional<ExerciseFit>>
fitMember(std::span<const ExerciseHistory> exercises,
          const StrengthPrior& prior,
          Day today,
          const MemberFitOptions& options = {});

} // namespace levelbar
