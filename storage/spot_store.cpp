// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/spot_store.h"

#include "storage/row_query.h"

namespace levelbar::storage {

std::vector<FloorSpot> SpotStore::ofMeeting(MeetingId meeting) const
{
    return rowsOf(
        m_logbook,
        "SELECT member, bib, rack, turn, late_minutes, left_minute, left_reason, "
        "easy_at FROM attendance "
        "WHERE meeting = ? AND bib IS NOT NULL AND rack IS NOT NULL AND turn IS NOT NULL "
        "ORDER BY member",
        [](Columns& columns) {
            FloorSpot spot;
            spot.said.member = columns.id<MemberId>();
            spot.bib = columns.whole();
            spot.rack = columns.whole();
            spot.turn = columns.whole();
            spot.said.minutesLate = columns.maybeWhole();
            spot.said.leftMinute = columns.maybeWhole();
            // A word from elsewhere says no more than that they left.
            spot.said.leftWhy = parseLeftWhy(columns.text()).value_or(LeftWhy::NotSaid);
            spot.said.easyAt = columns.maybeMoment();
            return spot;
        },
        meeting);
}

std::map<MemberId, LeftWhy> SpotStore::leftLastTime(Day before) const
{
    struct Visit {
        MemberId member;
        std::optional<int> leftMinute;
        std::string why;
    };

    std::map<MemberId, LeftWhy> left;
    const auto visits = rowsOf(
        m_logbook,
        "SELECT a.member, a.left_minute, a.left_reason FROM attendance a JOIN meeting m "
        "ON m.id = a.meeting WHERE a.came = 1 AND m.day < ? "
        "ORDER BY m.day, m.start_minute, m.id",
        [](Columns& columns) {
            Visit visit;
            visit.member = columns.id<MemberId>();
            visit.leftMinute = columns.maybeWhole();
            visit.why = columns.text();
            return visit;
        },
        before);
    for (const Visit& visit : visits) {
        left.erase(visit.member);
        if (visit.leftMinute) {
            left.emplace(visit.member, parseLeftWhy(visit.why).value_or(LeftWhy::NotSaid));
        }
    }
    return left;
}

void SpotStore::put(WriteScope& scope, MeetingId meeting, const FloorSpot& spot)
{
    execute(scope,
            "INSERT INTO attendance (meeting, member, bib, rack, turn, late_minutes, left_minute, "
            "left_reason, easy_at) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?) ON CONFLICT (meeting, "
            "member) DO UPDATE "
            "SET bib = excluded.bib, rack = excluded.rack, turn = excluded.turn, late_minutes = "
            "excluded.late_minutes, left_minute = excluded.left_minute, left_reason = "
            "excluded.left_reason, easy_at = excluded.easy_at, import = NULL",
            meeting,
            spot.said.member,
            spot.bib,
            spot.rack,
            spot.turn,
            spot.said.minutesLate,
            spot.said.leftMinute,
            std::string(leftWhyWord(spot.said.leftWhy)),
            spot.said.easyAt);
}

} // namespace levelbar::storage
