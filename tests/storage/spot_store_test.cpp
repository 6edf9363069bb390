// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/company_store.h"
#include "storage/erase.h"
#include "storage/migrations.h"
#include "storage/session_store.h"
#include "storage/spot_store.h"
#include "storage/store_error.h"
#include "tests/support/logbook_fixture.h"

#include <SQLiteCpp/SQLiteCpp.h>
#include <gtest/gtest.h>

#include <filesystem>

namespace levelbar::storage::spot_store_test {
namespace {

using tests::addMember;
using tests::kNow;

const Day kDay{20600};

class SpotStoreTest : public testing::Test {
protected:
    SpotStoreTest()
    {
        act([&](Action& action) {
            const ClassId groupClass = ClassStore::add(action, "Morning");
            meeting = ClassStore::addMeeting(action, groupClass, kDay, TimeOfDay{540});
        });
    }

    template <typename Work> Change act(const Work& work)
    {
        Action action(logbook, ActionKind::MarkAttendance, kNow);
        work(action);
        return action.commit();
    }

    Logbook logbook = Logbook::inMemory(kNow);
    MemberId member = addMember(logbook, "M1");
    MemberId other = addMember(logbook, "M2");
    MeetingId meeting;
};

TEST_F(SpotStoreTest, WhereSomebodyStandsIsKeptBesideWhetherTheyCame)
{
    const FloorSpot spot{{member, 12, std::nullopt, LeftWhy::NotSaid, kNow}, 14, 3, 2};
    act([&](Action& action) {
        ClassStore::setAttendance(action, meeting, {member, true, true});
        SpotStore::put(action, meeting, spot);
    });
    EXPECT_EQ(SpotStore(logbook).ofMeeting(meeting), (std::vector{spot}));
    EXPECT_EQ(ClassStore(logbook).attendanceOf(meeting).at(0), (Attendance{member, true, true}));
    FloorSpot later = spot;
    later.said.leftMinute = 40;
    later.said.leftWhy = LeftWhy::Unwell;
    later.rack = 4;
    act([&](Action& action) { SpotStore::put(action, meeting, later); });
    EXPECT_EQ(SpotStore(logbook).ofMeeting(meeting), (std::vector{later}));
    takeBack(logbook, lastTakeable(logbook).value(), kNow);
    EXPECT_EQ(SpotStore(logbook).ofMeeting(meeting), (std::vector{spot}));
}

TEST_F(SpotStoreTest, WhoLeftTheLastTimeTheyCameIsToldWithTheReason)
{
    const auto leave = [&](MeetingId of, MemberId who, std::optional<int> minute, LeftWhy why) {
        act([&](Action& action) {
            ClassStore::setAttendance(action, of, {who, false, true});
            SpotStore::put(action, of, {{who, {}, minute, why, {}}, 1, 1, 1});
        });
    };
    MeetingId next;
    act([&](Action& action) {
        const ClassId groupClass = ClassStore::add(action, "Later");
        next = ClassStore::addMeeting(action, groupClass, kDay + 2, std::nullopt);
    });
    leave(meeting, member, 40, LeftWhy::Unwell);
    leave(meeting, other, 40, LeftWhy::Pain);
    leave(next, other, std::nullopt, LeftWhy::NotSaid); // stayed to the end
    const SpotStore store(logbook);
    EXPECT_EQ(store.leftLastTime(kDay + 3), (std::map{std::pair(member, LeftWhy::Unwell)}));
    EXPECT_EQ(store.leftLastTime(kDay + 2).at(other), LeftWhy::Pain);
    EXPECT_TRUE(store.leftLastTime(kDay).empty());
}

TEST_F(SpotStoreTest, NumbersThatNoFloorHasAreRefused)
{
    Action action(logbook, ActionKind::MarkAttendance, kNow);
    EXPECT_THROW(SpotStore::put(action, meeting, {{member, {}, {}, {}, {}}, 0, 1, 1}), StoreError);
    EXPECT_THROW(SpotStore::put(action, meeting, {{member, {}, {}, {}, {}}, 1, 100, 1}),
                 StoreError);
}

TEST_F(SpotStoreTest, WhoMustNotShareARackIsKnownOfBothAndGoesWithEither)
{
    const CompanyStore store(logbook);
    const Change change = act([&](Action& action) {
        CompanyStore::setApart(action, other, member, true);
        CompanyStore::setApart(action, member, other, true); // again: no second pair
        CompanyStore::setSpotter(action, other, true);
    });
    EXPECT_EQ(change.members, (std::vector{member, other}));
    const std::pair pair{std::min(member, other), std::max(member, other)};
    EXPECT_EQ(store.all(), (RackCompany{{pair}, {other}}));
    act([&](Action& action) {
        CompanyStore::setApart(action, member, other, false);
        CompanyStore::setSpotter(action, other, false);
    });
    EXPECT_EQ(store.all(), RackCompany{});
    takeBack(logbook, lastTakeable(logbook).value(), kNow);
    EXPECT_EQ(store.all(), (RackCompany{{pair}, {other}}));
    eraseMember(logbook, std::min(member, other));
    EXPECT_TRUE(store.all().apart.empty());
}

// The file of schema 5 beside it, brought to 7 by the steps of that time.
TEST(SchemaV8Test, AFileOfVersion7OpensKeepsItsRatingsAndTakesPlaces)
{
    const tests::TemporaryFolder folder;
    const std::filesystem::path path = folder / "v7.levelbar";
    std::filesystem::copy_file(LEVELBAR_SOURCE_DIR "/tests/storage/data/v7.levelbar", path);
    {
        SQLite::Database raw(path.string(), SQLite::OPEN_READONLY);
        ASSERT_EQ(raw.execAndGet("PRAGMA user_version").getInt(), 7) << "or this tests nothing";
    }
    Logbook logbook = Logbook::open(path, kNow, {});
    EXPECT_EQ(logbook.schemaVersion(), currentSchemaVersion());
    const auto groupClass = ClassStore(logbook).all().at(0);
    const auto meeting = ClassStore(logbook).meetingsOf(groupClass.id).at(0);
    const auto came = ClassStore(logbook).attendanceOf(meeting.id).at(0);
    EXPECT_TRUE(SpotStore(logbook).ofMeeting(meeting.id).empty());
    const FloorSpot spot{{came.member, {}, 40, LeftWhy::HadToGo, {}}, 3, 1, 2};
    Action action(logbook, ActionKind::MarkAttendance, kNow);
    SpotStore::put(action, meeting.id, spot);
    action.commit();
    EXPECT_EQ(SpotStore(logbook).ofMeeting(meeting.id), (std::vector{spot}));
    EXPECT_EQ(SessionStore(logbook).ratingsOf(meeting.id).at(came.member), 6);
    EXPECT_EQ(ClassStore(logbook).attendanceOf(meeting.id).at(0).came, came.came);
}

} // namespace
} // namespace levelbar::storage::spot_store_test
