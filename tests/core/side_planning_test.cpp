// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later

#include "core/review/side_words.h"
#include "core/sides/side_planning.h"
#include "tests/support/sets.h"

#include <gtest/gtest.h>

#include <algorithm>

// Plans read from made-up histories.
namespace levelbar::side_planning_test {
namespace {

using tests::day;
using tests::set;

const Day kToday = day("2026-06-30");
constexpr ExerciseId kArmPress{1};
constexpr ExerciseId kBench{2};

class SidePlanningTest : public testing::Test {
protected:
    SidePlanningTest()
    {
        Exercise press;
        press.id = kArmPress;
        press.name = "Single-arm press";
        press.pattern = Pattern::HorizontalPress;
        press.implement = Implement::Dumbbell;
        press.sidedness = Sidedness::SingleSided;
        Exercise bench;
        bench.id = kBench;
        bench.name = "Barbell bench press";
        bench.pattern = Pattern::HorizontalPress;
        bench.implement = Implement::Barbell;
        m_library.exercises = {press, bench};
        m_history.member.id = MemberId{1};
        m_history.sets = {{kArmPress, Side::Left, {}}, {kArmPress, Side::Right, {}}};
        m_review.measure = {kArmPress, std::nullopt, "Single-arm press"};
        m_review.tier = SideTier::Act;
        m_review.weaker = Side::Left;
    }

    // Weekly sessions, the last one a week ago: left first, right stopped at the left's reps.
    void train(int weeks, int strongerReserve = 2)
    {
        for (int week = weeks; week > 0; --week) {
            const Day on = kToday - 7 * week;
            PerformedSet left = set(on, 1, 20, 8, 2);
            PerformedSet right = set(on, 1, 20, 8, strongerReserve);
            left.order = 1;
            right.order = 2;
            right.stopped = StopReason::Capped;
            m_history.sets[0].sets.push_back(left);
            m_history.sets[1].sets.push_back(right);
        }
    }

    void prescribe(int daysAgo, bool wantsExtraSet = false)
    {
        m_records.prescriptions = {{kArmPress, kToday - daysAgo, {}, {}, wantsExtraSet}};
    }

    void openPair(int daysAgo, Side first, double underFive)
    {
        m_review.openPairs.push_back({kToday - daysAgo, first, underFive});
    }

    SidePlan plan()
    {
        const auto made = planSides(SidePlanBasis{
            m_history, m_library, m_kit, m_review, m_records, kToday, {8, Reserve{20}, 2}});
        EXPECT_TRUE(made.has_value());
        return made.value_or(SidePlan{});
    }

    static bool has(const SidePlan& plan, SideRule rule)
    {
        return std::find(plan.rules.begin(), plan.rules.end(), rule) != plan.rules.end();
    }

    Library m_library;
    Kit m_kit = assumedKit();
    MemberHistory m_history;
    SideReview m_review;
    SideRecords m_records;
};

// Being listed still must not begin it anew the next day.
TEST_F(SidePlanningTest, WhatEndedUnchangedOrByHandRestsForTwelveWeeks)
{
    train(6);
    for (const SideEnd why : {SideEnd::UsualDifference, SideEnd::ByHand}) {
        m_records.prescriptions = {{kArmPress, kToday - 170, kToday - 83, why, false}};
        EXPECT_TRUE(has(plan(), SideRule::Rests));
        EXPECT_FALSE(plan().isCapped);
        m_records.prescriptions.front().ended = kToday - 84;
        EXPECT_TRUE(has(plan(), SideRule::WeakerFirst));
    }
    m_records.prescriptions = {{kArmPress, kToday - 170, kToday - 7, SideEnd::Closed, false}};
    EXPECT_TRUE(has(plan(), SideRule::WeakerFirst)) << "it has come back";
}

TEST_F(SidePlanningTest, TheFirstDayIsWeakerFirstWithItsRepsAsTheLimit)
{
    train(6);
    const SidePlan made = plan();
    EXPECT_TRUE(has(made, SideRule::WeakerFirst));
    EXPECT_EQ(made.first, Side::Left);
    EXPECT_TRUE(made.isCapped);
    ASSERT_TRUE(made.load);
    EXPECT_LE(made.load->kilograms(), 22.5) << "the weaker side's load serves both";
    EXPECT_EQ(made.leftSets, 2);
    EXPECT_EQ(made.rightSets, 2);
    EXPECT_FALSE(endOf(made));
}

TEST_F(SidePlanningTest, AnOpenPairIsDueAfterFourteenDays)
{
    train(6);
    prescribe(13);
    EXPECT_FALSE(plan().isOpenPair);
    prescribe(14);
    EXPECT_TRUE(plan().isOpenPair);
    EXPECT_FALSE(plan().isCapped);
    prescribe(40);
    openPair(13, Side::Left, 0.1);
    EXPECT_FALSE(plan().isOpenPair) << "the last one was thirteen days ago";
}

TEST_F(SidePlanningTest, TheStartingSideOfOpenPairsAlternates)
{
    train(6);
    prescribe(40);
    EXPECT_EQ(plan().first, Side::Right) << "left began last time";
    openPair(14, Side::Right, 0.1);
    EXPECT_EQ(plan().first, Side::Left);
}

TEST_F(SidePlanningTest, TwoOpenPairsUnderFivePercentCloseIt)
{
    train(6);
    prescribe(40);
    openPair(26, Side::Left, 0.6);
    EXPECT_FALSE(has(plan(), SideRule::Closed)) << "one is not two";
    openPair(12, Side::Right, 0.5);
    const SidePlan made = plan();
    EXPECT_TRUE(has(made, SideRule::Closed));
    EXPECT_FALSE(made.isCapped);
    EXPECT_EQ(endOf(made), SideEnd::Closed);
}

TEST_F(SidePlanningTest, AnOpenPairOfTodayHasNotBeenSeenYet)
{
    train(6);
    prescribe(40);
    openPair(14, Side::Left, 0.6);
    openPair(0, Side::Right, 0.6);
    EXPECT_FALSE(has(plan(), SideRule::Closed));
}

TEST_F(SidePlanningTest, TwelveWeeksUnchangedAreTheUsualDifference)
{
    train(13);
    prescribe(84);
    openPair(5, Side::Left, 0.1);
    EXPECT_EQ(endOf(plan()), SideEnd::UsualDifference);
    m_review.isClosing = true;
    EXPECT_FALSE(endOf(plan()));
    m_review.isClosing = false;
    prescribe(83);
    EXPECT_FALSE(endOf(plan()));
}

TEST_F(SidePlanningTest, PainOfEitherSideEndsBoth)
{
    for (const std::size_t side : {0U, 1U}) {
        m_history.sets[0].sets.clear();
        m_history.sets[1].sets.clear();
        train(6);
        m_history.sets[side].sets.back().pain = 3;
        const SidePlan made = plan();
        EXPECT_EQ(made.rules, std::vector{SideRule::PainEnds}) << side;
        EXPECT_EQ(made.leftSets + made.rightSets, 0);
        EXPECT_EQ(endOf(made), SideEnd::Pain);
    }
    m_history.sets[0].sets.clear();
    m_history.sets[1].sets.clear();
    train(6);
    m_history.sets[1].sets.front().pain = 8;
    EXPECT_FALSE(has(plan(), SideRule::PainEnds)) << "six weeks ago, and not since";
}

TEST_F(SidePlanningTest, PlentyInReserveForFourWeeksGivesTheStrongerSideASet)
{
    train(6, 4);
    prescribe(28);
    openPair(7, Side::Left, 0.1);
    EXPECT_EQ(plan().uncapped, Side::Right);
    // It went past three days ago: not again this week.
    m_history.sets[0].sets.push_back(set(kToday - 3, 1, 20, 8, 2));
    m_history.sets[1].sets.push_back(set(kToday - 3, 1, 20, 11, 2));
    EXPECT_FALSE(plan().uncapped);
    m_history.sets[0].sets.clear();
    m_history.sets[1].sets.clear();
    train(6, 3);
    EXPECT_FALSE(plan().uncapped) << "three in reserve are not plenty";
}

TEST_F(SidePlanningTest, TheExtraSetIsAsChosen)
{
    train(6);
    prescribe(5, true);
    EXPECT_EQ(plan().leftSets, 3);
    EXPECT_EQ(plan().rightSets, 2);
}

TEST_F(SidePlanningTest, NothingIsPrescribedForATestOrWhilePaused)
{
    train(6);
    m_review.pause = PainDay{kToday - 3, "Overhead press", "shoulder"};
    EXPECT_EQ(plan().rules, std::vector{SideRule::Paused});
    m_review.pause.reset();
    m_review.measure = {std::nullopt, TestId{1}, "Grip strength"};
    EXPECT_TRUE(has(plan(), SideRule::NeverForThis));
    EXPECT_FALSE(plan().isCapped);
}

TEST_F(SidePlanningTest, OneTwoSidedLiftOfTheKindGivesWay)
{
    train(6);
    m_history.sets.push_back({kBench, Side::Both, {set(kToday - 3, 1, 60, 8, 2)}});
    EXPECT_EQ(plan().twoSidedReplaced, 1);
    m_history.sets.back().sets.front().day = kToday - 8;
    EXPECT_EQ(plan().twoSidedReplaced, 0);
}

TEST_F(SidePlanningTest, NothingKnownGivesNoLoad)
{
    EXPECT_TRUE(has(plan(), SideRule::NoLoad));
    EXPECT_FALSE(sentence(phrases(plan())).empty());
}

} // namespace
} // namespace levelbar::side_planning_test
