// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later

#include "core/sides/side_prescription.h"
#include "tests/support/sets.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace levelbar::side_prescription_test {
namespace {

using tests::set;

const Day kToday = tests::day("2026-06-30");

SidePlanQuestion leftWeaker(int daysAgo)
{
    SidePlanQuestion q;
    q.today = kToday;
    q.tier = SideTier::Act;
    q.weaker = Side::Left;
    q.started = kToday - daysAgo;
    q.weakerLoad.rule = ProgressionRule::AsPlanned;
    q.weakerLoad.load = AvailableLoad{};
    q.weakerLoad.load->load = Mass::ofKilograms(14);
    q.weakerLoad.reps = 8;
    return q;
}

bool has(const SidePlan& plan, SideRule rule)
{
    return std::count(plan.rules.begin(), plan.rules.end(), rule) == 1;
}

TEST(SidePlanTest, WeakerSideGoesFirstAndItsLoadIsBothSides)
{
    const SidePlan plan = planSides(leftWeaker(7)).value();
    EXPECT_EQ(plan.rules, std::vector{SideRule::WeakerFirst});
    EXPECT_EQ(plan.first, Side::Left);
    EXPECT_TRUE(plan.isCapped);
    EXPECT_FALSE(plan.isOpenPair);
    EXPECT_EQ(plan.load->load, Mass::ofKilograms(14));
    EXPECT_EQ(plan.reps, 8);
    EXPECT_EQ(plan.leastReserve, 1.0);
    EXPECT_EQ(plan.mostReserve, 3.0);
    EXPECT_EQ(plan.leftSets, plan.rightSets);
}

TEST(SidePlanTest, OpenPairComesEveryTwoWeeksWithTheStartAlternated)
{
    EXPECT_FALSE(planSides(leftWeaker(13)).value().isOpenPair);
    SidePlanQuestion q = leftWeaker(14);
    q.lastFirst = Side::Left;
    const SidePlan open = planSides(q).value();
    EXPECT_TRUE(open.isOpenPair);
    EXPECT_FALSE(open.isCapped);
    EXPECT_EQ(open.first, Side::Right);
    EXPECT_EQ(open.leastReserve, 1.0);
    EXPECT_EQ(open.mostReserve, 1.0);
    EXPECT_EQ(open.leastRestSeconds, 120);
    EXPECT_EQ(open.mostRestSeconds, 180);
    const std::vector<OpenPairVerdict> before = {{kToday - 14, Side::Right, 0.1}};
    q = leftWeaker(28);
    q.openPairs = before;
    EXPECT_EQ(planSides(q).value().first, Side::Left);
    const std::vector<OpenPairVerdict> recent = {{kToday - 13, Side::Right, 0.1}};
    q.openPairs = recent;
    EXPECT_FALSE(planSides(q).value().isOpenPair);
}

TEST(SidePlanTest, PeopleOnNoListAlternateTheStart)
{
    SidePlanQuestion q = leftWeaker(0);
    q.tier = SideTier::Look;
    q.started.reset();
    for (const Side last : {Side::Left, Side::Right}) {
        q.lastFirst = last;
        const SidePlan plan = planSides(q).value();
        EXPECT_TRUE(has(plan, SideRule::NotListed));
        EXPECT_EQ(plan.first, otherSide(last));
        EXPECT_FALSE(plan.isCapped);
        EXPECT_EQ(plan.twoSidedReplaced, 0);
    }
}

TEST(SidePlanTest, DominantGripIsNeverTrainedFor)
{
    SidePlanQuestion q = leftWeaker(7);
    q.isTrainable = false;
    const SidePlan plan = planSides(q).value();
    EXPECT_TRUE(has(plan, SideRule::NeverForThis));
    EXPECT_FALSE(plan.isCapped);
}

TEST(SidePlanTest, ExtraSetIsOneAtMostThreeToTwoForEightWeeks)
{
    SidePlanQuestion q = leftWeaker(7);
    q.wantsExtraSet = true;
    for (int sets = 1; sets <= 6; ++sets) {
        q.sets = sets;
        const SidePlan plan = planSides(q).value();
        EXPECT_EQ(has(plan, SideRule::ExtraSet), sets >= 2);
        EXPECT_LE(2 * plan.leftSets, 3 * plan.rightSets);
        EXPECT_LE(plan.leftSets - plan.rightSets, 1);
        EXPECT_EQ(plan.rightSets, sets) << "the stronger side keeps its work";
    }
    q.started = kToday - 56;
    const std::vector<OpenPairVerdict> recent = {{kToday - 3, Side::Left, 0.1}};
    q.openPairs = recent;
    const SidePlan later = planSides(q).value();
    EXPECT_TRUE(has(later, SideRule::ExtraSetOver));
    EXPECT_EQ(later.leftSets, later.rightSets);
}

TEST(SidePlanTest, StrongerSideGetsOneUncappedSetAWeekAfterFourWeeksAtEase)
{
    SidePlanQuestion q = leftWeaker(28);
    const std::vector<OpenPairVerdict> recent = {{kToday - 3, Side::Left, 0.1}};
    q.openPairs = recent;
    q.strongerReserve = 4.0;
    EXPECT_EQ(planSides(q).value().uncapped, Side::Right);
    q.lastUncapped = kToday - 6;
    EXPECT_FALSE(planSides(q).value().uncapped);
    q.lastUncapped = kToday - 7;
    EXPECT_TRUE(planSides(q).value().uncapped);
    q.strongerReserve = 3.0;
    EXPECT_FALSE(planSides(q).value().uncapped);
    q.strongerReserve = 5.0;
    q.started = kToday - 27;
    EXPECT_FALSE(planSides(q).value().uncapped);
}

TEST(SidePlanTest, EndsAfterTwoSmallOpenPairsRunning)
{
    SidePlanQuestion q = leftWeaker(50);
    const std::vector<OpenPairVerdict> closed = {{kToday - 30, Side::Left, 0.2},
                                                 {kToday - 16, Side::Right, 0.6},
                                                 {kToday - 2, Side::Left, 0.5}};
    q.openPairs = closed;
    const SidePlan plan = planSides(q).value();
    EXPECT_EQ(plan.rules, std::vector{SideRule::Closed});
    EXPECT_FALSE(plan.isCapped);
    EXPECT_EQ(plan.leftSets, plan.rightSets);
    const std::vector<OpenPairVerdict> once = {{kToday - 16, Side::Right, 0.6},
                                               {kToday - 2, Side::Left, 0.4}};
    q.openPairs = once;
    EXPECT_FALSE(has(planSides(q).value(), SideRule::Closed));
}

TEST(SidePlanTest, EndsAfterTwelveWeeksUnchanged)
{
    EXPECT_FALSE(has(planSides(leftWeaker(83)).value(), SideRule::UsualDifference));
    SidePlanQuestion q = leftWeaker(84);
    EXPECT_EQ(planSides(q).value().rules, std::vector{SideRule::UsualDifference});
    q.isClosing = true;
    EXPECT_FALSE(has(planSides(q).value(), SideRule::UsualDifference)) << "it works: go on";
}

TEST(SidePlanTest, PainAndSendingOnLeaveNothingForEitherSide)
{
    SidePlanQuestion q = leftWeaker(7);
    q.tier = SideTier::SendOn;
    EXPECT_EQ(planSides(q).value().rules, std::vector{SideRule::SentOn});
    EXPECT_EQ(planSides(q).value().leftSets + planSides(q).value().rightSets, 0);
    q.tier = SideTier::Act;
    q.weakerLoad.rule = ProgressionRule::Pain;
    EXPECT_EQ(planSides(q).value().rules, std::vector{SideRule::PainEnds});
    EXPECT_EQ(planSides(q).value().leftSets + planSides(q).value().rightSets, 0);
}

TEST(SidePlanTest, SaysWhenRepsComeFirstOrNoLoadExists)
{
    SidePlanQuestion q = leftWeaker(7);
    q.weakerLoad.rule = ProgressionRule::RepsFirst;
    q.weakerLoad.reps = 9;
    EXPECT_TRUE(has(planSides(q).value(), SideRule::RepsFirst));
    EXPECT_EQ(planSides(q).value().reps, 9);
    q.weakerLoad.load.reset();
    EXPECT_TRUE(has(planSides(q).value(), SideRule::NoLoad));
}

TEST(SidePlanTest, ReplacesOneTwoSidedLiftNotAll)
{
    SidePlanQuestion q = leftWeaker(7);
    for (const int lifts : {0, 1, 3}) {
        q.twoSidedLifts = lifts;
        EXPECT_EQ(planSides(q).value().twoSidedReplaced, std::min(1, lifts));
    }
}

TEST(SidePlanTest, RefusesWhatMakesNoSense)
{
    SidePlanQuestion q = leftWeaker(7);
    q.sets = 0;
    EXPECT_FALSE(planSides(q));
    q = leftWeaker(7);
    q.weaker = Side::Both;
    EXPECT_FALSE(planSides(q));
    q = leftWeaker(7);
    q.lastFirst = Side::Both;
    EXPECT_FALSE(planSides(q));
}

TEST(SideCapTest, CleanRepsOfTheFirstSideLimitTheOther)
{
    PerformedSet first = set(kToday, 1, 14, 9, 2);
    EXPECT_EQ(capAfter(first).reps, 9);
    first.isClean = false;
    EXPECT_EQ(capAfter(first).reps, 8);
    EXPECT_TRUE(capAfter(first).isLessOne);
    first.isClean = true;
    EXPECT_EQ(capAfter(first).reps, 9);
}

TEST(SideCapTest, PainSetsNoCapAndEndsTheExercise)
{
    PerformedSet first = set(kToday, 1, 14, 5, 2);
    first.stopped = StopReason::Pain;
    EXPECT_FALSE(capAfter(first).reps);
    EXPECT_TRUE(capAfter(first).endsExercise);
}

TEST(SideCapTest, OpenAcceptedAndMissedSetsCapNothing)
{
    for (const auto change : {+[](PerformedSet& s) { s.kind = SetKind::Open; },
                              +[](PerformedSet& s) { s.known = HowKnown::Accepted; },
                              +[](PerformedSet& s) { s.known = HowKnown::Group; },
                              +[](PerformedSet& s) { s.reps = 0; },
                              +[](PerformedSet& s) { s.reps.reset(); }}) {
        PerformedSet first = set(kToday, 1, 14, 9, 2);
        change(first);
        EXPECT_FALSE(capAfter(first).reps);
        EXPECT_FALSE(capAfter(first).endsExercise);
    }
}

Estimate about(double kilograms)
{
    return {kilograms, kilograms / 1.02, kilograms * 1.02, kLevel, 5};
}

TEST(SideChangeTest, SuccessSaysWhichSideMoved)
{
    const SideStrength before{about(20), about(24)};
    const SideChange rose = changeOfSides(before, {about(21.4), about(24.1)}, Side::Left).value();
    EXPECT_NEAR(rose.leftPercent, 7.0, 1e-9);
    EXPECT_EQ(rose.left, SideMove::Rose);
    EXPECT_EQ(rose.right, SideMove::Held);
    EXPECT_EQ(rose.outcome, SideOutcome::WeakerRose);
    const auto outcome = [&](double left, double right) {
        return changeOfSides(before, {about(left), about(right)}, Side::Left).value().outcome;
    };
    EXPECT_EQ(outcome(20, 22), SideOutcome::StrongerFell) << "the gap closed the wrong way";
    EXPECT_EQ(outcome(22, 22), SideOutcome::StrongerFell) << "still a warning";
    EXPECT_EQ(outcome(18, 24), SideOutcome::WeakerFell);
    EXPECT_EQ(outcome(20, 26), SideOutcome::StrongerRose);
    EXPECT_EQ(outcome(22, 26), SideOutcome::WeakerRose);
    EXPECT_EQ(outcome(20.2, 24.2), SideOutcome::NothingMoved);
}

TEST(SideChangeTest, WhatIsInDoubtHasNotMoved)
{
    const Estimate vague{20, 16, 25, kLevel, 2};
    const Estimate vagueNow{21.4, 17, 27, kLevel, 2};
    const SideChange change =
        changeOfSides({vague, about(24)}, {vagueNow, about(24)}, Side::Left).value();
    EXPECT_EQ(change.left, SideMove::Held);
    EXPECT_FALSE(changeOfSides({vague, {}}, {vague, about(24)}, Side::Left));
    EXPECT_FALSE(changeOfSides({vague, about(24)}, {vague, about(24)}, Side::Both));
}

} // namespace
} // namespace levelbar::side_prescription_test
