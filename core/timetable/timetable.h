// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/day.h"
#include "core/base/id.h"

#include <compare>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace levelbar {

// First and last day, both included.
struct DayRange {
    Day first;
    Day last; // not before the first

    friend bool operator==(const DayRange&, const DayRange&) = default;

    [[nodiscard]] constexpr bool holds(Day day) const { return first <= day && day <= last; }
};

// What makes a meeting this one and no other. All times are civil times of the gym's place, so
// the change to summer time moves nothing.
struct MeetingKey {
    Day day;
    TimeOfDay start;
    ClassId groupClass;

    friend auto operator<=>(const MeetingKey&, const MeetingKey&) = default;
};

// Where, with whom and for how many.
struct MeetingPlan {
    int minutes = 60; // 1 to what is left of the day
    std::string room;
    std::string instructor;      // initials; may be empty
    std::optional<int> capacity; // 1 or more; nothing: as many as come

    friend bool operator==(const MeetingPlan&, const MeetingPlan&) = default;
};

// A class's place in the week.
struct WeeklySlot {
    ClassId groupClass;
    int weekday = 1; // 1 Monday to 7 Sunday
    TimeOfDay start;
    MeetingPlan plan;
    std::optional<Day> from;  // of the slot itself, within the terms
    std::optional<Day> until; // included

    friend bool operator==(const WeeklySlot&, const WeeklySlot&) = default;
};

struct NamedDays {
    std::string name; // "Autumn term", "New Year"
    DayRange days;

    friend bool operator==(const NamedDays&, const NamedDays&) = default;
};

// What differs for one meeting. A meeting at another time is a cancelled one and an extra one.
struct MeetingChange {
    MeetingKey meeting;
    std::optional<std::string> cancelled; // the reason, not empty
    std::optional<std::string> room;
    std::optional<std::string> cover; // who takes it instead of the usual instructor

    friend bool operator==(const MeetingChange&, const MeetingChange&) = default;
};

struct ExtraMeeting {
    MeetingKey meeting;
    MeetingPlan plan;

    friend bool operator==(const ExtraMeeting&, const ExtraMeeting&) = default;
};

struct Timetable {
    std::vector<WeeklySlot> slots;
    std::vector<NamedDays> terms;    // weekly classes meet in these only; none: all the year
    std::vector<NamedDays> holidays; // no weekly class; an extra meeting does take place
    std::vector<MeetingChange> changes;
    std::vector<ExtraMeeting> extras;

    friend bool operator==(const Timetable&, const Timetable&) = default;
};

// A meeting as it will be, changes worked in.
struct TimetabledMeeting {
    MeetingKey key;
    MeetingPlan plan; // with the room and instructor of the day
    bool isExtra = false;
    std::optional<std::string> cancelled;       // why
    std::optional<std::string> usualRoom;       // when moved
    std::optional<std::string> usualInstructor; // when covered for

    friend bool operator==(const TimetabledMeeting&, const TimetabledMeeting&) = default;
};

// The timetable unchanged when it can be used. OutOfRange: a weekday, a start, minutes past
// midnight, a capacity under 1. DateOutOfRange: days that end before they begin. Empty: a
// cancellation without a reason, days or a cover without a name. RepeatedMeeting: two slots, two
// extra meetings or two changes for the same meeting.
[[nodiscard]] Result<Timetable> checkTimetable(Timetable timetable);

// All meetings of the days, cancelled ones too, by day, start and class; each once. A change for a
// meeting that is not there does nothing.
[[nodiscard]] std::vector<TimetabledMeeting> meetingsOf(const Timetable& timetable, DayRange days);

// The holiday's name, when there is one on that day.
[[nodiscard]] std::optional<std::string> holidayOn(const Timetable& timetable, Day day);

} // namespace levelbar
