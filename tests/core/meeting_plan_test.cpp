// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/plan/meeting_plan.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace levelbar::meeting_plan_test {
namespace {

constexpr ExerciseId kBench{1};
constexpr ExerciseId kPress{2};
const Day kDay{20600};

Exercise lift(ExerciseId id, const char* key, Implement implement)
{
    Exercise made;
    made.id = id;
    made.key = key;
    made.name = key;
    made.pattern = Pattern::HorizontalPress;
    made.implement = implement;
    return made;
}

// Somebody who did eight reps of it once a week for a month.
MemberHistory someone(int id, ExerciseId exercise, double kilograms)
{
    MemberHistory history;
    history.member.id = MemberId{id};
    SetSeries series;
    series.exercise = exercise;
    for (int week = 4; week >= 1; --week) {
        PerformedSet set;
        set.day = kDay - 7 * week;
        set.reps = 8;
        set.reserve = Reserve{20};
        set.load = Mass::ofKilograms(kilograms);
        series.sets.push_back(set);
    }
    history.sets.push_back(series);
    return history;
}

class MeetingPlanTest : public testing::Test {
protected:
    MeetingPlanTest()
    {
        library.exercises = {lift(kBench, "bench", Implement::Barbell),
                             lift(kPress, "press", Implement::Dumbbell)};
        question.library = &library;
        question.kit = &kit;
        question.on = kDay;
        question.racks = 2;
    }

    MeetingPlanAnswer plan()
    {
        question.people = people;
        question.items = items;
        question.blocks = blocks;
        return planMeeting(question);
    }

    Library library;
    Kit kit = assumedKit();
    std::vector<MemberHistory> people;
    std::vector<PlanItem> items{{{kBench, 3, 8}, 1, {}, {}, {}}};
    std::vector<PlanBlock> blocks{{1, 30, 1}};
    MeetingPlanQuestion question;
};

TEST_F(MeetingPlanTest, AimsAreThoseOfThePersonsOwnPage)
{
    people = {someone(1, kBench, 60), someone(2, kBench, 40)};
    const MeetingPlanAnswer answer = plan();
    ASSERT_EQ(answer.targets.size(), 2U);
    const auto alone = targetFor(people[1], library, kit, {kBench, {}, 8, Reserve{20}, kDay});
    ASSERT_TRUE(alone && answer.targets[1].target);
    EXPECT_EQ(answer.targets[1].target->progression.load->load, alone->progression.load->load);
    EXPECT_EQ(answer.targets[1].target->load.value, alone->load.value);
}

// One fit of a person serves all exercises of the plan, those never done among them.
TEST_F(MeetingPlanTest, AimsOfSeveralExercisesAreThoseOfEachAskedAlone)
{
    Exercise related = lift(ExerciseId{3}, "incline", Implement::Barbell);
    related.baseExerciseKey = "bench";
    related.ratioToBase = 0.8;
    library.exercises.push_back(related);
    people = {someone(1, kBench, 60), someone(2, kPress, 20)};
    people[0].sets.push_back(someone(1, kPress, 22).sets.front());
    items.push_back({{kPress, 3, 10}, 1, {}, {}, {}});
    items.push_back({{ExerciseId{3}, 3, 6}, 1, {}, {}, {}});
    const MeetingPlanAnswer answer = plan();
    ASSERT_EQ(answer.targets.size(), 6U);
    for (const PlannedTarget& planned : answer.targets) {
        const PlanItem& item = items[planned.item];
        const auto person = static_cast<std::size_t>(planned.member.value - 1);
        const auto alone = targetFor(people[person],
                                     library,
                                     kit,
                                     {item.what.exercise, {}, *item.what.reps, Reserve{20}, kDay});
        ASSERT_EQ(planned.target.has_value(), alone.has_value());
        if (alone) {
            EXPECT_EQ(planned.target->load.value, alone->load.value);
            EXPECT_EQ(planned.target->load.low, alone->load.low);
            EXPECT_EQ(planned.target->aimKilograms, alone->aimKilograms);
            EXPECT_EQ(planned.target->caution, alone->caution);
            EXPECT_EQ(planned.load()->load, alone->progression.load->load);
        }
    }
    EXPECT_EQ(answer.targets[4].target->caution, Caution::NeverDone);
    EXPECT_FALSE(answer.targets[5].target); // no way leads from the dumbbells
}

TEST_F(MeetingPlanTest, EverybodyWithALoadHasOnePlaceAtARack)
{
    for (int id = 1; id <= 5; ++id) {
        people.push_back(someone(id, kBench, 30 + 10 * id));
    }
    MemberHistory newcomer;
    newcomer.member.id = MemberId{9};
    people.push_back(newcomer);
    const MeetingPlanAnswer answer = plan();
    ASSERT_EQ(answer.blocks.size(), 1U);
    ASSERT_EQ(answer.blocks[0].rounds.size(), 1U);
    std::vector<MemberId> placed;
    for (const RackPlace& place : answer.blocks[0].rounds[0].places) {
        EXPECT_TRUE(place.rack == 1 || place.rack == 2);
        placed.push_back(place.member);
    }
    std::sort(placed.begin(), placed.end());
    EXPECT_EQ(placed, (std::vector<MemberId>{{1}, {2}, {3}, {4}, {5}}));
}

TEST_F(MeetingPlanTest, ABlockThatIsTooShortSaysWhatToDrop)
{
    for (int id = 1; id <= 6; ++id) {
        people.push_back(someone(id, kBench, 30 + 10 * id));
    }
    EXPECT_TRUE(plan().blocks[0].minutes.fits);
    blocks[0].minutes = 8;
    const BlockPlan tight = plan().blocks[0];
    EXPECT_FALSE(tight.minutes.fits);
    EXPECT_GT(tight.minutes.minutes, 8.0);
    EXPECT_FALSE(tight.minutes.savings.empty());
}

TEST_F(MeetingPlanTest, HalvesTakeTurnsAtTheRacksAndEachHoldsHalfOfThePeople)
{
    for (int id = 1; id <= 6; ++id) {
        people.push_back(someone(id, kBench, 30 + 10 * id));
    }
    blocks[0].halves = 2;
    const BlockPlan block = plan().blocks[0];
    ASSERT_EQ(block.rounds.size(), 2U);
    EXPECT_EQ(block.rounds[0].places.size(), 3U);
    EXPECT_EQ(block.rounds[1].places.size(), 3U);
    EXPECT_EQ(block.minutes.roundSeconds.size(), 2U);
}

TEST_F(MeetingPlanTest, OnePairForThreePeopleIsAClashWithAWayOut)
{
    kit.isAssumed = false;
    kit.handWeights = {{Implement::Dumbbell, Mass::ofKilograms(8), 2},
                       {Implement::Dumbbell, Mass::ofKilograms(10), 2}};
    items = {{{kPress, 3, 8}, 1, {}, {}, {}}};
    for (int id = 1; id <= 3; ++id) {
        people.push_back(someone(id, kPress, 10));
    }
    const MeetingPlanAnswer answer = plan();
    ASSERT_FALSE(answer.clashes.empty());
    EXPECT_EQ(answer.clashes[0].wants.size(), 3U);
    EXPECT_EQ(answer.clashes[0].owned, 2);
    EXPECT_FALSE(fixesFor(answer.clashes[0], answer.wants, answer.book).empty());
}

TEST(ClassWeekTest, ALighterWeekHalvesTheSetsAndLeavesMoreInReserve)
{
    const std::vector<PlanItem> usual{{{kBench, 3, 8}, 1, Reserve{10}, {}, {}},
                                      {{kPress, 4, {}}, 1, {}, {}, {}}};
    const Day monday{20598};
    const std::vector<ClassWeek> weeks{{monday, WeekKind::Lighter, "", {}}};
    const auto items = itemsIn(monday + 3, usual, weeks);
    EXPECT_EQ(items[0].what.sets, 2);
    EXPECT_EQ(items[0].reserve, Reserve{30});
    EXPECT_EQ(items[1].what.sets, 2);
    EXPECT_EQ(items[1].reserve, Reserve{40});
    EXPECT_EQ(itemsIn(monday + 7, usual, weeks), usual) << "the week after";
}

TEST(ClassWeekTest, NamesWhatWasAddedChangedAndRemoved)
{
    const PlanItem bench{{kBench, 3, 8}, 1, {}, {}, {}};
    const PlanItem press{{kPress, 3, 8}, 1, {}, {}, {}};
    PlanItem more = bench;
    more.what.sets = 4;
    const auto changes = changesBetween(std::vector{bench, press}, std::vector{more, bench});
    ASSERT_EQ(changes.size(), 3U);
    EXPECT_EQ(changes[0], (ItemChange{ItemNews::Changed, kBench, bench, more}));
    EXPECT_EQ(changes[1], (ItemChange{ItemNews::Added, kBench, {}, bench}));
    EXPECT_EQ(changes[2], (ItemChange{ItemNews::Removed, kPress, press, {}}));
}

} // namespace
} // namespace levelbar::meeting_plan_test
