// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/today/due_attention.h"
#include "core/today/due_day.h"
#include "core/today/work_habit.h"
#include "tests/support/sets.h"

#include <gtest/gtest.h>

namespace levelbar::due_attention_test {
namespace {

using tests::day;

const Day kToday = day("2026-11-20");
const ExerciseId kSquat{1};
const TestId kGrip{1};
const TestId kPlank{2};
const TestId kMass{3};

Library library()
{
    Library made;
    Exercise squat;
    squat.id = kSquat;
    squat.name = "Back squat";
    made.exercises = {squat};
    for (const auto& [id, name] : {std::pair(kGrip, "Grip strength"),
                                   std::pair(kPlank, "Plank"),
                                   std::pair(kMass, "Mass")}) {
        TestKind test;
        test.id = id;
        test.name = name;
        test.direction = id == kMass ? Direction::None : Direction::MoreIsBetter;
        made.tests.push_back(test);
    }
    return made;
}

// So many hard sets of the squat on each of the days.
void train(MemberHistory& history, Day on, int sets, Side side = Side::Both)
{
    SetSeries* series = nullptr;
    for (SetSeries& known : history.sets) {
        series = known.side == side ? &known : series;
    }
    if (series == nullptr) {
        history.sets.push_back({kSquat, side, {}});
        series = &history.sets.back();
    }
    for (int number = 1; number <= sets; ++number) {
        series->sets.push_back(tests::set(on, number, 60, 8, 2));
    }
}

// Ten sets a week in each of the eight weeks before the last seven days.
MemberHistory steady()
{
    MemberHistory history;
    for (int week = 8; week >= 1; --week) {
        train(history, kToday - 7 * week, 10);
    }
    return history;
}

TEST(WorkHabitTest, DescribesTheLastSevenDaysBesideTheWeeksBefore)
{
    MemberHistory history = steady();
    train(history, kToday - 6, 4); // the oldest day of the seven
    train(history, kToday, 5);
    train(history, kToday + 1, 50); // not yet
    const auto habit = hardSetHabit(history, kToday);
    ASSERT_TRUE(habit);
    EXPECT_DOUBLE_EQ(habit->lately, 9.0);
    EXPECT_DOUBLE_EQ(habit->usual, 10.0);
    EXPECT_DOUBLE_EQ(habit->most, 10.0);
    EXPECT_EQ(habit->weeks, 8);
    EXPECT_EQ(habit->last, kToday);
    EXPECT_EQ(sentence({hardSetsPhrase(*habit)}), "Hard sets in seven days: 9; usually 10 a week.");
}

TEST(WorkHabitTest, CountsHardSetsOnlyAndTwoSidesAsOneSet)
{
    MemberHistory history = steady();
    train(history, kToday, 3, Side::Left);
    train(history, kToday, 4, Side::Right);
    auto& sets = history.sets.back().sets;
    sets[0].kind = SetKind::Ramp;
    sets[1].reserve = Reserve{50};
    sets[2].reps = 0;
    EXPECT_DOUBLE_EQ(hardSetHabit(history, kToday)->lately, 3.0); // the left side's
    for (PerformedSet& set : history.sets[1].sets) {
        set.kind = SetKind::Ramp;
    }
    EXPECT_DOUBLE_EQ(hardSetHabit(history, kToday)->lately, 1.0); // what is left of the right's
}

TEST(WorkHabitTest, ThreeWeeksMakeNoHabitAndWeeksAwayDoNotLowerIt)
{
    MemberHistory history;
    for (const int week : {8, 5, 3}) {
        train(history, kToday - 7 * week, 10);
    }
    train(history, kToday, 40);
    EXPECT_FALSE(hardSetHabit(history, kToday));
    MemberHistory more;
    for (const int week : {8, 7, 5, 3}) {
        train(more, kToday - 7 * week, 10);
    }
    train(more, kToday, 12);
    EXPECT_DOUBLE_EQ(hardSetHabit(more, kToday)->usual, 10.0);
}

TEST(WorkHabitTest, FarMoreThanUsualIsSaidAndALittleMoreIsNot)
{
    for (const auto& [sets, isSaid] : {std::pair(14, false), std::pair(15, true)}) {
        MemberHistory history = steady();
        train(history, kToday, sets);
        EXPECT_EQ(loadJump(hardSetHabit(history, kToday), {}).has_value(), isSaid) << sets;
    }
    MemberHistory history = steady();
    train(history, kToday - 20, 20); // one such week was there before: 30 sets
    train(history, kToday, 29);
    EXPECT_FALSE(loadJump(hardSetHabit(history, kToday), {}));
}

TEST(WorkHabitTest, TwiceAlmostNothingIsNoJump)
{
    MemberHistory history;
    for (int week = 8; week >= 1; --week) {
        train(history, kToday - 7 * week, 2);
    }
    train(history, kToday, 6);
    EXPECT_FALSE(loadJump(hardSetHabit(history, kToday), {}));
}

TEST(WorkHabitTest, SaysWhatItIsInNumbersAndClaimsNothing)
{
    MemberHistory history = steady();
    train(history, kToday, 22);
    EXPECT_EQ(sentence(*loadJump(hardSetHabit(history, kToday), {})),
              "Hard sets in seven days: 22; usually 10 a week, at most 10 in eight weeks.");
}

TEST(WorkHabitTest, SessionLoadIsRatingTimesMinutes)
{
    std::vector<RatedSession> sessions;
    for (int week = 6; week >= 1; --week) {
        sessions.push_back({kToday - 7 * week, 5, 60});
    }
    sessions.push_back({kToday, 8, 60});
    const auto habit = sessionLoadHabit(sessions, kToday);
    ASSERT_TRUE(habit);
    EXPECT_DOUBLE_EQ(habit->lately, 480.0);
    EXPECT_DOUBLE_EQ(habit->usual, 300.0);
    EXPECT_EQ(sentence({sessionLoadPhrase(*habit)}),
              "Session load (rating times minutes) in seven days: 480; usually 300 a week.");
    EXPECT_EQ(sentence(*loadJump({}, habit)),
              "Session rating times minutes in seven days: 480; usually 300 a week, at most 300 in "
              "eight weeks.");
}

MemberHistory tested(std::initializer_list<std::pair<TestId, int>> daysAgo)
{
    MemberHistory history;
    train(history, kToday - 3, 3);
    for (const auto& [test, ago] : daysAgo) {
        Trial trial;
        trial.test = test;
        trial.day = kToday - ago;
        history.trials.push_back({test, Side::Both, {trial}});
    }
    return history;
}

TEST(RetestTest, IsDueTwelveWeeksAfterTheLastTrial)
{
    EXPECT_FALSE(retestDue(tested({{kGrip, 83}}), library(), kToday));
    const auto due = retestDue(tested({{kGrip, 90}}), library(), kToday);
    ASSERT_TRUE(due);
    EXPECT_EQ(sentence(*due), "Grip strength: due for a retest since 14 Nov.");
    EXPECT_EQ(due->evidence.day, kToday - 90);
    EXPECT_FALSE(retestDue(tested({{kGrip, 90}, {kGrip, 10}}), library(), kToday)); // done since
}

TEST(RetestTest, NamesTheLongestDueAndHowManyMore)
{
    const auto due = retestDue(tested({{kGrip, 90}, {kPlank, 100}}), library(), kToday);
    EXPECT_EQ(sentence(*due), "Plank and 1 more: due for a retest since 4 Nov.");
}

TEST(RetestTest, IsNotAskedOfPeopleAwayNorForWhatWasGivenUpOrHasNoBetter)
{
    EXPECT_FALSE(retestDue(tested({{kGrip, 364}}), library(), kToday));
    EXPECT_FALSE(retestDue(tested({{kMass, 90}}), library(), kToday));
    MemberHistory away = tested({{kGrip, 90}});
    away.sets.front().sets.front().day = kToday - 29;
    away.sets.front().sets.resize(1);
    EXPECT_FALSE(retestDue(away, library(), kToday));
    Library withMaximum = library();
    withMaximum.tests[0].maximumOf = kSquat;
    EXPECT_FALSE(retestDue(tested({{kGrip, 90}}), withMaximum, kToday));
}

TEST(ClearanceTest, IsAskedForFromTwoWeeksBefore)
{
    EXPECT_FALSE(clearanceDue({}, kToday, kToday));
    EXPECT_FALSE(clearanceDue(kToday + 15, kToday, kToday));
    EXPECT_EQ(sentence(*clearanceDue(kToday + 14, {}, kToday)), "Clearance ends on 4 Dec.");
    EXPECT_EQ(sentence(*clearanceDue(kToday, kToday, kToday)), "Clearance ends on 20 Nov.");
    EXPECT_EQ(sentence(*clearanceDue(kToday - 1, kToday, kToday)), "Clearance ended on 19 Nov.");
    EXPECT_FALSE(clearanceDue(kToday - 1, kToday - 85, kToday));
}

AnsweredPlan answered(int daysAgo, int planned, int reps)
{
    AnsweredPlan made;
    made.planned.exercise = kSquat;
    made.planned.load = Mass::ofKilograms(60);
    made.planned.amount = planned;
    made.done = tests::set(kToday - daysAgo, 1, 60, reps);
    return made;
}

TEST(TargetMissedTest, NeedsTheLastTwoDaysOfTheExercise)
{
    const auto missed = [](std::vector<AnsweredPlan> pairs) {
        return targetMissed(pairs, library(), kToday);
    };
    EXPECT_FALSE(missed({answered(3, 8, 7)}));
    EXPECT_FALSE(missed({answered(10, 8, 7), answered(3, 8, 8)}));
    EXPECT_FALSE(missed({answered(17, 8, 7), answered(10, 8, 8), answered(3, 8, 7)}));
    const auto twice = missed({answered(10, 8, 7), answered(3, 8, 8), answered(3, 8, 6)});
    ASSERT_TRUE(twice);
    EXPECT_EQ(sentence(*twice), "Back squat: fewer reps than planned on 10 Nov and 17 Nov.");
    EXPECT_FALSE(missed({answered(39, 8, 7), answered(29, 8, 7)})); // too long ago
}

TEST(TargetMissedTest, AKeyAnotherReasonOrALoadRaisedIsNoMiss)
{
    const auto isMissedWith = [](const auto& change) {
        std::vector<AnsweredPlan> pairs = {answered(10, 8, 7), answered(3, 8, 7)};
        change(pairs[1]);
        return targetMissed(pairs, library(), kToday).has_value();
    };
    EXPECT_TRUE(isMissedWith([](AnsweredPlan&) {}));
    EXPECT_FALSE(isMissedWith([](AnsweredPlan& p) { p.done.known = HowKnown::Group; }));
    EXPECT_FALSE(isMissedWith([](AnsweredPlan& p) { p.done.stopped = StopReason::Pain; }));
    EXPECT_FALSE(isMissedWith([](AnsweredPlan& p) { p.done.stopped = StopReason::Capped; }));
    EXPECT_FALSE(isMissedWith([](AnsweredPlan& p) { p.done.load = Mass::ofKilograms(65); }));
    EXPECT_TRUE(isMissedWith([](AnsweredPlan& p) { p.done.load = Mass::ofKilograms(50); }));
}

TEST(DueDayTest, TakesADateOrDaysFromToday)
{
    EXPECT_EQ(parseDueDay("14", kToday), kToday + 14);
    EXPECT_EQ(parseDueDay("2026-12-04", kToday), kToday + 14);
    for (const char* text : {"", "0", "367", "2026-11-20", "2026-11-31", "2028-01-01", "soon"}) {
        EXPECT_FALSE(parseDueDay(text, kToday)) << text;
    }
}

} // namespace
} // namespace levelbar::due_attention_test
