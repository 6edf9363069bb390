// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/plan/strength_goal.h"
#include "storage/action.h"

#include <vector>

namespace levelbar::storage {

// What people work towards: one strength an exercise and side.
class GoalStore {
public:
    explicit GoalStore(const Logbook& logbook)
        : m_logbook(logbook)
    {
    }

    [[nodiscard]] std::vector<StrengthGoal> ofMember(MemberId member) const; // by exercise, side

    // Sets a goal that checkGoal has passed, in the place of an earlier one.
    static void put(WriteScope& scope, MemberId member, const StrengthGoal& goal);
    static void remove(WriteScope& scope, MemberId member, ExerciseId exercise, Side side);

private:
    const Logbook& m_logbook;
};

} // namespace levelbar::storage
