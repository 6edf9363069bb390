// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/class_store.h"

#include "storage/class_plan_store.h"
#include "storage/random_uid.h"
#include "storage/row_query.h"

#include <algorithm>

namespace levelbar::storage {

namespace {

GroupClass readClass(Columns& columns)
{
    const auto id = columns.id<ClassId>();
    return {id, columns.text()};
}

Meeting readMeeting(Columns& columns)
{
    Meeting meeting;
    meeting.id = columns.id<MeetingId>();
    meeting.groupClass = columns.id<ClassId>();
    meeting.day = columns.day();
    const auto start = columns.maybeWhole();
    if (start) {
        meeting.start = TimeOfDay{*start};
    }
    return meeting;
}

std::optional<int> minutesOf(std::optional<TimeOfDay> time)
{
    return time ? std::optional(time->minutes) : std::nullopt;
}

} // namespace

std::vector<GroupClass> ClassStore::all(bool withArchived) const
{
    return rowsOf(m_logbook,
                  "SELECT id, name FROM class WHERE is_archived = 0 OR ? ORDER BY name",
                  &readClass,
                  withArchived);
}

std::optional<GroupClass> ClassStore::find(std::string_view name) const
{
    const auto found = rowsOf(
        m_logbook, "SELECT id, name FROM class WHERE name = ?", &readClass, std::string(name));
    return found.empty() ? std::nullopt : std::optional(found.front());
}

std::vector<MemberId> ClassStore::membersOf(ClassId groupClass) const
{
    return rowsOf(
        m_logbook,
        "SELECT m.id FROM class_member c JOIN member m ON m.id = c.member "
        "WHERE c.class = ? AND m.is_archived = 0 ORDER BY m.code",
        [](Columns& columns) { return columns.id<MemberId>(); },
        groupClass);
}

std::vector<GroupClass> ClassStore::classesOf(MemberId member) const
{
    return rowsOf(m_logbook,
                  "SELECT c.id, c.name FROM class_member m JOIN class c ON c.id = m.class "
                  "WHERE m.member = ? ORDER BY c.name",
                  &readClass,
                  member);
}

std::vector<TemplateItem> ClassStore::templateOf(ClassId groupClass) const
{
    return rowsOf(
        m_logbook,
        "SELECT exercise, sets, reps FROM class_template WHERE class = ? ORDER BY position",
        [](Columns& columns) {
            TemplateItem item;
            item.exercise = columns.id<ExerciseId>();
            item.sets = columns.whole();
            item.reps = columns.maybeWhole();
            return item;
        },
        groupClass);
}

std::vector<Meeting> ClassStore::meetingsOf(ClassId groupClass) const
{
    return rowsOf(m_logbook,
                  "SELECT id, class, day, start_minute FROM meeting WHERE class = ? "
                  "ORDER BY day DESC, start_minute DESC, id DESC",
                  &readMeeting,
                  groupClass);
}

std::optional<Meeting>
ClassStore::meeting(ClassId groupClass, Day day, std::optional<TimeOfDay> start) const
{
    const auto found = rowsOf(m_logbook,
                              "SELECT id, class, day, start_minute FROM meeting "
                              "WHERE class = ? AND day = ? ORDER BY start_minute, id",
                              &readMeeting,
                              groupClass,
                              day);
    for (const Meeting& meeting : found) {
        if (start && meeting.start == start) {
            return meeting;
        }
    }
    return found.empty() || start ? std::nullopt : std::optional(found.front());
}

std::vector<Attendance> ClassStore::attendanceOf(MeetingId meeting) const
{
    return rowsOf(
        m_logbook,
        "SELECT member, is_booked, came FROM attendance WHERE meeting = ? ORDER BY member",
        [](Columns& columns) {
            Attendance attendance;
            attendance.member = columns.id<MemberId>();
            attendance.isBooked = columns.flag();
            attendance.came = columns.maybeFlag();
            return attendance;
        },
        meeting);
}

ClassId ClassStore::add(WriteScope& scope, std::string_view name)
{
    return translateErrors(scope.logbook().path(), [&] {
        SQLite::Database& database = scope.logbook().database();
        SQLite::Statement insert(database,
                                 "INSERT INTO class (uid, name, import) VALUES (?, ?, ?)");
        Binder(insert).addBytes(randomUid()).add(std::string(name)).add(scope.import());
        insert.exec();
        return ClassId{database.getLastInsertRowid()};
    });
}

void ClassStore::setMembership(WriteScope& scope, ClassId groupClass, MemberId member, bool isIn)
{
    translateErrors(scope.logbook().path(), [&] {
        SQLite::Database& database = scope.logbook().database();
        if (isIn) {
            SQLite::Statement insert(database,
                                     "INSERT OR IGNORE INTO class_member VALUES (?, ?, ?)");
            Binder(insert).add(groupClass).add(member).add(scope.import());
            insert.exec();
        } else {
            SQLite::Statement remove(database,
                                     "DELETE FROM class_member WHERE class = ? AND member = ?");
            Binder(remove).add(groupClass).add(member);
            remove.exec();
        }
    });
}

void ClassStore::setTemplate(WriteScope& scope,
                             ClassId groupClass,
                             const std::vector<TemplateItem>& items)
{
    // What the plan says besides stays with its exercise.
    std::vector<PlanItem> old = ClassPlanStore(scope.logbook()).itemsOf(groupClass);
    std::vector<PlanItem> wanted;
    for (const TemplateItem& item : items) {
        const auto known = std::find_if(old.begin(), old.end(), [&](const PlanItem& one) {
            return one.what.exercise == item.exercise;
        });
        PlanItem next;
        if (known != old.end()) {
            next = *known;
            old.erase(known);
        }
        next.what = item;
        wanted.push_back(next);
    }
    ClassPlanStore::setItems(scope, groupClass, wanted);
}

MeetingId ClassStore::addMeeting(WriteScope& scope,
                                 ClassId groupClass,
                                 Day day,
                                 std::optional<TimeOfDay> start)
{
    return translateErrors(scope.logbook().path(), [&] {
        SQLite::Database& database = scope.logbook().database();
        SQLite::Statement insert(
            database,
            "INSERT INTO meeting (uid, class, day, start_minute, import) VALUES (?, ?, ?, ?, ?)");
        Binder(insert)
            .addBytes(randomUid())
            .add(groupClass)
            .add(day)
            .add(minutesOf(start))
            .add(scope.import());
        insert.exec();
        return MeetingId{database.getLastInsertRowid()};
    });
}

void ClassStore::setAttendance(WriteScope& scope, MeetingId meeting, const Attendance& attendance)
{
    for (const Attendance& stored : ClassStore(scope.logbook()).attendanceOf(meeting)) {
        if (stored == attendance) {
            return;
        }
    }
    translateErrors(scope.logbook().path(), [&] {
        SQLite::Statement upsert(scope.logbook().database(), R"sql(
INSERT INTO attendance (meeting, member, is_booked, came, import) VALUES (?, ?, ?, ?, ?)
ON CONFLICT (meeting, member) DO UPDATE SET
    is_booked = excluded.is_booked, came = excluded.came, import = NULL
)sql");
        Binder(upsert)
            .add(meeting)
            .add(attendance.member)
            .add(attendance.isBooked)
            .add(attendance.came)
            .add(scope.import());
        upsert.exec();
    });
}

} // namespace levelbar::storage
