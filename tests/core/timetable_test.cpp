// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/timetable/places.h"
#include "core/timetable/timetable.h"
#include "tests/support/random.h"
#include "tests/support/sets.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

namespace levelbar::timetable_test {
namespace {

using tests::day;

const ClassId kPress{1};
const ClassId kLegs{2};

WeeklySlot slot(ClassId groupClass, int weekday, int hour)
{
    return {groupClass, weekday, {hour * 60}, {60, "Hall", "AB", 12}, std::nullopt, std::nullopt};
}

MeetingKey key(const char* on, int hour, ClassId groupClass = kPress)
{
    return {day(on), {hour * 60}, groupClass};
}

DayRange days(const char* first, const char* last)
{
    return {day(first), day(last)};
}

// Mondays and Thursdays at six from September to November 2026.
Timetable autumn()
{
    Timetable made;
    made.slots = {slot(kPress, 1, 18), slot(kPress, 4, 18)};
    made.terms = {{"Autumn", days("2026-09-07", "2026-11-26")}};
    return made;
}

TEST(TimetableTest, AClassMeetsOnItsWeekdaysWithinTheTerm)
{
    const auto meetings = meetingsOf(autumn(), days("2026-08-31", "2026-09-17"));
    ASSERT_EQ(meetings.size(), 4U);
    EXPECT_EQ(meetings.front().key, key("2026-09-07", 18));
    EXPECT_EQ(meetings.back().key, key("2026-09-17", 18));
}

TEST(TimetableTest, TheChangeOfTheClockMovesNothing)
{
    // Summer time ends on 25 October 2026 in Europe and on 1 November in North America.
    const auto meetings = meetingsOf(autumn(), days("2026-10-19", "2026-11-05"));
    ASSERT_EQ(meetings.size(), 6U);
    for (const TimetabledMeeting& meeting : meetings) {
        EXPECT_EQ(text(meeting.key.start), "18:00");
    }
}

TEST(TimetableTest, AHolidayStopsWeeklyClassesButNotAnExtraMeeting)
{
    Timetable table = autumn();
    table.holidays = {{"Half term", days("2026-10-26", "2026-10-30")}};
    table.extras = {{key("2026-10-28", 10), {45, "Studio", "CD", 8}}};
    const auto meetings = meetingsOf(table, days("2026-10-26", "2026-11-01"));
    ASSERT_EQ(meetings.size(), 1U);
    EXPECT_TRUE(meetings.front().isExtra);
    EXPECT_EQ(holidayOn(table, day("2026-10-29")), "Half term");
    EXPECT_FALSE(holidayOn(table, day("2026-10-31")));
}

TEST(TimetableTest, ACancelledMeetingStaysWithItsReason)
{
    Timetable table = autumn();
    table.changes = {{key("2026-09-10", 18), "heating broken", std::nullopt, std::nullopt}};
    const auto meetings = meetingsOf(table, days("2026-09-07", "2026-09-13"));
    ASSERT_EQ(meetings.size(), 2U);
    EXPECT_FALSE(meetings.front().cancelled);
    EXPECT_EQ(meetings.back().cancelled, "heating broken");
}

TEST(TimetableTest, AMovedAndCoveredMeetingSaysWhatIsUsual)
{
    Timetable table = autumn();
    table.changes = {{key("2026-09-10", 18), std::nullopt, "Studio", "CD"}};
    const TimetabledMeeting meeting = meetingsOf(table, days("2026-09-10", "2026-09-10")).front();
    EXPECT_EQ(meeting.plan.room, "Studio");
    EXPECT_EQ(meeting.usualRoom, "Hall");
    EXPECT_EQ(meeting.plan.instructor, "CD");
    EXPECT_EQ(meeting.usualInstructor, "AB");
}

TEST(TimetableTest, TwoMeetingsOfAClassOnADayAreTwo)
{
    Timetable table = autumn();
    table.slots.push_back(slot(kPress, 1, 19));
    EXPECT_TRUE(checkTimetable(table));
    EXPECT_EQ(meetingsOf(table, days("2026-09-07", "2026-09-07")).size(), 2U);
}

TEST(TimetableTest, ASlotThatFollowsAnotherMayHaveItsTime)
{
    Timetable table = autumn();
    table.slots.push_back(slot(kPress, 1, 18));
    ASSERT_FALSE(checkTimetable(table));
    EXPECT_EQ(checkTimetable(table).error().code, FaultCode::RepeatedMeeting);
    table.slots.front().until = day("2026-10-04");
    table.slots.back().from = day("2026-10-05");
    EXPECT_TRUE(checkTimetable(table));
}

TEST(TimetableTest, WhatCannotBeIsRefused)
{
    const auto codeOf = [](const Timetable& table) {
        const auto checked = checkTimetable(table);
        return checked ? std::optional<FaultCode>() : checked.error().code;
    };
    Timetable table = autumn();
    table.slots.front().weekday = 8;
    EXPECT_EQ(codeOf(table), FaultCode::OutOfRange);
    table = autumn();
    table.slots.front().start = {23 * 60 + 30};
    EXPECT_EQ(codeOf(table), FaultCode::OutOfRange) << "an hour from half past eleven at night";
    table = autumn();
    table.slots.front().plan.capacity = 0;
    EXPECT_EQ(codeOf(table), FaultCode::OutOfRange);
    table = autumn();
    std::swap(table.terms.front().days.first, table.terms.front().days.last);
    EXPECT_EQ(codeOf(table), FaultCode::DateOutOfRange);
    table = autumn();
    table.changes = {{key("2026-09-10", 18), "", std::nullopt, std::nullopt}};
    EXPECT_EQ(codeOf(table), FaultCode::Empty);
}

Timetable randomTimetable(tests::Random& random)
{
    const Day first = day("2026-01-05");
    const auto someDays = [&random, first](int longest) {
        const Day from = first + random.below(300);
        return DayRange{from, from + random.below(longest)};
    };
    Timetable table;
    for (int i = random.below(8); i > 0; --i) {
        table.slots.push_back(
            slot({1 + random.below(3)}, 1 + random.below(7), 8 + random.below(12)));
    }
    for (int i = random.below(3); i > 0; --i) {
        table.terms.push_back({"Term", someDays(120)});
    }
    for (int i = random.below(4); i > 0; --i) {
        table.holidays.push_back({"Holiday", someDays(10)});
    }
    const auto all = meetingsOf(table, {first, first + 365});
    for (int i = all.empty() ? 0 : random.below(6); i > 0; --i) {
        table.changes.push_back(
            {all[static_cast<std::size_t>(random.below(static_cast<int>(all.size())))].key,
             random.chance(0.5) ? std::optional<std::string>("ill") : std::nullopt,
             "Studio",
             "CD"});
    }
    for (int i = random.below(4); i > 0; --i) {
        table.extras.push_back({{first + random.below(365), {600}, kLegs}, {}});
    }
    return table;
}

TEST(TimetableTest, APeriodsMeetingsAreThoseOfItsDaysInOrderEachOnce)
{
    tests::Random random(11);
    std::size_t seen = 0;
    for (int trial = 0; trial < 300; ++trial) {
        const Timetable table = randomTimetable(random);
        const Day from = day("2026-01-05") + random.below(200);
        const DayRange period{from, from + random.below(60)};
        const auto meetings = meetingsOf(table, period);
        std::vector<TimetabledMeeting> dayByDay;
        for (Day on = period.first; on <= period.last; on = on + 1) {
            const auto more = meetingsOf(table, {on, on});
            dayByDay.insert(dayByDay.end(), more.begin(), more.end());
        }
        ASSERT_EQ(meetings, dayByDay);
        for (std::size_t i = 0; i < meetings.size(); ++i) {
            ASSERT_TRUE(i == 0 || meetings[i - 1].key < meetings[i].key);
            ASSERT_TRUE(meetings[i].isExtra || !holidayOn(table, meetings[i].key.day));
        }
        seen += meetings.size();
    }
    EXPECT_GT(seen, 1000U) << "the test saw too little";
}

// ---- places ----

MeetingPlaces full()
{
    MeetingPlaces places;
    places.capacity = 2;
    for (const std::int64_t id : {1, 2, 3, 4}) {
        places = book(places, {id});
    }
    return places;
}

TEST(PlacesTest, WhoComesAfterTheLastPlaceWaits)
{
    EXPECT_EQ(full().booked, (std::vector<MemberId>{{1}, {2}}));
    EXPECT_EQ(full().waiting, (std::vector<MemberId>{{3}, {4}}));
    EXPECT_EQ(freePlaces(full()), 0);
}

TEST(PlacesTest, APlaceGivenBackGoesToWhoWaitsLongest)
{
    const MovedUp after = giveBack(full(), {1});
    EXPECT_EQ(after.moved, (std::vector<MemberId>{{3}}));
    EXPECT_EQ(after.places.booked, (std::vector<MemberId>{{2}, {3}}));
    EXPECT_EQ(after.places.waiting, (std::vector<MemberId>{{4}}));
}

TEST(PlacesTest, WhoStopsWaitingMovesNobodyUp)
{
    const MovedUp after = giveBack(full(), {3});
    EXPECT_TRUE(after.moved.empty());
    EXPECT_EQ(after.places.waiting, (std::vector<MemberId>{{4}}));
}

TEST(PlacesTest, BookingTwiceChangesNothing)
{
    EXPECT_EQ(book(full(), {2}), full());
    EXPECT_EQ(book(full(), {4}), full());
}

TEST(PlacesTest, ADropInOverTheCapacityKeepsThePlaceFromThoseWhoWait)
{
    MeetingPlaces places = letIn(full(), {9});
    EXPECT_EQ(freePlaces(places), -1);
    const MovedUp after = giveBack(places, {1});
    EXPECT_TRUE(after.moved.empty()) << "two are in the room already";
    EXPECT_EQ(giveBack(after.places, {9}).moved, (std::vector<MemberId>{{3}}));
}

TEST(PlacesTest, ASmallerRoomTakesNobodysPlace)
{
    const MovedUp after = setCapacity(full(), 1);
    EXPECT_EQ(after.places.booked.size(), 2U);
    EXPECT_EQ(setCapacity(after.places, 4).moved, (std::vector<MemberId>{{3}, {4}}));
    EXPECT_EQ(setCapacity(after.places, std::nullopt).places.waiting.size(), 0U);
}

// Whether those of `after` who were in `before` stand in the same order.
bool keepsOrder(const std::vector<MemberId>& before, const std::vector<MemberId>& after)
{
    std::size_t last = 0;
    for (const MemberId member : after) {
        const auto found = std::find(before.begin(), before.end(), member);
        if (found != before.end()) {
            const auto place = static_cast<std::size_t>(found - before.begin()) + 1;
            if (place < last) {
                return false;
            }
            last = place;
        }
    }
    return true;
}

TEST(PlacesTest, WhateverHappensNobodyIsTwiceAndNobodyWaitsBesideAFreePlace)
{
    tests::Random random(5);
    int moved = 0;
    for (int trial = 0; trial < 200; ++trial) {
        MeetingPlaces places;
        places.capacity = 1 + random.below(6);
        for (int step = 0; step < 60; ++step) {
            const MemberId member{1 + random.below(12)};
            const MeetingPlaces before = places;
            MovedUp up{places, {}};
            switch (random.below(5)) {
            case 0:
            case 1:
                up.places = book(places, member);
                break;
            case 2:
                up.places = letIn(places, member);
                break;
            case 3:
                up = giveBack(places, member);
                break;
            default:
                up = setCapacity(places, 1 + random.below(6));
            }
            places = up.places;
            moved += static_cast<int>(up.moved.size());
            ASSERT_TRUE(keepsOrder(before.waiting, places.waiting));
            ASSERT_TRUE(keepsOrder(before.booked, places.booked));
            ASSERT_TRUE(keepsOrder(before.waiting, up.moved));
            ASSERT_TRUE(places.waiting.empty() || *freePlaces(places) <= 0);
            std::multiset<MemberId> all(places.booked.begin(), places.booked.end());
            all.insert(places.waiting.begin(), places.waiting.end());
            all.insert(places.dropIns.begin(), places.dropIns.end());
            ASSERT_EQ(all.size(), std::set<MemberId>(all.begin(), all.end()).size());
        }
    }
    EXPECT_GT(moved, 200) << "the test moved too few up";
}

} // namespace
} // namespace levelbar::timetable_test
