// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/session_store.h"

#include "storage/row_query.h"

namespace levelbar::storage {

namespace {

PrintedSheet readSheet(Columns& columns)
{
    PrintedSheet sheet;
    sheet.id = columns.id<SheetId>();
    sheet.meeting = columns.id<MeetingId>();
    sheet.printedAt = Moment{columns.number()};
    return sheet;
}

PrintedRow readPrinted(Columns& columns)
{
    PrintedRow row;
    row.member = columns.id<MemberId>();
    row.station = columns.whole();
    return row;
}

void readPrinteds(const Logbook& logbook, std::vector<PrintedSheet>& sheets)
{
    for (PrintedSheet& sheet : sheets) {
        sheet.rows = rowsOf(logbook,
                            "SELECT member, station FROM printed_row WHERE sheet = ? ORDER BY row",
                            &readPrinted,
                            sheet.id);
    }
}

} // namespace

std::map<MemberId, int> SessionStore::ratingsOf(MeetingId meeting) const
{
    std::map<MemberId, int> ratings;
    rowsOf(
        m_logbook,
        "SELECT member, rating FROM attendance WHERE meeting = ? AND rating IS NOT NULL",
        [&ratings](Columns& columns) {
            const auto member = columns.id<MemberId>();
            ratings[member] = columns.whole();
            return member;
        },
        meeting);
    return ratings;
}

std::optional<int> SessionStore::minutesOf(MeetingId meeting) const
{
    const auto found = rowsOf(
        m_logbook,
        "SELECT minutes FROM meeting WHERE id = ?",
        [](Columns& columns) { return columns.maybeWhole(); },
        meeting);
    return found.empty() ? std::nullopt : found.front();
}

std::map<MemberId, std::vector<RatedSession>>
SessionStore::rated(DayRange days, std::optional<MemberId> only) const
{
    // 1970-01-01, day 0, was a Thursday; ISO weekdays count from Monday.
    constexpr const char* kRated = R"sql(
SELECT a.member, m.day, a.rating, coalesce(m.minutes, (
    SELECT s.minutes FROM class_slot s
    WHERE s.class = m.class AND s.start_minute = m.start_minute
      AND s.weekday = (m.day + 3) % 7 + 1 AND s.since <= m.day AND coalesce(s.until, m.day) >= m.day
    ORDER BY s.since DESC LIMIT 1)) AS length
FROM attendance a JOIN meeting m ON m.id = a.meeting
WHERE m.day BETWEEN ? AND ? AND a.rating IS NOT NULL AND length IS NOT NULL
  AND a.member = coalesce(?, a.member)
ORDER BY a.member, m.day
)sql";
    std::map<MemberId, std::vector<RatedSession>> sessions;
    rowsOf(
        m_logbook,
        kRated,
        [&sessions](Columns& columns) {
            const auto member = columns.id<MemberId>();
            RatedSession session;
            session.day = columns.day();
            session.rating = columns.whole();
            session.minutes = columns.whole();
            sessions[member].push_back(session);
            return member;
        },
        days.first,
        days.last,
        only);
    return sessions;
}

std::optional<PrintedSheet> SessionStore::sheet(SheetId id) const
{
    auto found = rowsOf(m_logbook,
                        "SELECT id, meeting, printed_at FROM printed_sheet WHERE id = ?",
                        &readSheet,
                        id);
    readPrinteds(m_logbook, found);
    return found.empty() ? std::nullopt : std::optional(found.front());
}

std::vector<PrintedSheet> SessionStore::sheetsOf(MeetingId meeting) const
{
    auto found = rowsOf(
        m_logbook,
        "SELECT id, meeting, printed_at FROM printed_sheet WHERE meeting = ? ORDER BY id DESC",
        &readSheet,
        meeting);
    readPrinteds(m_logbook, found);
    return found;
}

void SessionStore::setRating(WriteScope& scope,
                             MeetingId meeting,
                             MemberId member,
                             std::optional<int> rating)
{
    execute(scope,
            "INSERT INTO attendance (meeting, member, rating) VALUES (?, ?, ?) "
            "ON CONFLICT (meeting, member) DO UPDATE SET rating = excluded.rating, import = NULL",
            meeting,
            member,
            rating);
}

void SessionStore::setMinutes(WriteScope& scope, MeetingId meeting, std::optional<int> minutes)
{
    execute(scope, "UPDATE meeting SET minutes = ? WHERE id = ?", minutes, meeting);
}

SheetId SessionStore::add(WriteScope& scope, const PrintedSheet& sheet)
{
    const SheetId id{execute(scope,
                             "INSERT INTO printed_sheet (meeting, printed_at) VALUES (?, ?)",
                             sheet.meeting,
                             sheet.printedAt)};
    int row = 0;
    for (const PrintedRow& printed : sheet.rows) {
        execute(scope,
                "INSERT INTO printed_row (sheet, row, member, station) VALUES (?, ?, ?, ?)",
                id,
                ++row,
                printed.member,
                printed.station);
    }
    return id;
}

} // namespace levelbar::storage
