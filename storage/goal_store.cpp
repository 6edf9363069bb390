// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/goal_store.h"

#include "storage/row_query.h"

namespace levelbar::storage {

std::vector<StrengthGoal> GoalStore::ofMember(MemberId member) const
{
    return rowsOf(
        m_logbook,
        "SELECT exercise, side, load, load_unit, by_day, set_day FROM strength_goal "
        "WHERE member = ? ORDER BY exercise, side",
        [](Columns& columns) {
            StrengthGoal goal;
            goal.exercise = columns.id<ExerciseId>();
            goal.side = columns.word<Side>();
            goal.load = columns.mass();
            goal.by = columns.maybeDay();
            goal.setOn = columns.day();
            return goal;
        },
        member);
}

void GoalStore::put(WriteScope& scope, MemberId member, const StrengthGoal& goal)
{
    execute(scope,
            "INSERT INTO strength_goal (member, exercise, side, load, load_unit, by_day, set_day) "
            "VALUES (?, ?, ?, ?, ?, ?, ?) ON CONFLICT DO UPDATE SET load = excluded.load, "
            "load_unit = excluded.load_unit, by_day = excluded.by_day, set_day = excluded.set_day",
            member,
            goal.exercise,
            goal.side,
            goal.load.thousandths(),
            goal.load.unit(),
            goal.by,
            goal.setOn);
}

void GoalStore::remove(WriteScope& scope, MemberId member, ExerciseId exercise, Side side)
{
    execute(scope,
            "DELETE FROM strength_goal WHERE member = ? AND exercise = ? AND side = ?",
            member,
            exercise,
            side);
}

} // namespace levelbar::storage
