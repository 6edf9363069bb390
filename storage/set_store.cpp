// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/set_store.h"

#include "storage/done_set_row.h"
#include "storage/planned_set_row.h"
#include "storage/row_binder.h"
#include "storage/row_columns.h"
#include "storage/sqlite_errors.h"

namespace levelbar::storage {

namespace {

constexpr const char* kByKey =
    " WHERE member = ? AND exercise = ? AND side = ? AND day = ? AND number = ?";

void bindKey(SQLite::Statement& statement, const SetKey& key)
{
    Binder(statement).add(key.member).add(key.exercise).add(key.side).add(key.day).add(key.number);
}

std::string selectSets(const char* where)
{
    return std::string("SELECT ") + kDoneSetColumns + " FROM done_set " + where;
}

std::vector<DoneSet> readSets(SQLite::Statement& select)
{
    std::vector<DoneSet> sets;
    while (select.executeStep()) {
        sets.push_back(readDoneSet(select));
    }
    return sets;
}

} // namespace

SetKey keyOf(const DoneSet& set)
{
    return {set.member, set.exercise, set.side, set.performed.day, set.performed.number};
}

std::optional<DoneSet> SetStore::find(const SetKey& key) const
{
    return translateErrors(m_logbook.path(), [&]() -> std::optional<DoneSet> {
        SQLite::Statement select(m_logbook.database(), selectSets(kByKey));
        bindKey(select, key);
        return select.executeStep() ? std::optional(readDoneSet(select)) : std::nullopt;
    });
}

std::vector<DoneSet> SetStore::ofMember(MemberId member) const
{
    return translateErrors(m_logbook.path(), [&] {
        SQLite::Statement select(
            m_logbook.database(),
            selectSets("WHERE member = ? ORDER BY day DESC, day_order, exercise, side, number"));
        select.bind(1, member.value);
        return readSets(select);
    });
}

std::vector<DoneSet> SetStore::ofMeeting(MeetingId meeting) const
{
    return translateErrors(m_logbook.path(), [&] {
        SQLite::Statement select(
            m_logbook.database(),
            selectSets("WHERE meeting = ? ORDER BY member, day_order, exercise, side, number"));
        select.bind(1, meeting.value);
        return readSets(select);
    });
}

std::vector<PlannedSet> SetStore::plannedOf(MeetingId meeting) const
{
    return translateErrors(m_logbook.path(), [&] {
        SQLite::Statement select(
            m_logbook.database(),
            std::string("SELECT ") + kPlannedSetColumns +
                " FROM planned_set WHERE meeting = ? ORDER BY member, exercise, side, number");
        select.bind(1, meeting.value);
        std::vector<PlannedSet> plan;
        while (select.executeStep()) {
            plan.push_back(readPlannedSet(select));
        }
        return plan;
    });
}

int SetStore::nextNumber(MemberId member, ExerciseId exercise, Side side, Day day) const
{
    return translateErrors(m_logbook.path(), [&] {
        SQLite::Statement select(m_logbook.database(),
                                 "SELECT coalesce(max(number), 0) + 1 FROM done_set "
                                 "WHERE member = ? AND exercise = ? AND side = ? AND day = ?");
        Binder(select).add(member).add(exercise).add(side).add(day);
        select.executeStep();
        return select.getColumn(0).getInt();
    });
}

int SetStore::nextOrder(MemberId member, Day day) const
{
    return translateErrors(m_logbook.path(), [&] {
        SQLite::Statement select(m_logbook.database(),
                                 "SELECT coalesce(max(day_order), 0) + 1 FROM done_set "
                                 "WHERE member = ? AND day = ?");
        Binder(select).add(member).add(day);
        select.executeStep();
        return select.getColumn(0).getInt();
    });
}

void SetStore::add(WriteScope& scope, const DoneSet& set)
{
    translateErrors(scope.logbook().path(), [&] {
        SQLite::Statement insert(scope.logbook().database(), kInsertDoneSet);
        bindDoneSet(insert, set, scope.import());
        insert.exec();
    });
}

void SetStore::update(WriteScope& scope, const DoneSet& set)
{
    const auto stored = SetStore(scope.logbook()).find(keyOf(set));
    if (!stored) {
        throw StoreError(StoreErrorKind::Constraint, "There is no such set to change.");
    }
    if (*stored == set) {
        return;
    }
    translateErrors(scope.logbook().path(), [&] {
        // A whole new row under the same key; a changed row belongs to no import any more.
        SQLite::Statement replace(scope.logbook().database(),
                                  std::string("REPLACE") + (kInsertDoneSet + 6));
        bindDoneSet(replace, set, std::nullopt);
        replace.exec();
    });
}

void SetStore::remove(WriteScope& scope, const SetKey& key)
{
    translateErrors(scope.logbook().path(), [&] {
        SQLite::Statement remove(scope.logbook().database(),
                                 std::string("DELETE FROM done_set") + kByKey);
        bindKey(remove, key);
        remove.exec();
    });
}

PlannedSetId SetStore::plan(WriteScope& scope, const PlannedSet& planned)
{
    return translateErrors(scope.logbook().path(), [&] {
        SQLite::Database& database = scope.logbook().database();
        SQLite::Statement insert(database, kInsertPlannedSet);
        bindPlannedSet(insert, planned);
        insert.exec();
        return PlannedSetId{database.getLastInsertRowid()};
    });
}

void SetStore::updatePlanned(WriteScope& scope, const PlannedSet& planned)
{
    translateErrors(scope.logbook().path(), [&] {
        SQLite::Statement change(
            scope.logbook().database(),
            "UPDATE planned_set SET load = ?, load_unit = ?, amount = ?, reserve_tenths = ? "
            "WHERE id = ?");
        Binder(change)
            .add(planned.load.thousandths())
            .add(planned.load.unit())
            .add(planned.amount)
            .add(planned.reserve ? std::optional(planned.reserve->tenths) : std::nullopt)
            .add(planned.id);
        change.exec();
    });
}

void SetStore::removePlanned(WriteScope& scope, PlannedSetId planned)
{
    translateErrors(scope.logbook().path(), [&] {
        SQLite::Statement remove(scope.logbook().database(),
                                 "DELETE FROM planned_set WHERE id = ?");
        remove.bind(1, planned.value);
        remove.exec();
    });
}

} // namespace levelbar::storage
