// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/gym/kit.h"
#include "core/review/history.h"
#include "core/sides/side_prescription.h"
#include "core/sides/side_records.h"

#include <optional>

namespace levelbar {

// How one exercise is trained today.
struct SidePlanAim {
    int reps = 8; // 1 to 30
    Reserve reserve{20};
    int sets = 2; // of either side
};

// All that a plan rests on. `review` is of the exercise to plan; only what was done before `on`
// counts.
struct SidePlanBasis {
    const MemberHistory& history;
    const Library& library;
    const Kit& kit;
    const SideReview& review;
    SideRecords records; // the person's
    Day on;
    SidePlanAim aim;
};

// The question for planSides, read from what was done; it points into `basis.review`. A test has no
// load and is not planned for. UnknownExercise, and the faults of targetFor but NothingKnown.
[[nodiscard]] Result<SidePlanQuestion> sidePlanQuestion(const SidePlanBasis& basis);

// The plan of the day. Faults as above and as planSides.
[[nodiscard]] Result<SidePlan> planSides(const SidePlanBasis& basis);

// Why the prescription ends with this plan; nothing while it goes on.
[[nodiscard]] std::optional<SideEnd> endOf(const SidePlan& plan);

} // namespace levelbar
