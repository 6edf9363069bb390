// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/class_plan_store.h"

#include "storage/row_query.h"

#include <algorithm>

namespace levelbar::storage {

namespace {

PlanItem readItem(Columns& columns)
{
    PlanItem item;
    item.what.exercise = columns.id<ExerciseId>();
    item.what.sets = columns.whole();
    item.what.reps = columns.maybeWhole();
    item.block = columns.whole();
    if (const auto tenths = columns.maybeWhole()) {
        item.reserve = Reserve{*tenths};
    }
    item.workSeconds = columns.maybeWhole();
    item.restSeconds = columns.maybeWhole();
    return item;
}

PlanBlock readBlock(Columns& columns)
{
    PlanBlock block;
    block.number = columns.whole();
    block.minutes = columns.whole();
    block.halves = columns.whole();
    return block;
}

ClassWeek readWeek(Columns& columns)
{
    ClassWeek week;
    week.monday = columns.day();
    week.kind = columns.word<WeekKind>();
    week.note = columns.text();
    return week;
}

std::optional<int> tenthsOf(const PlanItem& item)
{
    return item.reserve ? std::optional(item.reserve->tenths) : std::nullopt;
}

} // namespace

std::vector<PlanItem> ClassPlanStore::itemsOf(ClassId groupClass) const
{
    return rowsOf(m_logbook,
                  "SELECT exercise, sets, reps, block, reserve_tenths, work_seconds, rest_seconds "
                  "FROM class_template WHERE class = ? ORDER BY position",
                  &readItem,
                  groupClass);
}

std::vector<PlanBlock> ClassPlanStore::blocksOf(ClassId groupClass) const
{
    return rowsOf(m_logbook,
                  "SELECT block, minutes, halves FROM class_block WHERE class = ? ORDER BY block",
                  &readBlock,
                  groupClass);
}

std::vector<ClassWeek> ClassPlanStore::weeksOf(ClassId groupClass) const
{
    auto weeks = rowsOf(m_logbook,
                        "SELECT week, kind, note FROM class_week WHERE class = ? ORDER BY week",
                        &readWeek,
                        groupClass);
    for (ClassWeek& week : weeks) {
        week.items =
            rowsOf(m_logbook,
                   "SELECT exercise, sets, reps, block, reserve_tenths, work_seconds, rest_seconds "
                   "FROM class_week_item WHERE class = ? AND week = ? ORDER BY position",
                   &readItem,
                   groupClass,
                   week.monday);
    }
    return weeks;
}

void ClassPlanStore::setItems(WriteScope& scope,
                              ClassId groupClass,
                              const std::vector<PlanItem>& items)
{
    if (ClassPlanStore(scope.logbook()).itemsOf(groupClass) == items) {
        return;
    }
    execute(scope, "DELETE FROM class_template WHERE class = ?", groupClass);
    int position = 0;
    for (const PlanItem& item : items) {
        execute(scope,
                "INSERT INTO class_template (class, position, exercise, sets, reps, block, "
                "reserve_tenths, work_seconds, rest_seconds) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)",
                groupClass,
                ++position,
                item.what.exercise,
                item.what.sets,
                item.what.reps,
                item.block,
                tenthsOf(item),
                item.workSeconds,
                item.restSeconds);
    }
}

void ClassPlanStore::setBlocks(WriteScope& scope,
                               ClassId groupClass,
                               const std::vector<PlanBlock>& blocks)
{
    if (ClassPlanStore(scope.logbook()).blocksOf(groupClass) == blocks) {
        return;
    }
    execute(scope, "DELETE FROM class_block WHERE class = ?", groupClass);
    for (const PlanBlock& block : blocks) {
        execute(scope,
                "INSERT INTO class_block (class, block, minutes, halves) VALUES (?, ?, ?, ?)",
                groupClass,
                block.number,
                block.minutes,
                block.halves);
    }
}

void ClassPlanStore::setWeek(WriteScope& scope, ClassId groupClass, const ClassWeek& week)
{
    const auto stored = ClassPlanStore(scope.logbook()).weeksOf(groupClass);
    if (std::find(stored.begin(), stored.end(), week) != stored.end()) {
        return;
    }
    removeWeek(scope, groupClass, week.monday);
    execute(scope,
            "INSERT INTO class_week (class, week, kind, note) VALUES (?, ?, ?, ?)",
            groupClass,
            week.monday,
            week.kind,
            week.note);
    int position = 0;
    for (const PlanItem& item : week.items) {
        execute(scope,
                "INSERT INTO class_week_item (class, week, position, exercise, sets, reps, block, "
                "reserve_tenths, work_seconds, rest_seconds) "
                "VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
                groupClass,
                week.monday,
                ++position,
                item.what.exercise,
                item.what.sets,
                item.what.reps,
                item.block,
                tenthsOf(item),
                item.workSeconds,
                item.restSeconds);
    }
}

void ClassPlanStore::removeWeek(WriteScope& scope, ClassId groupClass, Day monday)
{
    execute(scope, "DELETE FROM class_week_item WHERE class = ? AND week = ?", groupClass, monday);
    execute(scope, "DELETE FROM class_week WHERE class = ? AND week = ?", groupClass, monday);
}

} // namespace levelbar::storage
