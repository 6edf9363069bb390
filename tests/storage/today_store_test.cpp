// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/answered_plans.h"
#include "storage/today_store.h"
#include "tests/support/logbook_fixture.h"

#include <SQLiteCpp/SQLiteCpp.h>
#include <gtest/gtest.h>

namespace levelbar::storage::today_store_test {
namespace {

using tests::addMember;
using tests::benchSet;
using tests::kNow;

const Day kDay{20600}; // a Wednesday

class TodayStoreTest : public testing::Test {
protected:
    template <typename Work> Change act(ActionKind kind, const Work& work)
    {
        Action action(logbook, kind, kNow);
        work(action);
        return action.commit();
    }

    void settle(const SettledReason& settled)
    {
        act(ActionKind::SettleReason, [&](Action& action) { TodayStore::settle(action, settled); });
    }

    Logbook logbook = Logbook::inMemory(kNow);
    TodayStore store{logbook};
    MemberId member = addMember(logbook, "M1");
};

SettledReason settledPain(MemberId member)
{
    return {member, AttentionKind::Pain, {}, "Saw a doctor", kDay, {kDay - 3, 2}};
}

TEST_F(TodayStoreTest, KeepsOneAnswerAPersonAndKind)
{
    SettledReason pain = settledPain(member);
    settle(pain);
    SettledReason absence = settledPain(member);
    absence.kind = AttentionKind::Absence;
    absence.until = kDay + 14;
    settle(absence);
    pain.because = "Again";
    settle(pain);
    EXPECT_EQ(store.settled(), (std::vector<SettledReason>{pain, absence}));
    act(ActionKind::SettleReason,
        [&](Action& action) { TodayStore::open(action, member, AttentionKind::Pain); });
    EXPECT_EQ(store.settled(), (std::vector<SettledReason>{absence}));
}

TEST_F(TodayStoreTest, SettlingIsTakenBackAndAnnouncedAsToday)
{
    const Change change = act(ActionKind::SettleReason, [&](Action& action) {
        TodayStore::settle(action, settledPain(member));
    });
    EXPECT_TRUE(change.touchesToday);
    EXPECT_FALSE(change.touchesSets);
    EXPECT_EQ(change.members, (std::vector<MemberId>{member}));
    takeBack(logbook, lastTakeable(logbook).value(), kNow);
    EXPECT_TRUE(store.settled().empty());
}

TEST_F(TodayStoreTest, FollowUpsComeByDueDayAndThenThoseDoneLately)
{
    const auto write = [&](const char* text, int due, std::optional<MemberId> of) {
        FollowUp made;
        made.text = text;
        made.owner = "AB";
        made.written = kDay;
        made.due = kDay + due;
        made.member = of;
        act(ActionKind::WriteFollowUp,
            [&](Action& action) { made.id = TodayStore::write(action, made); });
        return made;
    };
    const FollowUp later = write("Ring back", 5, member);
    const FollowUp sooner = write("Order collars", 1, {});
    FollowUp done = write("Mend the bench", 0, {});
    FollowUp longDone = write("Old", 0, {});
    act(ActionKind::FinishFollowUp, [&](Action& action) {
        TodayStore::setDone(action, done.id, kDay);
        TodayStore::setDone(action, longDone.id, kDay - 30);
    });
    done.done = kDay;
    EXPECT_EQ(store.followUps(kDay - 7), (std::vector<FollowUp>{sooner, later, done}));
    takeBack(logbook, lastTakeable(logbook).value(), kNow);
    EXPECT_EQ(store.followUps(kDay - 7).size(), 4U);
}

TEST_F(TodayStoreTest, AFollowUpOfNobodyNamesNobody)
{
    const Change change = act(ActionKind::WriteFollowUp, [&](Action& action) {
        FollowUp made;
        made.text = "Order collars";
        made.written = made.due = kDay;
        TodayStore::write(action, made);
    });
    EXPECT_TRUE(change.members.empty());
}

TEST_F(TodayStoreTest, TheNewestScreeningsEndCounts)
{
    logbook.database().exec(
        "INSERT INTO screening (member, day, form, outcome, cleared_until) VALUES "
        "(1, 100, 'f', 'o', 900), (1, 200, 'f', 'o', 700), (1, 300, 'f', 'o', NULL)");
    EXPECT_EQ(store.clearances(), (std::map<MemberId, Day>{{member, Day{700}}}));
}

TEST_F(TodayStoreTest, MeetingsOfTheDayCountTheTimetableOnce)
{
    ClassId morning;
    MeetingId meeting;
    act(ActionKind::EditClass, [&](Action& action) {
        morning = ClassStore::add(action, "Morning");
        meeting = ClassStore::addMeeting(action, morning, kDay, TimeOfDay{540});
    });
    SQLite::Database& database = logbook.database();
    database.exec("INSERT INTO class_slot (class, weekday, start_minute, minutes, since, until) "
                  "VALUES (1, 3, 540, 60, 0, NULL), (1, 3, 480, 60, 0, NULL), "
                  "(1, 4, 500, 60, 0, NULL), (1, 3, 510, 60, 0, 20599)");
    const auto meetings = store.meetingsOn(kDay);
    ASSERT_EQ(meetings.size(), 2U); // the other weekday and the hour that ended are not there
    EXPECT_EQ(meetings[0], (DayMeeting{{}, morning, "Morning", TimeOfDay{480}, false}));
    EXPECT_EQ(meetings[1], (DayMeeting{meeting, morning, "Morning", TimeOfDay{540}, false}));
    DoneSet set = benchSet(logbook, member, kDay, 1, 8);
    set.meeting = meeting;
    tests::logSet(logbook, set);
    EXPECT_TRUE(store.meetingsOn(kDay)[1].isLogged);
    database.exec("UPDATE meeting SET is_cancelled = 1");
    EXPECT_EQ(store.meetingsOn(kDay).size(), 1U);
}

TEST_F(TodayStoreTest, ExpectedAreTheBookedElseThePeopleOfTheClass)
{
    const MemberId other = addMember(logbook, "M2");
    DayMeeting meeting;
    act(ActionKind::EditClass, [&](Action& action) {
        meeting.groupClass = ClassStore::add(action, "Morning");
        meeting.meeting = ClassStore::addMeeting(action, meeting.groupClass, kDay, {});
        ClassStore::setMembership(action, meeting.groupClass, member, true);
    });
    EXPECT_EQ(store.expectedIn(meeting), (std::vector<MemberId>{member}));
    act(ActionKind::MarkAttendance, [&](Action& action) {
        ClassStore::setAttendance(action, *meeting.meeting, {other, true, {}});
    });
    EXPECT_EQ(store.expectedIn(meeting), (std::vector<MemberId>{other}));
    meeting.meeting.reset(); // an hour of the timetable
    EXPECT_EQ(store.expectedIn(meeting), (std::vector<MemberId>{member}));
}

TEST_F(TodayStoreTest, WhatWasExpectedIsKeptAndComesBackWithWhatWasDone)
{
    PlannedSet planned;
    act(ActionKind::PlanMeeting, [&](Action& action) {
        planned.meeting =
            ClassStore::addMeeting(action, ClassStore::add(action, "Morning"), kDay, {});
        planned.member = member;
        planned.exercise = tests::exercise(logbook, "Barbell bench press").id;
        planned.load = Mass::ofKilograms(60);
        planned.amount = 8;
        planned.reserve = Reserve{20};
        planned.prediction = GivenPrediction{10.25, 8.5, 12.0, Experience::Advanced, 3, kNow};
        planned.id = SetStore::plan(action, planned);
    });
    EXPECT_EQ(SetStore(logbook).plannedOf(planned.meeting), (std::vector<PlannedSet>{planned}));
    DoneSet done = benchSet(logbook, member, kDay, 1, 9);
    done.planned = planned.id;
    tests::logSet(logbook, done);
    tests::logSet(logbook, benchSet(logbook, member, kDay, 2, 9)); // answers nothing
    const auto answered = answeredPlans(logbook, kDay, kDay);
    ASSERT_EQ(answered.size(), 1U);
    EXPECT_EQ(answered[0].planned, planned);
    EXPECT_EQ(answered[0].done, done.performed);
    EXPECT_TRUE(answeredPlans(logbook, kDay + 1, kDay + 9).empty());
}

} // namespace
} // namespace levelbar::storage::today_store_test
