// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/plan/person_plan.h"

#include <gtest/gtest.h>

namespace levelbar::person_plan_test {
namespace {

constexpr ExerciseId kBench{1};
constexpr ExerciseId kOneArm{2};
constexpr ExerciseId kPushUp{3};
const Day kDay{20600};

class PersonPlanTest : public testing::Test {
protected:
    PersonPlanTest()
    {
        Exercise bench;
        bench.id = kBench;
        bench.name = "Bench press";
        bench.implement = Implement::Barbell;
        Exercise oneArm = bench;
        oneArm.id = kOneArm;
        oneArm.name = "Single-arm press";
        oneArm.implement = Implement::Dumbbell;
        oneArm.sidedness = Sidedness::SingleSided;
        Exercise pushUp = bench;
        pushUp.id = kPushUp;
        pushUp.name = "Push-up";
        pushUp.load = LoadKind::None;
        library.exercises = {bench, oneArm, pushUp};
        history.member.id = MemberId{1};
        history.member.code = "M001";
    }

    // Counted, once a week for five weeks, two in reserve unless told otherwise.
    void did(ExerciseId exercise, Side side, double kilograms, int reps, int reserve = 2)
    {
        SetSeries series;
        series.exercise = exercise;
        series.side = side;
        for (int week = 5; week >= 1; --week) {
            PerformedSet set;
            set.day = kDay - 7 * week;
            set.reps = reps;
            set.reserve = Reserve{10 * reserve};
            set.load = Mass::ofKilograms(kilograms);
            series.sets.push_back(set);
        }
        history.sets.push_back(series);
    }

    std::vector<PlannedSet> plan()
    {
        return planFor({history, library, kit, items, kDay, MeetingId{7}, sides});
    }

    Library library;
    Kit kit = assumedKit();
    MemberHistory history;
    std::vector<PlanItem> items{{{kBench, 3, 8}, 1, Reserve{10}, {}, {}}};
    SidePlans sides;
};

TEST_F(PersonPlanTest, EverySetIsAtTheLoadOfThePersonsCardWithItsRepsAndReserve)
{
    did(kBench, Side::Both, 60, 8, 5); // far too easy: more than last time
    const auto target = targetFor(history, library, kit, {kBench, {}, 8, Reserve{10}, kDay});
    ASSERT_TRUE(target && target->progression.load);
    ASSERT_GT(target->progression.load->kilograms(), 60.0);
    const auto sets = plan();
    ASSERT_EQ(sets.size(), 3U);
    for (const PlannedSet& set : sets) {
        EXPECT_EQ(set.load, target->progression.load->load);
        EXPECT_EQ(set.amount, 8);
        EXPECT_EQ(set.reserve, Reserve{10});
        EXPECT_EQ(set.meeting, MeetingId{7});
        EXPECT_EQ(set.member, MemberId{1});
        EXPECT_FALSE(set.isNew);
    }
    EXPECT_EQ(sets.back().number, 3);
}

TEST_F(PersonPlanTest, WhatIsDoneOnTheDayItselfDoesNotChangeThePlan)
{
    did(kBench, Side::Both, 60, 8);
    const auto before = plan();
    PerformedSet today = history.sets.front().sets.back();
    today.day = kDay;
    today.load = Mass::ofKilograms(100);
    history.sets.front().sets.push_back(today);
    EXPECT_EQ(plan(), before);
}

TEST_F(PersonPlanTest, WithoutAnAimTheRepsAreThoseOfTheLastDay)
{
    did(kBench, Side::Both, 60, 11);
    items.front().what.reps.reset();
    EXPECT_EQ(plan().front().amount, 11);
}

TEST_F(PersonPlanTest, NothingKnownHasNoLoadAndSaysSo)
{
    const auto sets = plan();
    ASSERT_EQ(sets.size(), 3U);
    EXPECT_TRUE(sets.front().isNew);
    EXPECT_EQ(sets.front().load.thousandths(), 0);
}

TEST_F(PersonPlanTest, BodyWeightGoesAsLastTime)
{
    did(kPushUp, Side::Both, 0, 17);
    items = {{{kPushUp, 2, std::nullopt}, 1, {}, {}, {}}};
    const auto sets = plan();
    ASSERT_EQ(sets.size(), 2U);
    EXPECT_EQ(sets.front().amount, 17);
    EXPECT_FALSE(sets.front().isNew);
}

TEST_F(PersonPlanTest, AnExerciseThatStandsTwiceCountsItsSetsOn)
{
    did(kBench, Side::Both, 60, 8);
    items.push_back({{kBench, 1, 12}, 2, {}, {}, {}});
    const auto sets = plan();
    ASSERT_EQ(sets.size(), 4U);
    EXPECT_EQ(sets.back().number, 4);
    EXPECT_EQ(sets.back().amount, 12);
    EXPECT_LT(sets.back().load.kilograms(), sets.front().load.kilograms());
}

TEST_F(PersonPlanTest, BothSidesTakeTheWeakerOnesLoad)
{
    did(kOneArm, Side::Left, 16, 8);
    did(kOneArm, Side::Right, 20, 8);
    items = {{{kOneArm, 2, 8}, 1, {}, {}, {}}};
    const auto sets = plan();
    ASSERT_EQ(sets.size(), 4U);
    for (const PlannedSet& set : sets) {
        EXPECT_LE(set.load.kilograms(), 16.0);
        EXPECT_EQ(set.load, sets.front().load);
    }
}

TEST_F(PersonPlanTest, TheSetMoreOfTheWeakerSideIsPlannedForItAlone)
{
    did(kOneArm, Side::Left, 16, 8);
    did(kOneArm, Side::Right, 20, 8);
    items = {{{kOneArm, 2, 8}, 1, {}, {}, {}}};
    SidePlan extra;
    extra.rules = {SideRule::WeakerFirst, SideRule::ExtraSet};
    extra.leftSets = 3;
    extra.rightSets = 2;
    sides[kOneArm] = extra;
    const auto sets = plan();
    ASSERT_EQ(sets.size(), 5U);
    EXPECT_EQ(sets.back().side, Side::Left);
    EXPECT_EQ(sets.back().number, 3);
    EXPECT_EQ(sets.back().load, sets.front().load);
}

TEST_F(PersonPlanTest, ASideThatIsNotTrainedKeepsItsCells)
{
    did(kOneArm, Side::Left, 16, 8);
    items = {{{kOneArm, 2, 8}, 1, {}, {}, {}}};
    sides[kOneArm].rules = {SideRule::SentOn};
    EXPECT_EQ(plan().size(), 4U);
}

// All too heavy: the lightest there is, for as many reps as it allows.
TEST_F(PersonPlanTest, WhoIsTooWeakForTheLightestGetsItForFewerReps)
{
    did(kBench, Side::Both, 20, 4, 1);
    items = {{{kBench, 1, 12}, 1, Reserve{20}, {}, {}}};
    const auto sets = plan();
    ASSERT_EQ(sets.size(), 1U);
    EXPECT_EQ(sets.front().load.kilograms(), 20.0);
    EXPECT_GE(sets.front().amount, 1);
    EXPECT_LT(sets.front().amount, 6);
}

} // namespace
} // namespace levelbar::person_plan_test
