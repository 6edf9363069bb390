// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/period_reader.h"

#include "storage/row_binder.h"
#include "storage/row_columns.h"
#include "storage/sqlite_errors.h"

#include <SQLiteCpp/Savepoint.h>

#include <algorithm>
#include <map>
#include <set>

namespace levelbar::storage {

namespace {

constexpr const char* kMeetings = R"sql(
SELECT meeting.id, meeting.is_cancelled, class.capacity
FROM meeting JOIN class ON class.id = meeting.class
WHERE meeting.day BETWEEN ? AND ? ORDER BY meeting.id
)sql";

constexpr const char* kAttendance = R"sql(
SELECT attendance.meeting, attendance.member, attendance.is_booked, attendance.came
FROM attendance JOIN meeting ON meeting.id = attendance.meeting
WHERE meeting.day BETWEEN ? AND ? ORDER BY attendance.meeting, attendance.member
)sql";

constexpr const char* kLoggedThere = R"sql(
SELECT DISTINCT done_set.meeting, done_set.member
FROM done_set JOIN meeting ON meeting.id = done_set.meeting
WHERE meeting.day BETWEEN ? AND ? ORDER BY done_set.meeting, done_set.member
)sql";

constexpr const char* kMembers = "SELECT id, organisation FROM member ORDER BY id";

constexpr const char* kSets = R"sql(
SELECT member, count(*), sum(known = 1) FROM done_set WHERE day BETWEEN ? AND ? GROUP BY member
)sql";

constexpr const char* kTests = R"sql(
SELECT member, count(*) FROM
    (SELECT DISTINCT member, test, day FROM trial WHERE is_valid AND day BETWEEN ? AND ?)
GROUP BY member
)sql";

// A statement over the days, row by row.
template <typename Take>
void overDays(SQLite::Database& database, const char* sql, const PeriodFacts& facts, Take&& take)
{
    SQLite::Statement statement(database, sql);
    Binder(statement).add(facts.from).add(facts.to);
    while (statement.executeStep()) {
        take(Columns(statement));
    }
}

void readMembers(SQLite::Database& database, PeriodFacts& facts)
{
    std::map<MemberId, std::size_t> places;
    SQLite::Statement statement(database, kMembers);
    while (statement.executeStep()) {
        Columns columns(statement);
        MemberPeriod member;
        member.member = columns.id<MemberId>();
        member.group = columns.text();
        places[member.member] = facts.members.size();
        facts.members.push_back(std::move(member));
    }
    overDays(database, kSets, facts, [&](Columns columns) {
        MemberPeriod& member = facts.members[places.at(columns.id<MemberId>())];
        member.sets = columns.whole();
        member.counted = columns.whole();
    });
    overDays(database, kTests, facts, [&](Columns columns) {
        MemberPeriod& member = facts.members[places.at(columns.id<MemberId>())];
        member.tests = columns.whole();
    });
}

void readMeetings(SQLite::Database& database, PeriodFacts& facts)
{
    std::map<MeetingId, PeriodMeeting> meetings;
    std::map<MeetingId, std::set<MemberId>> came;
    overDays(database, kMeetings, facts, [&](Columns columns) {
        PeriodMeeting& meeting = meetings[columns.id<MeetingId>()];
        meeting.isCancelled = columns.flag();
        meeting.capacity = columns.maybeWhole();
    });
    overDays(database, kLoggedThere, facts, [&](Columns columns) {
        const auto meeting = columns.id<MeetingId>();
        came[meeting].insert(columns.id<MemberId>());
    });
    overDays(database, kAttendance, facts, [&](Columns columns) {
        const auto id = columns.id<MeetingId>();
        const auto member = columns.id<MemberId>();
        PeriodMeeting& meeting = meetings.at(id);
        const bool isBooked = columns.flag();
        const std::optional<bool> wasThere = columns.maybeFlag();
        if (isBooked) {
            meeting.booked.push_back(member);
        }
        if (wasThere == true) {
            came[id].insert(member);
        } else if (isBooked && wasThere == false && !meeting.isCancelled &&
                   !came[id].contains(member)) {
            meeting.missed.push_back(member);
        }
    });
    for (auto& [id, meeting] : meetings) {
        if (!meeting.isCancelled) {
            meeting.came.assign(came[id].begin(), came[id].end());
        }
        facts.meetings.push_back(std::move(meeting));
    }
}

} // namespace

PeriodFacts readPeriod(const Logbook& logbook, Day from, Day to)
{
    PeriodFacts facts{from, to, {}, {}};
    translateErrors(logbook.path(), [&] {
        SQLite::Savepoint reading(logbook.database(), "reading_period");
        readMembers(logbook.database(), facts);
        readMeetings(logbook.database(), facts);
        reading.release();
    });
    return facts;
}

std::vector<std::string> groupsOf(const Logbook& logbook)
{
    std::vector<std::string> groups;
    translateErrors(logbook.path(), [&] {
        SQLite::Statement statement(
            logbook.database(),
            "SELECT DISTINCT organisation FROM member ORDER BY organisation = '', organisation");
        while (statement.executeStep()) {
            groups.push_back(Columns(statement).text());
        }
    });
    return groups;
}

} // namespace levelbar::storage
