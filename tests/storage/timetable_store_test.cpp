// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/migrations.h"
#include "storage/store_error.h"
#include "storage/timetable_store.h"
#include "storage/today_store.h"
#include "tests/support/logbook_fixture.h"

#include <SQLiteCpp/SQLiteCpp.h>
#include <gtest/gtest.h>

namespace levelbar::storage::timetable_store_test {
namespace {

using tests::addMember;
using tests::kNow;

const Day kWednesday{20600};
const TimeOfDay kSix{18 * 60};

class TimetableStoreTest : public testing::Test {
protected:
    TimetableStoreTest()
    {
        act([&](Action& action) {
            morning = ClassStore::add(action, "Morning");
            slot.groupClass = morning;
            slot.weekday = 3;
            slot.start = kSix;
            slot.plan = {50, "Hall", "AB", 12};
            TimetableStore::add(action, slot);
        });
    }

    template <typename Work> Change act(const Work& work)
    {
        Action action(logbook, ActionKind::EditTimetable, kNow);
        work(action);
        return action.commit();
    }

    [[nodiscard]] std::vector<TimetabledMeeting> week() const
    {
        const DayRange days{kWednesday - 2, kWednesday + 4};
        const auto checked = checkTimetable(store.timetable(days));
        EXPECT_TRUE(checked.has_value());
        return checked ? meetingsOf(*checked, days) : std::vector<TimetabledMeeting>{};
    }

    Logbook logbook = Logbook::inMemory(kNow);
    TimetableStore store{logbook};
    ClassId morning;
    WeeklySlot slot;

    const MeetingKey& key() { return m_key = {kWednesday, kSix, morning}, m_key; }

private:
    MeetingKey m_key;
};

TEST_F(TimetableStoreTest, GivesASlotBackAsItWasWritten)
{
    slot.weekday = 5;
    slot.from = kWednesday;
    slot.until = kWednesday + 70;
    slot.plan.capacity = std::nullopt;
    SlotId added;
    act([&](Action& action) { added = TimetableStore::add(action, slot); });
    ASSERT_EQ(store.slots().size(), 2U);
    EXPECT_EQ(store.slots().back(), (StoredSlot{added, slot}));
    EXPECT_EQ(store.slots().front().slot.from, std::nullopt);
    slot.plan.room = "Yard";
    act([&](Action& action) { TimetableStore::update(action, added, slot); });
    EXPECT_EQ(store.slots().back().slot, slot);
    act([&](Action& action) { TimetableStore::remove(action, added); });
    EXPECT_EQ(store.slots().size(), 1U);
}

TEST_F(TimetableStoreTest, TheClassFillsInRoomAndCapacityOfASlotThatHasNone)
{
    act([&](Action& action) {
        TimetableStore::setPlace(action, morning, {"Yard", 9});
        slot.plan.room.clear();
        slot.plan.capacity = std::nullopt;
        slot.weekday = 4;
        TimetableStore::add(action, slot);
    });
    ASSERT_EQ(week().size(), 2U);
    EXPECT_EQ(week()[0].plan.room, "Hall");
    EXPECT_EQ(week()[1].plan.room, "Yard");
    EXPECT_EQ(week()[1].plan.capacity, 9);
    EXPECT_EQ(store.slots().back().slot.plan.room, "") << "what is stored stays open";
}

TEST_F(TimetableStoreTest, HolidaysAndTermsCloseTheDayAlsoForToday)
{
    DaysId holiday;
    act([&](Action& action) {
        holiday =
            TimetableStore::add(action, DaysKind::Holiday, {"Closed", {kWednesday, kWednesday}});
    });
    EXPECT_TRUE(week().empty());
    EXPECT_TRUE(TodayStore(logbook).meetingsOn(kWednesday).empty());
    act([&](Action& action) {
        TimetableStore::update(action, holiday, {"Closed", {kWednesday + 7, kWednesday + 8}});
        TimetableStore::add(action, DaysKind::Term, {"Summer", {kWednesday, kWednesday + 6}});
    });
    EXPECT_EQ(week().size(), 1U);
    EXPECT_EQ(TodayStore(logbook).meetingsOn(kWednesday).size(), 1U);
    EXPECT_TRUE(TodayStore(logbook).meetingsOn(kWednesday + 14).empty()) << "after the term";
    takeBack(logbook, lastTakeable(logbook).value(), kNow);
    EXPECT_TRUE(week().empty());
}

TEST_F(TimetableStoreTest, AChangeOfOneMeetingIsKeptAndTakenBack)
{
    act([&](Action& action) {
        TimetableStore::change(action, {key(), "Water in the hall", "Yard", "CD"});
    });
    ASSERT_EQ(week().size(), 1U);
    EXPECT_EQ(week()[0].cancelled, "Water in the hall");
    EXPECT_EQ(week()[0].plan.room, "Yard");
    EXPECT_EQ(week()[0].usualRoom, "Hall");
    EXPECT_EQ(week()[0].usualInstructor, "AB");
    EXPECT_EQ(store.changeOf(key()), (MeetingChange{key(), "Water in the hall", "Yard", "CD"}));
    EXPECT_TRUE(TodayStore(logbook).meetingsOn(kWednesday).empty());
    takeBack(logbook, lastTakeable(logbook).value(), kNow);
    EXPECT_EQ(week()[0].cancelled, std::nullopt);
    EXPECT_EQ(store.rowOf(key()), std::nullopt);
}

TEST_F(TimetableStoreTest, AnExtraMeetingCanBeCancelled)
{
    const MeetingKey extra{kWednesday + 1, TimeOfDay{600}, morning};
    act([&](Action& action) { TimetableStore::add(action, {extra, {45, "Yard", "CD", 6}}); });
    ASSERT_EQ(week().size(), 2U);
    EXPECT_EQ(week()[1], (TimetabledMeeting{extra, {45, "Yard", "CD", 6}, true, {}, {}, {}}));
    act([&](Action& action) {
        TimetableStore::change(action, {extra, "Nobody booked", "Yard", "CD"});
    });
    ASSERT_EQ(week().size(), 2U);
    EXPECT_EQ(week()[1].cancelled, "Nobody booked");
    EXPECT_EQ(week()[1].plan.room, "Yard");
}

TEST_F(TimetableStoreTest, AnHourWithoutAStartIsTheSlotsAndOneWithoutASlotIsAnExtraOne)
{
    MeetingId open;
    act([&](Action& action) {
        open = ClassStore::addMeeting(action, morning, kWednesday, {});
        ClassStore::addMeeting(action, morning, kWednesday + 2, TimeOfDay{500});
    });
    ASSERT_EQ(week().size(), 2U);
    EXPECT_TRUE(week()[1].isExtra);
    EXPECT_EQ(store.rowOf(key()), open);
    act([&](Action& action) { EXPECT_EQ(TimetableStore::rowFor(action, key()), open); });
    EXPECT_EQ(ClassStore(logbook).meeting(morning, kWednesday)->start, kSix);
}

class BookingStoreTest : public TimetableStoreTest {
protected:
    BookingStoreTest()
    {
        for (const char* code : {"M1", "M2", "M3"}) {
            members.push_back(addMember(logbook, code));
        }
    }

    void keep(const MeetingPlaces& places)
    {
        act([&](Action& action) {
            const MeetingId meeting = TimetableStore::rowFor(action, key());
            BookingStore::setPlaces(action, meeting, places);
        });
    }

    [[nodiscard]] MeetingPlaces stored(std::optional<int> capacity)
    {
        return BookingStore(logbook).placesOf(morning, store.rowOf(key()), capacity);
    }

    std::vector<MemberId> members;
};

TEST_F(BookingStoreTest, ThePeopleOfTheClassAreBookedUntilSomebodyBooks)
{
    act([&](Action& action) {
        for (const MemberId member : members) {
            ClassStore::setMembership(action, morning, member, true);
        }
    });
    const MeetingPlaces places = stored(2);
    EXPECT_EQ(places.booked, (std::vector{members[0], members[1]}));
    EXPECT_EQ(places.waiting, (std::vector{members[2]}));
    EXPECT_EQ(store.rowOf(key()), std::nullopt) << "looking writes nothing";
}

TEST_F(BookingStoreTest, ListsKeepTheirOrderAndWhoLeftIsCancelled)
{
    const MeetingPlaces places{2, {members[2], members[0]}, {members[1]}, {}};
    keep(places);
    EXPECT_EQ(stored(2), places);
    const MovedUp after = giveBack(places, members[2]);
    keep(after.places);
    EXPECT_EQ(stored(2).booked, (std::vector{members[0], members[1]}));
    const MeetingId meeting = store.rowOf(key()).value();
    EXPECT_EQ(BookingStore(logbook).cancelledOf(meeting), (std::vector{members[2]}));
    EXPECT_TRUE(ClassStore(logbook).attendanceOf(meeting)[0].isBooked) << "M1";
    EXPECT_FALSE(ClassStore(logbook).attendanceOf(meeting)[2].isBooked) << "M3";
    takeBack(logbook, lastTakeable(logbook).value(), kNow);
    EXPECT_EQ(stored(2), places);
}

TEST_F(BookingStoreTest, WhoWaitsOrCancelledIsNotExpectedAndADropInIs)
{
    keep({1, {members[0]}, {members[1]}, {members[2]}});
    const auto expected = [&] {
        return TodayStore(logbook).expectedIn(TodayStore(logbook).meetingsOn(kWednesday).at(0));
    };
    EXPECT_EQ(expected(), (std::vector{members[0], members[2]}));
    act([&](Action& action) { ClassStore::setMembership(action, morning, members[0], true); });
    keep({1, {}, {}, {}});
    EXPECT_TRUE(expected().empty()) << "all cancelled: the class's people do not come back in";
}

// The file was written by the program of schema 5.
TEST(SchemaV7Test, AFileOfVersion5OpensAndTakesBookings)
{
    const tests::TemporaryFolder folder;
    const std::filesystem::path path = folder / "v5.levelbar";
    std::filesystem::copy_file(LEVELBAR_SOURCE_DIR "/tests/storage/data/v5.levelbar", path);
    {
        SQLite::Database raw(path.string(), SQLite::OPEN_READONLY);
        ASSERT_EQ(raw.execAndGet("PRAGMA user_version").getInt(), 5) << "or this tests nothing";
    }
    Logbook logbook = Logbook::open(path, kNow, {});
    EXPECT_EQ(logbook.schemaVersion(), currentSchemaVersion());
    const auto groupClass = ClassStore(logbook).all().at(0);
    const auto meeting = ClassStore(logbook).meetingsOf(groupClass.id).at(0);
    const auto came = ClassStore(logbook).attendanceOf(meeting.id).at(0);
    Action action(logbook, ActionKind::BookPlace, kNow);
    BookingStore::setPlaces(action, meeting.id, {5, {came.member}, {}, {}});
    action.commit();
    const auto places = BookingStore(logbook).placesOf(groupClass.id, meeting.id, 5);
    EXPECT_EQ(places.booked, std::vector{came.member});
    EXPECT_EQ(ClassStore(logbook).attendanceOf(meeting.id).at(0).came, came.came);
}

} // namespace
} // namespace levelbar::storage::timetable_store_test
