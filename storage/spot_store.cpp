// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/spot_store.h"

#include "storage/row_query.h"

namespace levelbar::storage {

std::vector<FloorSpot> SpotStore::ofMeeting(MeetingId meeting) const
{
    return rowsOf(
        m_logbook,
        "SELECT member, bib, rack, turn, late_minutes, left_minute, easy_at FROM attendance "
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
            spot.said.easyAt = columns.maybeMoment();
            return spot;
        },
        meeting);
}

void SpotStore::put(WriteScope& scope, MeetingId meeting, const FloorSpot& spot)
{
    execute(scope,
            "INSERT INTO attendance (meeting, member, bib, rack, turn, late_minutes, left_minute, "
            "easy_at) VALUES (?, ?, ?, ?, ?, ?, ?, ?) ON CONFLICT (meeting, member) DO UPDATE "
            "SET bib = excluded.bib, rack = excluded.rack, turn = excluded.turn, late_minutes = "
            "excluded.late_minutes, left_minute = excluded.left_minute, easy_at = "
            "excluded.easy_at, import = NULL",
            meeting,
            spot.said.member,
            spot.bib,
            spot.rack,
            spot.turn,
            spot.said.minutesLate,
            spot.said.leftMinute,
            spot.said.easyAt);
}

} // namespace levelbar::storage
