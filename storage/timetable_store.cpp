// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/timetable_store.h"

#include "storage/random_uid.h"
#include "storage/row_query.h"

#include <algorithm>
#include <set>

namespace levelbar::storage {

namespace {

// A slot always has a first day in the store: the first that can be typed means none.
constexpr Day kNoFirstDay{-25567}; // 1900-01-01

// An hour in the logbook, as far as the timetable goes.
struct MeetingRow {
    MeetingKey key;
    MeetingPlan plan;
    bool isExtra = false;
    std::optional<std::string> cancelled;
};

TimeOfDay timeOf(Columns& columns)
{
    return TimeOfDay{columns.whole()};
}

StoredSlot readSlot(Columns& columns)
{
    StoredSlot stored;
    WeeklySlot& slot = stored.slot;
    stored.id = columns.id<SlotId>();
    slot.groupClass = columns.id<ClassId>();
    slot.weekday = columns.whole();
    slot.start = timeOf(columns);
    slot.plan.minutes = columns.whole();
    slot.plan.room = columns.text();
    slot.plan.instructor = columns.text();
    slot.plan.capacity = columns.maybeWhole();
    const Day from = columns.day();
    slot.from = from > kNoFirstDay ? std::optional(from) : std::nullopt;
    slot.until = columns.maybeDay();
    return stored;
}

StoredDays readDays(Columns& columns)
{
    StoredDays stored;
    stored.id = columns.id<DaysId>();
    stored.kind = columns.word<DaysKind>();
    stored.days.name = columns.text();
    stored.days.days.first = columns.day();
    stored.days.days.last = columns.day();
    return stored;
}

MeetingRow readMeetingRow(Columns& columns)
{
    MeetingRow row;
    row.key.day = columns.day();
    row.key.start = timeOf(columns);
    row.key.groupClass = columns.id<ClassId>();
    row.plan.room = columns.text();
    row.plan.instructor = columns.text();
    if (const auto minutes = columns.maybeWhole()) {
        row.plan.minutes = *minutes;
    }
    row.plan.capacity = columns.maybeWhole();
    row.isExtra = columns.flag();
    const bool isCancelled = columns.flag();
    const std::string reason = columns.text();
    if (isCancelled) {
        row.cancelled = reason;
    }
    return row;
}

std::optional<std::string> unlessEmpty(const std::string& text)
{
    return text.empty() ? std::nullopt : std::optional(text);
}

constexpr const char* kRowColumns = "SELECT day, start_minute, class, room, instructor, minutes, "
                                    "capacity, is_extra, is_cancelled, cancelled_reason "
                                    "FROM meeting ";

MeetingChange changeIn(const MeetingRow& row)
{
    return {row.key, row.cancelled, unlessEmpty(row.plan.room), unlessEmpty(row.plan.instructor)};
}

// A meeting of the timetable may last to midnight at most, however it came into the logbook.
// What the meeting leaves open is as the class usually has it.
void fillIn(MeetingPlan& plan, const ClassPlace& usual)
{
    if (plan.room.empty()) {
        plan.room = usual.room;
    }
    if (!plan.capacity) {
        plan.capacity = usual.capacity;
    }
}

MeetingPlan withinTheDay(MeetingPlan plan, TimeOfDay start)
{
    constexpr int kMinutesOfADay = 24 * 60;
    plan.minutes = std::min(plan.minutes, kMinutesOfADay - start.minutes);
    return plan;
}

// Sorts a row into changes of what the weekly slots make, and extra meetings.
void take(const MeetingRow& row, const std::set<MeetingKey>& weekly, Timetable& timetable)
{
    const MeetingChange change = changeIn(row);
    if (!weekly.contains(row.key)) {
        if (row.isExtra || !row.cancelled) {
            timetable.extras.push_back({row.key, withinTheDay(row.plan, row.key.start)});
        }
        if (row.isExtra && row.cancelled) {
            timetable.changes.push_back({row.key, row.cancelled, std::nullopt, std::nullopt});
        }
    } else if (change.cancelled || change.room || change.cover) {
        timetable.changes.push_back(change);
    }
}

} // namespace

std::vector<StoredSlot> TimetableStore::slots() const
{
    return rowsOf(m_logbook,
                  "SELECT s.id, s.class, s.weekday, s.start_minute, s.minutes, s.room, "
                  "s.instructor, s.capacity, s.since, s.until "
                  "FROM class_slot s JOIN class c ON c.id = s.class WHERE c.is_archived = 0 "
                  "ORDER BY s.weekday, s.start_minute, s.class, s.id",
                  &readSlot);
}

std::vector<StoredDays> TimetableStore::days() const
{
    return rowsOf(m_logbook,
                  "SELECT id, kind, name, first_day, last_day FROM calendar_days "
                  "ORDER BY kind, first_day, id",
                  &readDays);
}

ClassPlace TimetableStore::placeOf(ClassId groupClass) const
{
    const auto found = rowsOf(
        m_logbook,
        "SELECT room, capacity FROM class WHERE id = ?",
        [](Columns& columns) {
            ClassPlace place;
            place.room = columns.text();
            place.capacity = columns.maybeWhole();
            return place;
        },
        groupClass);
    return found.empty() ? ClassPlace{} : found.front();
}

Timetable TimetableStore::timetable(DayRange days) const
{
    Timetable timetable;
    for (const StoredSlot& stored : slots()) {
        WeeklySlot slot = stored.slot;
        fillIn(slot.plan, placeOf(slot.groupClass));
        timetable.slots.push_back(std::move(slot));
    }
    for (const StoredDays& stored : this->days()) {
        auto& list = stored.kind == DaysKind::Term ? timetable.terms : timetable.holidays;
        list.push_back(stored.days);
    }
    std::set<MeetingKey> weekly;
    for (const TimetabledMeeting& meeting : meetingsOf(timetable, days)) {
        weekly.insert(meeting.key);
    }
    const std::string sql = std::string(kRowColumns) +
                            "WHERE day BETWEEN ? AND ? AND start_minute IS NOT NULL "
                            "GROUP BY day, start_minute, class HAVING id = min(id) "
                            "ORDER BY day, start_minute, class";
    for (MeetingRow& row : rowsOf(m_logbook, sql.c_str(), &readMeetingRow, days.first, days.last)) {
        if (!weekly.contains(row.key)) {
            fillIn(row.plan, placeOf(row.key.groupClass));
        }
        take(row, weekly, timetable);
    }
    return timetable;
}

std::optional<MeetingId> TimetableStore::rowOf(const MeetingKey& key) const
{
    // One without a start is that of the day, unless another has this start.
    const auto found = rowsOf(
        m_logbook,
        "SELECT id FROM meeting WHERE class = ? AND day = ? "
        "AND (start_minute = ? OR start_minute IS NULL) ORDER BY start_minute IS NULL, id",
        [](Columns& columns) { return columns.id<MeetingId>(); },
        key.groupClass,
        key.day,
        key.start.minutes);
    return found.empty() ? std::nullopt : std::optional(found.front());
}

MeetingChange TimetableStore::changeOf(const MeetingKey& key) const
{
    const auto id = rowOf(key);
    if (!id) {
        return {key, std::nullopt, std::nullopt, std::nullopt};
    }
    const std::string sql = std::string(kRowColumns) + "WHERE id = ?";
    const auto rows = rowsOf(m_logbook, sql.c_str(), &readMeetingRow, *id);
    MeetingChange change = changeIn(rows.front());
    change.meeting = key;
    return change;
}

SlotId TimetableStore::add(WriteScope& scope, const WeeklySlot& slot)
{
    return SlotId{execute(scope,
                          "INSERT INTO class_slot (class, weekday, start_minute, minutes, room, "
                          "instructor, capacity, since, until) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)",
                          slot.groupClass,
                          slot.weekday,
                          slot.start.minutes,
                          slot.plan.minutes,
                          slot.plan.room,
                          slot.plan.instructor,
                          slot.plan.capacity,
                          slot.from.value_or(kNoFirstDay),
                          slot.until)};
}

void TimetableStore::update(WriteScope& scope, SlotId id, const WeeklySlot& slot)
{
    execute(scope,
            "UPDATE class_slot SET class = ?, weekday = ?, start_minute = ?, minutes = ?, room = "
            "?, instructor = ?, capacity = ?, since = ?, until = ? WHERE id = ?",
            slot.groupClass,
            slot.weekday,
            slot.start.minutes,
            slot.plan.minutes,
            slot.plan.room,
            slot.plan.instructor,
            slot.plan.capacity,
            slot.from.value_or(kNoFirstDay),
            slot.until,
            id);
}

void TimetableStore::remove(WriteScope& scope, SlotId id)
{
    execute(scope, "DELETE FROM class_slot WHERE id = ?", id);
}

DaysId TimetableStore::add(WriteScope& scope, DaysKind kind, const NamedDays& days)
{
    return DaysId{
        execute(scope,
                "INSERT INTO calendar_days (kind, name, first_day, last_day) VALUES (?, ?, ?, ?)",
                kind,
                days.name,
                days.days.first,
                days.days.last)};
}

void TimetableStore::update(WriteScope& scope, DaysId id, const NamedDays& days)
{
    execute(scope,
            "UPDATE calendar_days SET name = ?, first_day = ?, last_day = ? WHERE id = ?",
            days.name,
            days.days.first,
            days.days.last,
            id);
}

void TimetableStore::remove(WriteScope& scope, DaysId id)
{
    execute(scope, "DELETE FROM calendar_days WHERE id = ?", id);
}

void TimetableStore::setPlace(WriteScope& scope, ClassId groupClass, const ClassPlace& place)
{
    execute(scope,
            "UPDATE class SET room = ?, capacity = ? WHERE id = ?",
            place.room,
            place.capacity,
            groupClass);
}

MeetingId TimetableStore::rowFor(WriteScope& scope, const MeetingKey& key)
{
    if (const auto known = TimetableStore(scope.logbook()).rowOf(key)) {
        execute(scope,
                "UPDATE meeting SET start_minute = ? WHERE id = ? AND start_minute IS NULL",
                key.start.minutes,
                *known);
        return *known;
    }
    return translateErrors(scope.logbook().path(), [&] {
        SQLite::Database& database = scope.logbook().database();
        SQLite::Statement insert(
            database, "INSERT INTO meeting (uid, class, day, start_minute) VALUES (?, ?, ?, ?)");
        Binder(insert)
            .addBytes(randomUid())
            .add(key.groupClass)
            .add(key.day)
            .add(key.start.minutes);
        insert.exec();
        return MeetingId{database.getLastInsertRowid()};
    });
}

void TimetableStore::change(WriteScope& scope, const MeetingChange& change)
{
    const MeetingId meeting = rowFor(scope, change.meeting);
    execute(scope,
            "UPDATE meeting SET is_cancelled = ?, cancelled_reason = ?, room = ?, instructor = ? "
            "WHERE id = ?",
            change.cancelled.has_value(),
            change.cancelled.value_or(""),
            change.room.value_or(""),
            change.cover.value_or(""),
            meeting);
}

MeetingId TimetableStore::add(WriteScope& scope, const ExtraMeeting& extra)
{
    const MeetingId meeting = rowFor(scope, extra.meeting);
    execute(scope,
            "UPDATE meeting SET is_extra = 1, room = ?, instructor = ?, minutes = ?, capacity = ? "
            "WHERE id = ?",
            extra.plan.room,
            extra.plan.instructor,
            extra.plan.minutes,
            extra.plan.capacity,
            meeting);
    return meeting;
}

} // namespace levelbar::storage
