// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/plan/class_week.h"
#include "core/plan/target.h"
#include "core/sides/side_prescription.h"

#include <map>
#include <span>
#include <vector>

namespace levelbar {

// The reps that an item asks of somebody: its own, else those they usually did on the last day (the
// median of the work sets, either side), else 8. 1 to kMostTargetReps.
[[nodiscard]] int repsAskedOf(const MemberHistory& history, const PlanItem& item);

// What is asked for one person's load in an item. Plan, sheet and floor ask this same question.
[[nodiscard]] TargetQuestion
targetQuestion(const MemberHistory& history, const PlanItem& item, Day on);

// The load of a target; the lightest there is when all are too heavy, nothing when there is none.
[[nodiscard]] std::optional<AvailableLoad> loadOf(const Result<Target>& target);

// By single-sided exercise: how a difference is trained today.
using SidePlans = std::map<ExerciseId, SidePlan>;

struct PersonPlanQuestion {
    const MemberHistory& history; // what was done on the day itself or later does not count
    const Library& library;
    const Kit& kit;
    std::span<const PlanItem> items;
    Day on;
    MeetingId meeting; // copied into the sets
    SidePlans sides;
};

// The sets that a person is to do in a meeting: the items' sets on each side at the load of
// targetFor(), with the reps and the reserve asked for; a difference that is trained at the weaker
// side's load on both, with the set more of the weaker side where it is chosen. What is not loaded,
// or of which nothing is known, goes as last time (see planFromLast). An exercise that stands twice
// counts its sets on. Ids of the result are not set.
[[nodiscard]] std::vector<PlannedSet> planFor(const PersonPlanQuestion& question);

} // namespace levelbar
