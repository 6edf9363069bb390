// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/setup_store.h"

#include "storage/row_binder.h"
#include "storage/row_columns.h"
#include "storage/sqlite_errors.h"

namespace levelbar::storage {

namespace {

constexpr const char* kSelectSetup = R"sql(
SELECT member, exercise, rack, hook_hole, safety_hole, bench_angle, grip_mark, foot_position, note,
       is_confirmed
FROM setup_card
)sql";

constexpr const char* kUpsert = R"sql(
INSERT INTO setup_card (member, exercise, rack, hook_hole, safety_hole, bench_angle, grip_mark,
                        foot_position, note, is_confirmed)
VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
ON CONFLICT (member, exercise) DO UPDATE SET
    rack = excluded.rack, hook_hole = excluded.hook_hole, safety_hole = excluded.safety_hole,
    bench_angle = excluded.bench_angle, grip_mark = excluded.grip_mark,
    foot_position = excluded.foot_position, note = excluded.note,
    is_confirmed = excluded.is_confirmed
)sql";

SetupCard readCard(SQLite::Statement& row)
{
    Columns columns(row);
    SetupCard card;
    card.member = columns.id<MemberId>();
    card.exercise = columns.id<ExerciseId>();
    card.rack = columns.maybeId<RackId>();
    card.hookHole = columns.maybeWhole();
    card.safetyHole = columns.maybeWhole();
    card.benchAngle = columns.maybeWhole();
    card.gripMark = columns.text();
    card.footPosition = columns.text();
    card.note = columns.text();
    card.isConfirmed = columns.flag();
    return card;
}

std::vector<SetupCard> readCards(SQLite::Statement& select)
{
    std::vector<SetupCard> cards;
    while (select.executeStep()) {
        cards.push_back(readCard(select));
    }
    return cards;
}

} // namespace

std::optional<SetupCard> SetupStore::find(MemberId member, ExerciseId exercise) const
{
    return translateErrors(m_logbook.path(), [&] {
        SQLite::Statement select(m_logbook.database(),
                                 std::string(kSelectSetup) + "WHERE member = ? AND exercise = ?");
        Binder(select).add(member).add(exercise);
        return select.executeStep() ? std::optional(readCard(select)) : std::nullopt;
    });
}

std::vector<SetupCard> SetupStore::ofMember(MemberId member) const
{
    return translateErrors(m_logbook.path(), [&] {
        SQLite::Statement select(m_logbook.database(),
                                 std::string(kSelectSetup) + "WHERE member = ? ORDER BY exercise");
        Binder(select).add(member);
        return readCards(select);
    });
}

std::map<std::pair<MemberId, ExerciseId>, RackSetting>
SetupStore::settingsOf(std::span<const MemberId> members) const
{
    std::map<std::pair<MemberId, ExerciseId>, RackSetting> settings;
    for (const MemberId member : members) {
        for (const SetupCard& card : ofMember(member)) {
            settings[{member, card.exercise}] = {card.hookHole, card.safetyHole, card.benchAngle};
        }
    }
    return settings;
}

std::vector<SetupCard> SetupStore::confirmedBut(ExerciseId exercise, MemberId member) const
{
    return translateErrors(m_logbook.path(), [&] {
        SQLite::Statement select(m_logbook.database(),
                                 std::string(kSelectSetup) +
                                     "WHERE exercise = ? AND member <> ? AND "
                                     "is_confirmed = 1 ORDER BY member");
        Binder(select).add(exercise).add(member);
        return readCards(select);
    });
}

void SetupStore::put(WriteScope& scope, const SetupCard& card)
{
    translateErrors(scope.logbook().path(), [&] {
        SQLite::Statement upsert(scope.logbook().database(), kUpsert);
        Binder(upsert)
            .add(card.member)
            .add(card.exercise)
            .add(card.rack)
            .add(card.hookHole)
            .add(card.safetyHole)
            .add(card.benchAngle)
            .add(card.gripMark)
            .add(card.footPosition)
            .add(card.note)
            .add(card.isConfirmed);
        upsert.exec();
    });
}

void SetupStore::remove(WriteScope& scope, MemberId member, ExerciseId exercise)
{
    translateErrors(scope.logbook().path(), [&] {
        SQLite::Statement remove(scope.logbook().database(),
                                 "DELETE FROM setup_card WHERE member = ? AND exercise = ?");
        Binder(remove).add(member).add(exercise);
        remove.exec();
    });
}

} // namespace levelbar::storage
