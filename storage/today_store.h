// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/today/follow_up.h"
#include "core/today/settled.h"
#include "storage/action.h"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace levelbar::storage {

// A class on a day: a meeting that is in the logbook, or an hour of the timetable without one.
struct DayMeeting {
    std::optional<MeetingId> meeting;
    ClassId groupClass;
    std::string className;
    std::optional<TimeOfDay> start;
    bool isLogged = false; // a set was written down in it

    friend bool operator==(const DayMeeting&, const DayMeeting&) = default;
};

// What the day asks of the instructor.
class TodayStore {
public:
    explicit TodayStore(const Logbook& logbook)
        : m_logbook(logbook)
    {
    }

    [[nodiscard]] std::vector<DayMeeting> meetingsOn(Day day) const; // by start; not cancelled
    // Who is booked or came; where nobody is written down, the people of the class.
    [[nodiscard]] std::vector<MemberId> expectedIn(const DayMeeting& meeting) const;

    [[nodiscard]] std::vector<SettledReason> settled() const; // by member, then kind
    // Open ones by due day, then those done on `since` or later, the last done first.
    [[nodiscard]] std::vector<FollowUp> followUps(Day since) const;
    // The end of the newest screening that has one, of everybody who has.
    [[nodiscard]] std::map<MemberId, Day> clearances() const;

    // Replaces what was said to that kind of that person before.
    static void settle(WriteScope& scope, const SettledReason& settled);
    static void open(WriteScope& scope, MemberId member, AttentionKind kind); // says no more to it
    static FollowUpId write(WriteScope& scope, const FollowUp& followUp);
    static void setDone(WriteScope& scope, FollowUpId followUp, std::optional<Day> done);

private:
    const Logbook& m_logbook;
};

} // namespace levelbar::storage
