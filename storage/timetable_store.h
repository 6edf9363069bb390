// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/timetable/places.h"
#include "core/timetable/timetable.h"
#include "storage/action.h"

#include <optional>
#include <string>
#include <vector>

namespace levelbar::storage {

using SlotId = Id<struct SlotTag>;
using DaysId = Id<struct DaysTag>;

struct StoredSlot {
    SlotId id;
    WeeklySlot slot;

    friend bool operator==(const StoredSlot&, const StoredSlot&) = default;
};

// The numbers are stored; do not change them.
enum class DaysKind { Term = 1, Holiday = 2 };

struct StoredDays {
    DaysId id;
    DaysKind kind = DaysKind::Term;
    NamedDays days;

    friend bool operator==(const StoredDays&, const StoredDays&) = default;
};

// The usual room and capacity of a class, for new slots.
struct ClassPlace {
    std::string room;
    std::optional<int> capacity;

    friend bool operator==(const ClassPlace&, const ClassPlace&) = default;
};

// The timetable. What is written must have passed checkTimetable.
class TimetableStore {
public:
    explicit TimetableStore(const Logbook& logbook)
        : m_logbook(logbook)
    {
    }

    // As stored: what a slot leaves open is not filled in. Not of archived classes.
    [[nodiscard]] std::vector<StoredSlot> slots() const; // by weekday, start, class
    [[nodiscard]] std::vector<StoredDays> days() const;  // by kind, first day
    [[nodiscard]] ClassPlace placeOf(ClassId groupClass) const;
    // Everything that concerns these days, with the class's room and capacity where a slot has
    // none. What is in the logbook without being in the timetable (an import, an hour held on a
    // holiday) counts as an extra meeting.
    [[nodiscard]] Timetable timetable(DayRange days) const;
    // The meeting's row, when something is known of it.
    [[nodiscard]] std::optional<MeetingId> rowOf(const MeetingKey& key) const;
    [[nodiscard]] MeetingChange changeOf(const MeetingKey& key) const;

    static SlotId add(WriteScope& scope, const WeeklySlot& slot);
    static void update(WriteScope& scope, SlotId id, const WeeklySlot& slot);
    static void remove(WriteScope& scope, SlotId id);
    static DaysId add(WriteScope& scope, DaysKind kind, const NamedDays& days);
    static void update(WriteScope& scope, DaysId id, const NamedDays& days);
    static void remove(WriteScope& scope, DaysId id);
    static void setPlace(WriteScope& scope, ClassId groupClass, const ClassPlace& place);

    // The meeting's row; made, or given its start, when there is none of that start yet.
    static MeetingId rowFor(WriteScope& scope, const MeetingKey& key);
    // Replaces what differs for the meeting.
    static void change(WriteScope& scope, const MeetingChange& change);
    static MeetingId add(WriteScope& scope, const ExtraMeeting& extra);

private:
    const Logbook& m_logbook;
};

// Who has a place in a meeting.
class BookingStore {
public:
    explicit BookingStore(const Logbook& logbook)
        : m_logbook(logbook)
    {
    }

    // While nobody booked, the people of the class count as booked, by code, as far as there are
    // places; the rest waits. `meeting`: nothing while nothing is known of it.
    [[nodiscard]] MeetingPlaces placesOf(ClassId groupClass,
                                         std::optional<MeetingId> meeting,
                                         std::optional<int> capacity) const;
    // Who gave a place back, by code.
    [[nodiscard]] std::vector<MemberId> cancelledOf(MeetingId meeting) const;

    // Keeps the lists in their order; who is in none of them any more is kept as cancelled.
    static void setPlaces(WriteScope& scope, MeetingId meeting, const MeetingPlaces& places);

private:
    const Logbook& m_logbook;
};

} // namespace levelbar::storage
