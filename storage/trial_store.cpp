// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/trial_store.h"

#include "storage/row_binder.h"
#include "storage/row_columns.h"
#include "storage/sqlite_errors.h"

namespace levelbar::storage {

namespace {

constexpr const char* kSelectTrial =
    "SELECT member, test, day, side, number, value, unit, is_valid, note FROM trial ";

Trial read(SQLite::Statement& row)
{
    Columns columns(row);
    Trial trial;
    trial.member = columns.id<MemberId>();
    trial.test = columns.id<TestId>();
    trial.day = columns.day();
    trial.side = columns.word<Side>();
    trial.number = columns.whole();
    trial.valueThousandths = columns.number();
    trial.unit = columns.text();
    trial.isValid = columns.flag();
    trial.note = columns.text();
    return trial;
}

} // namespace

std::optional<Trial>
TrialStore::find(MemberId member, TestId test, Side side, Day day, int number) const
{
    return translateErrors(m_logbook.path(), [&]() -> std::optional<Trial> {
        SQLite::Statement select(
            m_logbook.database(),
            std::string(kSelectTrial) +
                "WHERE member = ? AND test = ? AND side = ? AND day = ? AND number = ?");
        Binder(select).add(member).add(test).add(side).add(day).add(number);
        return select.executeStep() ? std::optional(read(select)) : std::nullopt;
    });
}

std::vector<Trial> TrialStore::ofMember(MemberId member) const
{
    return translateErrors(m_logbook.path(), [&] {
        SQLite::Statement select(m_logbook.database(),
                                 std::string(kSelectTrial) +
                                     "WHERE member = ? ORDER BY day DESC, test, side, number");
        select.bind(1, member.value);
        std::vector<Trial> trials;
        while (select.executeStep()) {
            trials.push_back(read(select));
        }
        return trials;
    });
}

void TrialStore::add(WriteScope& scope, const Trial& trial)
{
    translateErrors(scope.logbook().path(), [&] {
        SQLite::Statement insert(scope.logbook().database(),
                                 "INSERT INTO trial (member, test, side, day, number, value, unit, "
                                 "is_valid, note, import) "
                                 "VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)");
        Binder(insert)
            .add(trial.member)
            .add(trial.test)
            .add(trial.side)
            .add(trial.day)
            .add(trial.number)
            .add(trial.valueThousandths)
            .add(trial.unit)
            .add(trial.isValid)
            .add(trial.note)
            .add(scope.import());
        insert.exec();
    });
}

void TrialStore::update(WriteScope& scope, const Trial& trial)
{
    const auto stored = TrialStore(scope.logbook())
                            .find(trial.member, trial.test, trial.side, trial.day, trial.number);
    if (!stored) {
        throw StoreError(StoreErrorKind::Constraint, "There is no such trial to change.");
    }
    if (*stored == trial) {
        return;
    }
    translateErrors(scope.logbook().path(), [&] {
        SQLite::Statement change(
            scope.logbook().database(),
            "UPDATE trial SET value = ?, unit = ?, is_valid = ?, note = ?, import = NULL "
            "WHERE member = ? AND test = ? AND side = ? AND day = ? AND number = ?");
        Binder(change)
            .add(trial.valueThousandths)
            .add(trial.unit)
            .add(trial.isValid)
            .add(trial.note)
            .add(trial.member)
            .add(trial.test)
            .add(trial.side)
            .add(trial.day)
            .add(trial.number);
        change.exec();
    });
}

} // namespace levelbar::storage
