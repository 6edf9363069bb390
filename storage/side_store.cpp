// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/side_store.h"

#include "storage/exercise_detail_store.h"
#include "storage/row_binder.h"
#include "storage/row_columns.h"
#include "storage/sqlite_errors.h"
#include "storage/store_error.h"

#include <cmath>
#include <string>

namespace levelbar::storage {

namespace {

// One of the two is NULL: IS finds it, = would not.
constexpr const char* kSameMeasure = "exercise IS ? AND test IS ?";

MeasureKey readMeasure(Columns& columns)
{
    MeasureKey key;
    key.exercise = columns.maybeId<ExerciseId>();
    key.test = columns.maybeId<TestId>();
    return key;
}

void addMeasure(Binder& binder, const MeasureKey& key)
{
    binder.add(key.exercise).add(key.test);
}

// Every row of the three tables, of one person or of all.
void readRecords(SQLite::Database& database,
                 std::optional<MemberId> only,
                 std::map<MemberId, SideRecords>& records)
{
    const std::string who = only ? " WHERE member = " + std::to_string(only->value) : std::string();
    SQLite::Statement reasons(
        database,
        "SELECT member, exercise, test, reason, since, ended, agreed_percent FROM side_reason" +
            who + " ORDER BY member, since, id");
    while (reasons.executeStep()) {
        Columns columns(reasons);
        const auto member = columns.id<MemberId>();
        KnownReason reason;
        reason.measure = readMeasure(columns);
        reason.text = columns.text();
        reason.since = columns.day();
        reason.ended = columns.maybeDay();
        reason.agreedPercent = columns.maybeReal().value_or(0.0);
        records[member].reasons.push_back(std::move(reason));
    }
    SQLite::Statement surgeries(database,
                                "SELECT member, area, exercise, test, side, day FROM surgery" +
                                    who + " ORDER BY member, day, id");
    while (surgeries.executeStep()) {
        Columns columns(surgeries);
        const auto member = columns.id<MemberId>();
        Surgery surgery;
        surgery.area = columns.text();
        const MeasureKey key = readMeasure(columns);
        if (key != MeasureKey{}) {
            surgery.measure = key;
        }
        surgery.side = columns.word<Side>();
        surgery.day = columns.day();
        records[member].surgeries.push_back(std::move(surgery));
    }
    SQLite::Statement prescriptions(
        database,
        "SELECT member, exercise, started, ended, why_ended, wants_extra_set "
        "FROM side_prescription" +
            who + " ORDER BY member, started, exercise");
    while (prescriptions.executeStep()) {
        Columns columns(prescriptions);
        const auto member = columns.id<MemberId>();
        SidePrescription prescription;
        prescription.exercise = columns.id<ExerciseId>();
        prescription.started = columns.day();
        prescription.ended = columns.maybeDay();
        prescription.why = columns.maybeWord<SideEnd>();
        prescription.wantsExtraSet = columns.flag();
        records[member].prescriptions.push_back(prescription);
    }
}

SQLite::Statement surgeryStatement(SQLite::Database& database,
                                   const std::string& head,
                                   MemberId member,
                                   const Surgery& surgery)
{
    SQLite::Statement statement(database,
                                head + " WHERE member = ? AND area = ? AND " + kSameMeasure +
                                    " AND side = ? AND day = ?");
    Binder binder(statement);
    binder.add(member).add(surgery.area);
    addMeasure(binder, surgery.measure.value_or(MeasureKey{}));
    binder.add(surgery.side).add(surgery.day);
    return statement;
}

} // namespace

SideRecords SideStore::ofMember(MemberId member) const
{
    return translateErrors(m_logbook.path(), [&] {
        std::map<MemberId, SideRecords> records;
        readRecords(m_logbook.database(), member, records);
        return std::move(records[member]);
    });
}

std::map<MemberId, SideRecords> SideStore::all() const
{
    return translateErrors(m_logbook.path(), [&] {
        std::map<MemberId, SideRecords> records;
        readRecords(m_logbook.database(), std::nullopt, records);
        return records;
    });
}

std::map<MeasureKey, double> SideStore::thresholds() const
{
    return translateErrors(m_logbook.path(), [&] {
        std::map<MeasureKey, double> thresholds;
        SQLite::Statement select(m_logbook.database(),
                                 "SELECT exercise, test, percent_tenths FROM side_threshold");
        while (select.executeStep()) {
            Columns columns(select);
            const MeasureKey key = readMeasure(columns);
            thresholds[key] = columns.whole() / 10.0;
        }
        return thresholds;
    });
}

ReviewSettings SideStore::reviewSettings() const
{
    ReviewSettings settings;
    settings.sideThresholds = thresholds();
    settings.sideRecords = all();
    for (auto& [exercise, detail] : ExerciseDetailStore(m_logbook).all()) {
        if (!detail.areas.empty()) {
            settings.areas.emplace(exercise, std::move(detail.areas));
        }
    }
    return settings;
}

void SideStore::putReason(WriteScope& scope, MemberId member, const KnownReason& reason)
{
    SQLite::Database& database = scope.logbook().database();
    translateErrors(scope.logbook().path(), [&] {
        SQLite::Statement remove(database,
                                 std::string("DELETE FROM side_reason WHERE member = ? AND ") +
                                     kSameMeasure + " AND since = ?");
        Binder removed(remove);
        removed.add(member);
        addMeasure(removed, reason.measure);
        removed.add(reason.since);
        remove.exec();
        SQLite::Statement end(
            database,
            std::string("UPDATE side_reason SET ended = ? WHERE member = ? AND ") + kSameMeasure +
                " AND since < ? AND (ended IS NULL OR ended > ?)");
        Binder ended(end);
        ended.add(reason.since).add(member);
        addMeasure(ended, reason.measure);
        ended.add(reason.since).add(reason.since);
        end.exec();
        SQLite::Statement insert(
            database,
            "INSERT INTO side_reason (member, exercise, test, reason, since, ended, "
            "agreed_percent) VALUES (?, ?, ?, ?, ?, ?, ?)");
        Binder added(insert);
        added.add(member);
        addMeasure(added, reason.measure);
        added.add(reason.text).add(reason.since).add(reason.ended).addReal(reason.agreedPercent);
        insert.exec();
    });
}

void SideStore::setThreshold(WriteScope& scope, const MeasureKey& measure, double percent)
{
    SQLite::Database& database = scope.logbook().database();
    translateErrors(scope.logbook().path(), [&] {
        SQLite::Statement remove(database,
                                 std::string("DELETE FROM side_threshold WHERE ") + kSameMeasure);
        Binder removed(remove);
        addMeasure(removed, measure);
        remove.exec();
        const auto tenths = static_cast<int>(std::lround(10.0 * percent));
        if (tenths == std::lround(10.0 * kUsualThreshold)) {
            return;
        }
        SQLite::Statement insert(
            database,
            "INSERT INTO side_threshold (exercise, test, percent_tenths) VALUES (?, ?, ?)");
        Binder added(insert);
        addMeasure(added, measure);
        added.add(tenths);
        insert.exec();
    });
}

void SideStore::putPrescription(WriteScope& scope,
                                MemberId member,
                                const SidePrescription& prescription)
{
    SQLite::Database& database = scope.logbook().database();
    translateErrors(scope.logbook().path(), [&] {
        SQLite::Statement running(database,
                                  "SELECT 1 FROM side_prescription WHERE member = ? AND exercise = "
                                  "? AND started <> ? AND ended IS NULL");
        Binder(running).add(member).add(prescription.exercise).add(prescription.started);
        if (!prescription.ended && running.executeStep()) {
            throw StoreError(StoreErrorKind::Constraint,
                             "Another prescription for this exercise is still running.");
        }
        SQLite::Statement upsert(database, R"sql(
INSERT INTO side_prescription (member, exercise, started, ended, why_ended, wants_extra_set)
VALUES (?, ?, ?, ?, ?, ?)
ON CONFLICT (member, exercise, started) DO UPDATE SET ended = excluded.ended,
    why_ended = excluded.why_ended, wants_extra_set = excluded.wants_extra_set
)sql");
        Binder(upsert)
            .add(member)
            .add(prescription.exercise)
            .add(prescription.started)
            .add(prescription.ended)
            .add(prescription.why)
            .add(prescription.wantsExtraSet);
        upsert.exec();
    });
}

void SideStore::addSurgery(WriteScope& scope, MemberId member, const Surgery& surgery)
{
    SQLite::Database& database = scope.logbook().database();
    translateErrors(scope.logbook().path(), [&] {
        SQLite::Statement known =
            surgeryStatement(database, "SELECT 1 FROM surgery", member, surgery);
        if (known.executeStep()) {
            return;
        }
        SQLite::Statement insert(database,
                                 "INSERT INTO surgery (member, area, exercise, test, side, day) "
                                 "VALUES (?, ?, ?, ?, ?, ?)");
        Binder added(insert);
        added.add(member).add(surgery.area);
        addMeasure(added, surgery.measure.value_or(MeasureKey{}));
        added.add(surgery.side).add(surgery.day);
        insert.exec();
    });
}

void SideStore::removeSurgery(WriteScope& scope, MemberId member, const Surgery& surgery)
{
    translateErrors(scope.logbook().path(), [&] {
        surgeryStatement(scope.logbook().database(), "DELETE FROM surgery", member, surgery).exec();
    });
}

} // namespace levelbar::storage
