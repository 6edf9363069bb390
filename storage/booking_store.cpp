// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/class_store.h"
#include "storage/row_query.h"
#include "storage/timetable_store.h"

#include <algorithm>
#include <map>

namespace levelbar::storage {

namespace {

// The numbers are stored; do not change them.
enum class Booking { Booked = 1, Waiting = 2, DropIn = 3, Cancelled = 4 };

struct BookingRow {
    MemberId member;
    Booking booking = Booking::Booked;
    int order = 0;

    friend bool operator==(const BookingRow&, const BookingRow&) = default;
};

BookingRow readBooking(Columns& columns)
{
    BookingRow row;
    row.member = columns.id<MemberId>();
    row.booking = columns.word<Booking>();
    row.order = columns.whole();
    return row;
}

// Of people who are not archived; who was written down without a booking is not there.
std::vector<BookingRow> rowsIn(const Logbook& logbook, MeetingId meeting)
{
    return rowsOf(logbook,
                  "SELECT a.member, coalesce(a.booking, 1), a.place_order "
                  "FROM attendance a JOIN member m ON m.id = a.member "
                  "WHERE a.meeting = ? AND (a.booking IS NOT NULL OR a.is_booked = 1) "
                  "AND m.is_archived = 0 ORDER BY a.place_order, m.code",
                  &readBooking,
                  meeting);
}

void keep(WriteScope& scope, MeetingId meeting, const BookingRow& row)
{
    execute(scope,
            "INSERT INTO attendance (meeting, member, is_booked, booking, place_order) "
            "VALUES (?, ?, ?, ?, ?) ON CONFLICT (meeting, member) DO UPDATE SET "
            "is_booked = excluded.is_booked, booking = excluded.booking, "
            "place_order = excluded.place_order, import = NULL",
            meeting,
            row.member,
            row.booking == Booking::Booked,
            row.booking,
            row.order);
}

} // namespace

MeetingPlaces BookingStore::placesOf(ClassId groupClass,
                                     std::optional<MeetingId> meeting,
                                     std::optional<int> capacity) const
{
    MeetingPlaces places;
    places.capacity = capacity;
    const auto rows = meeting ? rowsIn(m_logbook, *meeting) : std::vector<BookingRow>{};
    for (const BookingRow& row : rows) {
        if (row.booking == Booking::Booked) {
            places.booked.push_back(row.member);
        } else if (row.booking == Booking::Waiting) {
            places.waiting.push_back(row.member);
        } else if (row.booking == Booking::DropIn) {
            places.dropIns.push_back(row.member);
        }
    }
    if (rows.empty()) {
        for (const MemberId member : ClassStore(m_logbook).membersOf(groupClass)) {
            places = book(std::move(places), member);
        }
    }
    return places;
}

std::vector<MemberId> BookingStore::cancelledOf(MeetingId meeting) const
{
    return rowsOf(
        m_logbook,
        "SELECT a.member FROM attendance a JOIN member m ON m.id = a.member "
        "WHERE a.meeting = ? AND a.booking = 4 AND m.is_archived = 0 ORDER BY m.code",
        [](Columns& columns) { return columns.id<MemberId>(); },
        meeting);
}

void BookingStore::setPlaces(WriteScope& scope, MeetingId meeting, const MeetingPlaces& places)
{
    const auto stored = rowsIn(scope.logbook(), meeting);
    int order = 0;
    std::map<MemberId, BookingRow> wanted;
    const auto want = [&](const std::vector<MemberId>& members, Booking booking) {
        for (const MemberId member : members) {
            wanted[member] = {member, booking, ++order};
        }
    };
    want(places.booked, Booking::Booked);
    want(places.waiting, Booking::Waiting);
    want(places.dropIns, Booking::DropIn);
    for (const BookingRow& row : stored) {
        wanted.try_emplace(row.member, BookingRow{row.member, Booking::Cancelled, row.order});
    }
    for (const auto& [member, row] : wanted) {
        if (std::find(stored.begin(), stored.end(), row) == stored.end()) {
            keep(scope, meeting, row);
        }
    }
}

} // namespace levelbar::storage
