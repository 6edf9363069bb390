// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/period_reader.h"
#include "storage/trial_store.h"
#include "tests/support/logbook_fixture.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace levelbar::storage::period_reader_test {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;
using tests::addMember;
using tests::benchSet;
using tests::kNow;

const Day kFrom = parseDay("2026-05-01").value();
const Day kTo = parseDay("2026-05-31").value();

class PeriodReaderTest : public testing::Test {
protected:
    // A meeting of the class on a day, with its people.
    void meet(Day day, const std::vector<Attendance>& people)
    {
        Action action(logbook, ActionKind::OpenMeeting, kNow);
        const auto known = ClassStore(logbook).find("Noon");
        const ClassId noon = known ? known->id : ClassStore::add(action, "Noon");
        last = ClassStore::addMeeting(action, noon, day, std::nullopt);
        for (const Attendance& person : people) {
            ClassStore::setAttendance(action, last, person);
        }
        action.commit();
    }

    Logbook logbook = Logbook::inMemory(kNow);
    MemberId ann = addMember(logbook, "M1", "Ann");
    MemberId bo = addMember(logbook, "M2", "Bo");
    MeetingId last;
};

TEST_F(PeriodReaderTest, BothEndsBelongToThePeriodAndNothingBeyond)
{
    for (const Day day : {kFrom - 1, kFrom, kTo, kTo + 1}) {
        tests::logSet(logbook, benchSet(logbook, ann, day, 1, 8));
        meet(day, {{ann, true, true}});
    }
    const PeriodFacts facts = readPeriod(logbook, kFrom, kTo);
    ASSERT_EQ(facts.members.size(), 2U);
    EXPECT_EQ(facts.members[0].sets, 2);
    EXPECT_EQ(facts.members[0].counted, 2);
    EXPECT_EQ(facts.members[1].sets, 0);
    ASSERT_EQ(facts.meetings.size(), 2U);
    EXPECT_THAT(facts.meetings[0].came, ElementsAre(ann));
}

TEST_F(PeriodReaderTest, WhoLoggedASetThereCameAndWhoIsNotKnownNeitherCameNorMissed)
{
    meet(kFrom, {{ann, true, false}, {bo, true, std::nullopt}});
    PeriodFacts facts = readPeriod(logbook, kFrom, kTo);
    EXPECT_THAT(facts.meetings[0].came, IsEmpty());
    EXPECT_THAT(facts.meetings[0].missed, ElementsAre(ann));
    EXPECT_THAT(facts.meetings[0].booked, ElementsAre(ann, bo));
    for (const MemberId member : {ann, bo}) {
        DoneSet set = benchSet(logbook, member, kFrom, 1, 8);
        set.meeting = last;
        set.performed.known = HowKnown::Accepted;
        tests::logSet(logbook, set);
    }
    facts = readPeriod(logbook, kFrom, kTo);
    EXPECT_THAT(facts.meetings[0].came, ElementsAre(ann, bo));
    EXPECT_THAT(facts.meetings[0].missed, IsEmpty());
    EXPECT_EQ(facts.members[0].counted, 0) << "accepted, not counted";
}

TEST_F(PeriodReaderTest, TrialsOfOneTestAndDayAreOneTest)
{
    const TestKind grip = LibraryStore(logbook).findTest("Grip strength").value();
    Action action(logbook, ActionKind::LogSet, kNow);
    for (const Side side : {Side::Left, Side::Right}) {
        for (const int number : {1, 2, 3}) {
            TrialStore::add(action, {ann, grip.id, kFrom, side, number, 30'000, "kg", true, ""});
        }
    }
    TrialStore::add(action, {bo, grip.id, kFrom, Side::Left, 1, 30'000, "kg", false, ""});
    for (const int later : {7, 14, 21}) {
        TrialStore::add(action, {bo, grip.id, kFrom + later, Side::Left, 1, 1000, "kg", true, ""});
    }
    action.commit();
    const PeriodFacts facts = readPeriod(logbook, kFrom, kTo);
    EXPECT_EQ(facts.members[0].tests, 1);
    EXPECT_EQ(facts.members[1].tests, 3) << "the first is not valid";
}

TEST_F(PeriodReaderTest, GroupsAreByNameAndNoGroupComesLast)
{
    EXPECT_THAT(groupsOf(logbook), ElementsAre(""));
    Action action(logbook, ActionKind::EditMember, kNow);
    Member member = MemberStore(logbook).byId(bo).value();
    member.group = "Yard";
    MemberStore::update(action, member);
    action.commit();
    EXPECT_THAT(groupsOf(logbook), ElementsAre("Yard", ""));
    EXPECT_EQ(readPeriod(logbook, kFrom, kTo).members[1].group, "Yard");
}

} // namespace
} // namespace levelbar::storage::period_reader_test
