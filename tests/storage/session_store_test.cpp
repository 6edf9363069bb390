// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/erase.h"
#include "storage/exchange/export.h"
#include "storage/incident_store.h"
#include "storage/session_store.h"
#include "storage/store_error.h"
#include "storage/timetable_store.h"
#include "tests/support/logbook_fixture.h"

#include <SQLiteCpp/SQLiteCpp.h>
#include <gtest/gtest.h>

#include <sstream>

namespace levelbar::storage::session_store_test {
namespace {

using tests::addMember;
using tests::benchSet;
using tests::kNow;

const Day kDay{20600};

class SessionStoreTest : public testing::Test {
protected:
    SessionStoreTest()
    {
        act([&](Action& action) {
            const ClassId groupClass = ClassStore::add(action, "Morning");
            meeting = ClassStore::addMeeting(action, groupClass, kDay, TimeOfDay{540});
        });
    }

    template <typename Work> Change act(const Work& work)
    {
        Action action(logbook, ActionKind::CloseMeeting, kNow);
        work(action);
        return action.commit();
    }

    Logbook logbook = Logbook::inMemory(kNow);
    SessionStore store{logbook};
    MemberId member = addMember(logbook, "M1");
    MeetingId meeting;
};

TEST_F(SessionStoreTest, KeepsRatingsBesideWhoCame)
{
    act([&](Action& action) {
        ClassStore::setAttendance(action, meeting, {member, true, true});
        SessionStore::setRating(action, meeting, member, 7);
        SessionStore::setMinutes(action, meeting, 55);
    });
    EXPECT_EQ(store.ratingsOf(meeting), (std::map<MemberId, int>{{member, 7}}));
    EXPECT_EQ(store.minutesOf(meeting), 55);
    EXPECT_EQ(ClassStore(logbook).attendanceOf(meeting).at(0), (Attendance{member, true, true}));
    act([&](Action& action) {
        ClassStore::setAttendance(action, meeting, {member, true, false});
        EXPECT_THROW(SessionStore::setRating(action, meeting, member, 11), StoreError);
    });
    EXPECT_EQ(store.ratingsOf(meeting).at(member), 7) << "marking who came keeps it";
    takeBack(logbook, lastTakeable(logbook).value(), kNow);
    takeBack(logbook, lastTakeable(logbook).value(), kNow);
    EXPECT_TRUE(store.ratingsOf(meeting).empty());
    EXPECT_EQ(store.minutesOf(meeting), std::nullopt);
}

TEST_F(SessionStoreTest, RatedSessionsHaveTheLengthThatWasSaidOrThatOfTheWeeklyHour)
{
    act([&](Action& action) { SessionStore::setRating(action, meeting, member, 7); });
    const DayRange week{kDay - 3, kDay + 3};
    EXPECT_TRUE(store.rated(week).empty()) << "nobody said how long it took";
    act([&](Action& action) {
        WeeklySlot slot;
        slot.groupClass = ClassStore(logbook).find("Morning")->id;
        slot.weekday = isoWeekday(kDay);
        slot.start = TimeOfDay{540};
        slot.plan.minutes = 60;
        TimetableStore::add(action, slot);
    });
    EXPECT_EQ(store.rated(week).at(member), (std::vector<RatedSession>{{kDay, 7, 60}}));
    act([&](Action& action) { SessionStore::setMinutes(action, meeting, 50); });
    EXPECT_EQ(store.rated(week).at(member), (std::vector<RatedSession>{{kDay, 7, 50}}));
    EXPECT_TRUE(store.rated({kDay + 1, kDay + 7}).empty());
    EXPECT_EQ(store.rated(week, member).size(), 1U);
    EXPECT_TRUE(store.rated(week, addMember(logbook, "M2")).empty());
}

TEST_F(SessionStoreTest, ASheetKeepsItsNumberAndItsRowsInOrder)
{
    const MemberId other = addMember(logbook, "M2");
    PrintedSheet sheet{{}, meeting, kNow, {{other, 2}, {member, 1}}};
    act([&](Action& action) { sheet.id = SessionStore::add(action, sheet); });
    EXPECT_EQ(store.sheet(sheet.id), sheet);
    PrintedSheet second{{}, meeting, kNow, {}};
    act([&](Action& action) { second.id = SessionStore::add(action, second); });
    EXPECT_EQ(store.sheetsOf(meeting), (std::vector{second, sheet}));
    EXPECT_EQ(store.sheet(SheetId{99}), std::nullopt);
}

TEST_F(SessionStoreTest, NoSheetNumberIsGivenOutTwice)
{
    SheetId first;
    SheetId again;
    act([&](Action& action) { first = SessionStore::add(action, {{}, meeting, kNow, {}}); });
    takeBack(logbook, lastTakeable(logbook).value(), kNow);
    act([&](Action& action) { again = SessionStore::add(action, {{}, meeting, kNow, {}}); });
    EXPECT_NE(first, again) << "the paper of the first may still lie about";
}

TEST_F(SessionStoreTest, AnEasyDaysSetIsStoredAndExported)
{
    DoneSet set = benchSet(logbook, member, kDay, 1, 8);
    set.performed.isAtLeast = true;
    tests::logSet(logbook, set);
    tests::logSet(logbook, benchSet(logbook, member, kDay, 2, 8));
    EXPECT_EQ(SetStore(logbook).find(keyOf(set)), set);
    std::ostringstream out;
    writeSets(logbook, out);
    const std::string text = out.str();
    EXPECT_NE(text.find(",note,easy\n"), std::string::npos);
    EXPECT_NE(text.find(",yes\n"), std::string::npos);
    EXPECT_EQ(text.find(",yes\n"), text.rfind(",yes\n")) << "one set only";
}

Incident fall(MemberId member, MeetingId meeting)
{
    Incident incident;
    incident.day = kDay;
    incident.at = TimeOfDay{600};
    incident.member = member;
    incident.meeting = meeting;
    incident.what = "Slipped on the way to rack 2";
    incident.firstAid = "Ice";
    incident.witness = "The person at rack 3";
    incident.followUp = "Ring on Friday";
    incident.writtenAt = kNow;
    incident.writtenBy = "AB";
    return incident;
}

class IncidentStoreTest : public SessionStoreTest {};

TEST_F(IncidentStoreTest, KeepsWhatWasWrittenAndItsCorrection)
{
    Incident incident = fall(member, meeting);
    const Change change =
        act([&](Action& action) { incident.id = IncidentStore::add(action, incident); });
    EXPECT_EQ(change.members, std::vector{member});
    Incident stranger = fall(member, meeting);
    stranger.member.reset();
    stranger.who = "A visitor";
    stranger.day = kDay + 1;
    act([&](Action& action) { stranger.id = IncidentStore::add(action, stranger); });
    const IncidentStore incidents(logbook);
    EXPECT_EQ(incidents.all(), (std::vector{stranger, incident}));
    EXPECT_EQ(incidents.ofMember(member), std::vector{incident});
    incident.witness = "Nobody";
    act([&](Action& action) { IncidentStore::update(action, incident); });
    EXPECT_EQ(incidents.ofMember(member), std::vector{incident});
}

TEST_F(IncidentStoreTest, AnIncidentWithoutWhatHappenedIsRefused)
{
    Incident incident = fall(member, meeting);
    incident.what.clear();
    EXPECT_THROW(act([&](Action& action) { IncidentStore::add(action, incident); }), StoreError);
    EXPECT_TRUE(IncidentStore(logbook).all().empty());
}

TEST_F(IncidentStoreTest, ErasingAPersonTakesIncidentsAndSheetRowsAlong)
{
    act([&](Action& action) {
        IncidentStore::add(action, fall(member, meeting));
        SessionStore::add(action, {{}, meeting, kNow, {{member, 1}}});
        SessionStore::setRating(action, meeting, member, 5);
    });
    eraseMember(logbook, member);
    EXPECT_TRUE(IncidentStore(logbook).all().empty());
    EXPECT_TRUE(store.sheetsOf(meeting).at(0).rows.empty());
    EXPECT_TRUE(store.ratingsOf(meeting).empty());
}

TEST_F(IncidentStoreTest, TheEmergencyCardIsKeptAndTakenBack)
{
    const EmergencyCard card{"1 Mill Lane, back door", "By the lift", "Whoever is at the desk"};
    act([&](Action& action) { IncidentStore::setEmergencyCard(action, card); });
    EXPECT_EQ(IncidentStore(logbook).emergencyCard(), card);
    takeBack(logbook, lastTakeable(logbook).value(), kNow);
    EXPECT_EQ(IncidentStore(logbook).emergencyCard(), EmergencyCard{});
}

} // namespace
} // namespace levelbar::storage::session_store_test
