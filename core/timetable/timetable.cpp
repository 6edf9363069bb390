// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/timetable/timetable.h"

#include <algorithm>
#include <map>
#include <set>

namespace levelbar {

namespace {

constexpr int kDaysOfAWeek = 7;
constexpr int kMinutesOfADay = 24 * 60;

Fault outOfRange(int value, int lowest, int highest)
{
    return {FaultCode::OutOfRange,
            {std::to_string(value), std::to_string(lowest), std::to_string(highest)}};
}

std::optional<Fault> faultOf(TimeOfDay start, const MeetingPlan& plan)
{
    if (start.minutes < 0 || start.minutes >= kMinutesOfADay) {
        return outOfRange(start.minutes, 0, kMinutesOfADay - 1);
    }
    const int left = kMinutesOfADay - start.minutes;
    if (plan.minutes < 1 || plan.minutes > left) {
        return outOfRange(plan.minutes, 1, left);
    }
    if (plan.capacity && *plan.capacity < 1) {
        return outOfRange(*plan.capacity, 1, 1000);
    }
    return std::nullopt;
}

Fault backwards(Day first, Day last)
{
    return {FaultCode::DateOutOfRange, {isoText(last), isoText(first), "2100-12-31"}};
}

Fault repeated(const MeetingKey& key)
{
    return {FaultCode::RepeatedMeeting, {isoText(key.day) + " " + text(key.start)}};
}

bool meetsOn(const WeeklySlot& slot, Day day)
{
    return isoWeekday(day) == slot.weekday && (!slot.from || *slot.from <= day) &&
           (!slot.until || day <= *slot.until);
}

// Whether two slots ever make the same meeting: only their own days can keep them apart.
bool areSame(const WeeklySlot& a, const WeeklySlot& b)
{
    const bool isApart =
        (a.until && b.from && *a.until < *b.from) || (b.until && a.from && *b.until < *a.from);
    return a.groupClass == b.groupClass && a.weekday == b.weekday && a.start == b.start && !isApart;
}

std::optional<Fault> faultOfSlots(const std::vector<WeeklySlot>& slots)
{
    for (std::size_t i = 0; i < slots.size(); ++i) {
        const WeeklySlot& slot = slots[i];
        if (slot.weekday < 1 || slot.weekday > kDaysOfAWeek) {
            return outOfRange(slot.weekday, 1, kDaysOfAWeek);
        }
        if (const auto fault = faultOf(slot.start, slot.plan)) {
            return fault;
        }
        if (slot.from && slot.until && *slot.until < *slot.from) {
            return backwards(*slot.from, *slot.until);
        }
        for (std::size_t j = 0; j < i; ++j) {
            if (areSame(slot, slots[j])) {
                return repeated({slot.from.value_or(Day{}), slot.start, slot.groupClass});
            }
        }
    }
    return std::nullopt;
}

std::optional<Fault> faultOfDays(const std::vector<NamedDays>& all)
{
    for (const NamedDays& named : all) {
        if (named.name.empty()) {
            return Fault{};
        }
        if (named.days.last < named.days.first) {
            return backwards(named.days.first, named.days.last);
        }
    }
    return std::nullopt;
}

std::optional<Fault> faultOfSingles(const Timetable& timetable)
{
    std::set<MeetingKey> seen;
    for (const ExtraMeeting& extra : timetable.extras) {
        if (const auto fault = faultOf(extra.meeting.start, extra.plan)) {
            return fault;
        }
        if (!seen.insert(extra.meeting).second) {
            return repeated(extra.meeting);
        }
    }
    seen.clear();
    for (const MeetingChange& change : timetable.changes) {
        if ((change.cancelled && change.cancelled->empty()) ||
            (change.cover && change.cover->empty())) {
            return Fault{};
        }
        if (!seen.insert(change.meeting).second) {
            return repeated(change.meeting);
        }
    }
    return std::nullopt;
}

const NamedDays* find(const std::vector<NamedDays>& all, Day day)
{
    const auto found = std::find_if(
        all.begin(), all.end(), [day](const NamedDays& named) { return named.days.holds(day); });
    return found == all.end() ? nullptr : &*found;
}

void apply(const MeetingChange& change, TimetabledMeeting& meeting)
{
    meeting.cancelled = change.cancelled;
    if (change.room && *change.room != meeting.plan.room) {
        meeting.usualRoom = meeting.plan.room;
        meeting.plan.room = *change.room;
    }
    if (change.cover && *change.cover != meeting.plan.instructor) {
        meeting.usualInstructor = meeting.plan.instructor;
        meeting.plan.instructor = *change.cover;
    }
}

} // namespace

Result<Timetable> checkTimetable(Timetable timetable)
{
    for (const auto& fault : {faultOfSlots(timetable.slots),
                              faultOfDays(timetable.terms),
                              faultOfDays(timetable.holidays),
                              faultOfSingles(timetable)}) {
        if (fault) {
            return tl::unexpected(*fault);
        }
    }
    return timetable;
}

std::vector<TimetabledMeeting> meetingsOf(const Timetable& timetable, DayRange days)
{
    std::map<MeetingKey, TimetabledMeeting> found;
    const auto add = [&found](const MeetingKey& key, const MeetingPlan& plan, bool isExtra) {
        found.try_emplace(
            key, TimetabledMeeting{key, plan, isExtra, std::nullopt, std::nullopt, std::nullopt});
    };
    for (Day day = days.first; day <= days.last; day = day + 1) {
        const bool isTerm = timetable.terms.empty() || find(timetable.terms, day) != nullptr;
        if (!isTerm || find(timetable.holidays, day) != nullptr) {
            continue;
        }
        for (const WeeklySlot& slot : timetable.slots) {
            if (meetsOn(slot, day)) {
                add({day, slot.start, slot.groupClass}, slot.plan, false);
            }
        }
    }
    for (const ExtraMeeting& extra : timetable.extras) {
        if (days.holds(extra.meeting.day)) {
            add(extra.meeting, extra.plan, true);
        }
    }
    for (const MeetingChange& change : timetable.changes) {
        if (const auto meeting = found.find(change.meeting); meeting != found.end()) {
            apply(change, meeting->second);
        }
    }
    std::vector<TimetabledMeeting> meetings;
    meetings.reserve(found.size());
    for (auto& [key, meeting] : found) {
        meetings.push_back(std::move(meeting));
    }
    return meetings;
}

std::optional<std::string> holidayOn(const Timetable& timetable, Day day)
{
    const NamedDays* found = find(timetable.holidays, day);
    return found == nullptr ? std::nullopt : std::optional(found->name);
}

} // namespace levelbar
