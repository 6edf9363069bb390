// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/day.h"
#include "core/base/id.h"
#include "core/plan/class_plan.h"
#include "storage/action.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace levelbar::storage {

struct GroupClass {
    ClassId id;
    std::string name;

    friend bool operator==(const GroupClass&, const GroupClass&) = default;
};

// One hour of a class.
struct Meeting {
    MeetingId id;
    ClassId groupClass;
    Day day;
    std::optional<TimeOfDay> start;

    friend bool operator==(const Meeting&, const Meeting&) = default;
};

struct Attendance {
    MemberId member;
    bool isBooked = false;
    std::optional<bool> came; // nothing = not known

    friend bool operator==(const Attendance&, const Attendance&) = default;
};

// Classes, their people, their template, and their meetings.
class ClassStore {
public:
    explicit ClassStore(const Logbook& logbook)
        : m_logbook(logbook)
    {
    }

    [[nodiscard]] std::vector<GroupClass> all(bool withArchived = false) const; // by name
    [[nodiscard]] std::optional<GroupClass> find(std::string_view name) const;
    [[nodiscard]] std::vector<MemberId> membersOf(ClassId groupClass) const;
    [[nodiscard]] std::vector<GroupClass> classesOf(MemberId member) const;
    [[nodiscard]] std::vector<TemplateItem> templateOf(ClassId groupClass) const; // by position
    [[nodiscard]] std::vector<Meeting> meetingsOf(ClassId groupClass) const;      // newest first
    // The meeting of that day; with several, that with the start, else the first.
    [[nodiscard]] std::optional<Meeting>
    meeting(ClassId groupClass, Day day, std::optional<TimeOfDay> start = std::nullopt) const;
    [[nodiscard]] std::vector<Attendance> attendanceOf(MeetingId meeting) const;

    static ClassId add(WriteScope& scope, std::string_view name);
    static void setMembership(WriteScope& scope, ClassId groupClass, MemberId member, bool isIn);
    static void
    setTemplate(WriteScope& scope, ClassId groupClass, const std::vector<TemplateItem>& items);
    static MeetingId
    addMeeting(WriteScope& scope, ClassId groupClass, Day day, std::optional<TimeOfDay> start);
    static void setAttendance(WriteScope& scope, MeetingId meeting, const Attendance& attendance);

private:
    const Logbook& m_logbook;
};

} // namespace levelbar::storage
