// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/today_store.h"

#include "storage/random_uid.h"
#include "storage/row_binder.h"
#include "storage/row_columns.h"
#include "storage/sqlite_errors.h"

namespace levelbar::storage {

namespace {

// A timetable's hour shows while its class has no meeting at that start.
constexpr const char* kMeetings = R"sql(
SELECT m.id, m.class, c.name, m.start_minute,
       EXISTS (SELECT 1 FROM done_set d WHERE d.meeting = m.id)
FROM meeting m JOIN class c ON c.id = m.class
WHERE m.day = ?1 AND m.is_cancelled = 0
UNION ALL
SELECT NULL, s.class, c.name, s.start_minute, 0
FROM class_slot s JOIN class c ON c.id = s.class
WHERE s.weekday = ?2 AND s.since <= ?1 AND coalesce(s.until, ?1) >= ?1 AND c.is_archived = 0
  AND (NOT EXISTS (SELECT 1 FROM calendar_days WHERE kind = 1)
       OR EXISTS (SELECT 1 FROM calendar_days
                  WHERE kind = 1 AND ?1 BETWEEN first_day AND last_day))
  AND NOT EXISTS (SELECT 1 FROM calendar_days WHERE kind = 2 AND ?1 BETWEEN first_day AND last_day)
  AND NOT EXISTS (SELECT 1 FROM meeting m WHERE m.class = s.class AND m.day = ?1
                  AND coalesce(m.start_minute, s.start_minute) = s.start_minute)
ORDER BY 4, 3, 1
)sql";

template <typename Read> auto readAll(SQLite::Statement& select, const Read& read)
{
    std::vector<decltype(read(std::declval<Columns&>()))> rows;
    while (select.executeStep()) {
        Columns columns(select);
        rows.push_back(read(columns));
    }
    return rows;
}

DayMeeting readMeeting(Columns& columns)
{
    DayMeeting meeting;
    meeting.meeting = columns.maybeId<MeetingId>();
    meeting.groupClass = columns.id<ClassId>();
    meeting.className = columns.text();
    if (const auto minutes = columns.maybeWhole()) {
        meeting.start = TimeOfDay{*minutes};
    }
    meeting.isLogged = columns.flag();
    return meeting;
}

SettledReason readSettled(Columns& columns)
{
    SettledReason settled;
    settled.member = columns.id<MemberId>();
    settled.kind = columns.word<AttentionKind>();
    settled.until = columns.maybeDay();
    settled.because = columns.text();
    settled.day = columns.day();
    settled.evidence.day = columns.day();
    settled.evidence.amount = columns.whole();
    return settled;
}

FollowUp readFollowUp(Columns& columns)
{
    FollowUp followUp;
    followUp.id = columns.id<FollowUpId>();
    followUp.text = columns.text();
    followUp.owner = columns.text();
    followUp.written = columns.day();
    followUp.due = columns.day();
    followUp.done = columns.maybeDay();
    followUp.member = columns.maybeId<MemberId>();
    followUp.meeting = columns.maybeId<MeetingId>();
    return followUp;
}

} // namespace

std::vector<DayMeeting> TodayStore::meetingsOn(Day day) const
{
    return translateErrors(m_logbook.path(), [&] {
        SQLite::Statement select(m_logbook.database(), kMeetings);
        Binder(select).add(day).add(isoWeekday(day));
        return readAll(select, &readMeeting);
    });
}

std::vector<MemberId> TodayStore::expectedIn(const DayMeeting& meeting) const
{
    return translateErrors(m_logbook.path(), [&] {
        const auto read = [](Columns& columns) { return columns.id<MemberId>(); };
        SQLite::Statement written(
            m_logbook.database(),
            "SELECT m.id FROM attendance a JOIN member m ON m.id = a.member "
            "WHERE a.meeting = ? AND (a.is_booked = 1 OR a.came = 1 OR a.booking = 3) "
            "AND m.is_archived = 0 ORDER BY m.code");
        Binder(written).add(meeting.meeting);
        auto members = readAll(written, read);
        if (members.empty()) {
            SQLite::Statement all(
                m_logbook.database(),
                "SELECT m.id FROM class_member c JOIN member m ON m.id = c.member "
                "WHERE c.class = ? AND m.is_archived = 0 AND NOT EXISTS (SELECT 1 FROM attendance "
                "a "
                "WHERE a.meeting = ? AND a.booking IS NOT NULL) ORDER BY m.code");
            Binder(all).add(meeting.groupClass).add(meeting.meeting);
            members = readAll(all, read);
        }
        return members;
    });
}

std::vector<SettledReason> TodayStore::settled() const
{
    return translateErrors(m_logbook.path(), [&] {
        SQLite::Statement select(m_logbook.database(),
                                 "SELECT member, kind, until, because, day, evidence_day, "
                                 "evidence_amount FROM settled ORDER BY member, kind");
        return readAll(select, &readSettled);
    });
}

std::vector<FollowUp> TodayStore::followUps(Day since) const
{
    return translateErrors(m_logbook.path(), [&] {
        SQLite::Statement select(
            m_logbook.database(),
            "SELECT id, text, owner, written_day, due_day, done_day, member, meeting "
            "FROM follow_up WHERE done_day IS NULL OR done_day >= ? "
            "ORDER BY done_day IS NOT NULL, done_day DESC, due_day, id");
        Binder(select).add(since);
        return readAll(select, &readFollowUp);
    });
}

std::map<MemberId, Day> TodayStore::clearances() const
{
    return translateErrors(m_logbook.path(), [&] {
        SQLite::Statement select(m_logbook.database(),
                                 "SELECT member, cleared_until FROM screening "
                                 "WHERE cleared_until IS NOT NULL ORDER BY day, id");
        std::map<MemberId, Day> ends;
        while (select.executeStep()) {
            Columns columns(select);
            const auto member = columns.id<MemberId>();
            ends[member] = columns.day();
        }
        return ends;
    });
}

void TodayStore::settle(WriteScope& scope, const SettledReason& settled)
{
    translateErrors(scope.logbook().path(), [&] {
        SQLite::Statement write(scope.logbook().database(),
                                "REPLACE INTO settled (member, kind, until, because, day, "
                                "evidence_day, evidence_amount) VALUES (?, ?, ?, ?, ?, ?, ?)");
        Binder(write)
            .add(settled.member)
            .add(settled.kind)
            .add(settled.until)
            .add(settled.because)
            .add(settled.day)
            .add(settled.evidence.day)
            .add(settled.evidence.amount);
        write.exec();
    });
}

void TodayStore::open(WriteScope& scope, MemberId member, AttentionKind kind)
{
    translateErrors(scope.logbook().path(), [&] {
        SQLite::Statement remove(scope.logbook().database(),
                                 "DELETE FROM settled WHERE member = ? AND kind = ?");
        Binder(remove).add(member).add(kind);
        remove.exec();
    });
}

FollowUpId TodayStore::write(WriteScope& scope, const FollowUp& followUp)
{
    return translateErrors(scope.logbook().path(), [&] {
        SQLite::Database& database = scope.logbook().database();
        SQLite::Statement insert(database,
                                 "INSERT INTO follow_up (uid, text, owner, written_day, due_day, "
                                 "done_day, member, meeting) VALUES (?, ?, ?, ?, ?, ?, ?, ?)");
        Binder(insert)
            .addBytes(randomUid())
            .add(followUp.text)
            .add(followUp.owner)
            .add(followUp.written)
            .add(followUp.due)
            .add(followUp.done)
            .add(followUp.member)
            .add(followUp.meeting);
        insert.exec();
        return FollowUpId{database.getLastInsertRowid()};
    });
}

void TodayStore::setDone(WriteScope& scope, FollowUpId followUp, std::optional<Day> done)
{
    translateErrors(scope.logbook().path(), [&] {
        SQLite::Statement change(scope.logbook().database(),
                                 "UPDATE follow_up SET done_day = ? WHERE id = ?");
        Binder(change).add(done).add(followUp);
        change.exec();
    });
}

} // namespace levelbar::storage
