// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/plan/target.h"
#include "core/plan/target_words.h"
#include "core/strength/rep_curve.h"
#include "tests/support/sets.h"

#include <gtest/gtest.h>

#include <cmath>

namespace levelbar::target_test {
namespace {

using tests::day;
using tests::set;

const Day kToday = day("2026-06-30");
constexpr ExerciseId kBench{1};
constexpr ExerciseId kDumbbell{2};
constexpr ExerciseId kSingleArm{3};
constexpr ExerciseId kPushUp{4};

Exercise
exercise(ExerciseId id, std::string key, Implement implement, Sidedness sidedness, LoadKind load)
{
    Exercise made;
    made.id = id;
    made.name = key;
    made.key = std::move(key);
    made.pattern = Pattern::HorizontalPress;
    made.implement = implement;
    made.sidedness = sidedness;
    made.load = load;
    return made;
}

Library library()
{
    const auto two = Sidedness::TwoSided;
    Library made;
    made.exercises = {exercise(kBench, "bench", Implement::Barbell, two, LoadKind::External),
                      exercise(kDumbbell, "dumbbell", Implement::Dumbbell, two, LoadKind::External),
                      exercise(kSingleArm,
                               "single-arm",
                               Implement::Dumbbell,
                               Sidedness::SingleSided,
                               LoadKind::External),
                      exercise(kPushUp, "push-up", Implement::BodyWeight, two, LoadKind::Added)};
    made.exercises[1].baseExerciseKey = "bench";
    made.exercises[1].ratioToBase = 0.43;
    made.exercises[1].ratioSpreadPercent = 8.0;
    made.exercises[2].baseExerciseKey = "dumbbell";
    made.exercises[2].ratioToBase = 0.95;
    made.exercises[2].ratioSpreadPercent = 7.0;
    return made;
}

// Two sessions a week of three sets of 8 with 2 in reserve, the last two days before kToday.
std::vector<PerformedSet> steady(double kilograms, int sessions = 16, int reps = 8, int reserve = 2)
{
    std::vector<PerformedSet> sets;
    for (int session = sessions - 1; session >= 0; --session) {
        for (int number = 1; number <= 3; ++number) {
            sets.push_back(set(kToday - 2 - 7 * session / 2, number, kilograms, reps, reserve));
        }
    }
    return sets;
}

MemberHistory historyOf(ExerciseId exercise, std::vector<PerformedSet> sets, Side side = Side::Both)
{
    MemberHistory history;
    history.member.code = "M001";
    history.member.experience = Experience::Intermediate;
    history.sets.push_back({exercise, side, std::move(sets)});
    return history;
}

Target targetOf(const MemberHistory& history, ExerciseId exercise = kBench, int reps = 8)
{
    TargetQuestion question;
    question.exercise = exercise;
    question.reps = reps;
    question.on = kToday;
    return targetFor(history, library(), assumedKit(), question).value();
}

Fault faultOf(const MemberHistory& history, const TargetQuestion& question)
{
    const auto target = targetFor(history, library(), assumedKit(), question);
    return target ? Fault{} : target.error();
}

TEST(TargetTest, SomeoneWhoAlwaysDoesEightWithTwoLeftIsToldTheirOwnLoad)
{
    const Target target = targetOf(historyOf(kBench, steady(60)));
    EXPECT_NEAR(target.load.value, 60.0, 1.5);
    EXPECT_LT(target.load.low, 60.0);
    EXPECT_GT(target.load.high, 60.0);
    ASSERT_TRUE(target.progression.load);
    EXPECT_LE(target.progression.load->kilograms(), 1.01 * target.load.value);
    EXPECT_EQ(target.progression.decision, LoadDecision::Hold);
    EXPECT_EQ(target.caution, Caution::None);
}

TEST(TargetTest, MoreRepsOrMoreReserveAskForLess)
{
    const MemberHistory history = historyOf(kBench, steady(60));
    double before = 1e9;
    for (const int reps : {1, 3, 5, 8, 10, 12, 15, 20}) {
        const Target target = targetOf(history, kBench, reps);
        EXPECT_LT(target.load.value, before);
        before = target.load.value;
    }
}

TEST(TargetTest, ALoadOfOneRepToTheEndIsTheMaximum)
{
    TargetQuestion question;
    question.exercise = kBench;
    question.reps = 1;
    question.reserve = Reserve{0};
    question.on = kToday;
    const Target target =
        targetFor(historyOf(kBench, steady(60)), library(), assumedKit(), question).value();
    EXPECT_NEAR(target.percentOfMaximum, 100.0, 1e-9);
    EXPECT_NEAR(target.load.value, target.strength.oneRepMax.value, 1e-9);
    EXPECT_FALSE(cautionPhrases(target).empty()); // heavy: the caution stands beside it
}

TEST(TargetTest, TheProposedLoadExistsAndItsPlatesAddUp)
{
    const Target target = targetOf(historyOf(kBench, steady(61)));
    ASSERT_TRUE(target.progression.load);
    double sum = 20.0;
    for (const Mass& plate : target.progression.load->eachSide) {
        sum += 2.0 * plate.kilograms();
    }
    EXPECT_DOUBLE_EQ(sum, target.progression.load->kilograms());
}

TEST(TargetTest, TheRampRisesThroughLoadsThatExistAndEndsUnderTheWork)
{
    const Target target = targetOf(historyOf(kBench, steady(100)), kBench, 3);
    ASSERT_GE(target.ramp.size(), 3U);
    for (std::size_t i = 1; i < target.ramp.size(); ++i) {
        EXPECT_GT(target.ramp[i].load.exact, target.ramp[i - 1].load.exact);
        EXPECT_LE(target.ramp[i].reps, target.ramp[i - 1].reps);
    }
    EXPECT_LT(target.ramp.back().load.exact, target.progression.load->exact);
}

TEST(TargetTest, ALiftNeverDoneIsGuessedFromARelatedOneAndWide)
{
    const MemberHistory history = historyOf(kBench, steady(60));
    const Target known = targetOf(history, kBench);
    const Target guessed = targetOf(history, kSingleArm); // over the dumbbell press: 0.95 * 0.43
    EXPECT_EQ(guessed.caution, Caution::NeverDone);
    EXPECT_NEAR(guessed.load.value / known.load.value, 0.95 * 0.43, 0.02);
    EXPECT_GT(std::log(guessed.load.high / guessed.load.low),
              std::log(known.load.high / known.load.low) + 0.2);
    EXPECT_LT(guessed.aimKilograms, guessed.load.value);
    EXPECT_EQ(guessed.progression.rule, ProgressionRule::NothingBefore);
}

TEST(TargetTest, RelationsAreUsedUpwardsToo)
{
    const MemberHistory history = historyOf(kSingleArm, steady(20), Side::Left);
    const Target guessed = targetOf(history, kBench);
    EXPECT_EQ(guessed.caution, Caution::NeverDone);
    EXPECT_NEAR(guessed.load.value, 20.0 / (0.95 * 0.43), 3.0);
}

TEST(TargetTest, OneSideAtATimeGoesByTheWeakerSide)
{
    MemberHistory history = historyOf(kSingleArm, steady(18), Side::Left);
    history.sets.push_back({kSingleArm, Side::Right, steady(20)});
    const Target target = targetOf(history, kSingleArm);
    EXPECT_EQ(target.side, Side::Left);
    EXPECT_LT(target.load.value, 19.5);
}

TEST(TargetTest, WhatCannotBeAimedAtIsSaid)
{
    TargetQuestion question;
    question.on = kToday;
    question.exercise = kPushUp;
    const MemberHistory history = historyOf(kBench, steady(60));
    EXPECT_EQ(faultOf(history, question).code, FaultCode::NotByLoad);
    question.exercise = kBench;
    question.side = Side::Left;
    EXPECT_EQ(faultOf(history, question).code, FaultCode::WrongSide);
    question.side.reset();
    question.reps = 31;
    EXPECT_EQ(faultOf(history, question).code, FaultCode::NotAWholeNumber);
    question.reps = 8;
    question.on = kToday - 400; // before the first set
    EXPECT_EQ(faultOf(history, question).code, FaultCode::NothingKnown);
}

TEST(TargetTest, NothingLightEnoughIsSaidWithWhatTheLightestAllows)
{
    const MemberHistory history = historyOf(kSingleArm, steady(5), Side::Left);
    const Target target = targetOf(history, kBench); // a bar weighs 20 kg
    EXPECT_FALSE(target.progression.load);
    ASSERT_TRUE(target.lightest);
    EXPECT_DOUBLE_EQ(target.lightest->kilograms(), 20.0);
    EXPECT_NE(sentence(headline(target)).find("Nothing light enough"), std::string::npos);
}

TEST(TargetTest, KeyedSetsAloneNeverRaise)
{
    auto sets = steady(60);
    for (PerformedSet& one : sets) {
        one.known = HowKnown::Accepted;
        one.reserve.reset();
    }
    const Target target = targetOf(historyOf(kBench, sets));
    EXPECT_NE(target.progression.decision, LoadDecision::Raise);
    EXPECT_LE(target.progression.load->kilograms(), 60.0);
}

TEST(TargetTest, TheLastDaySaysWhatItMoved)
{
    auto sets = steady(60);
    sets.push_back(set(kToday - 1, 1, 60, 12, 2)); // two more than ever
    const Target target = targetOf(historyOf(kBench, sets));
    ASSERT_TRUE(target.lastMove);
    EXPECT_EQ(target.lastMove->day, kToday - 1);
    EXPECT_EQ(target.lastMove->sets, 1);
    EXPECT_GT(target.lastMove->percent, 0.2);
    EXPECT_NEAR(target.lastMove->expectedReps, 10.0, 1.0);
    EXPECT_DOUBLE_EQ(target.lastMove->reps, 14.0);
}

TEST(TargetTest, TheFirstDayRestsOnItself)
{
    const Target target = targetOf(historyOf(kBench, steady(60, 1)));
    ASSERT_TRUE(target.lastMove);
    EXPECT_TRUE(target.lastMove->isFirst);
    EXPECT_EQ(target.caution, Caution::New);
}

TEST(EffortTest, TheRpeScaleIsTenLessTheReserve)
{
    // Zourdos 2016 (J Strength Cond Res 30:267): 10 is none left, 9 one, 8 two; halves between.
    EXPECT_EQ(parseEffort("8", EffortScale::Rpe).value(), Reserve{20});
    EXPECT_EQ(parseEffort("9.5", EffortScale::Rpe).value(), Reserve{5});
    EXPECT_EQ(parseEffort("10", EffortScale::Rpe).value(), Reserve{0});
    EXPECT_FALSE(parseEffort("4", EffortScale::Rpe).has_value());
    EXPECT_FALSE(parseEffort("8.3", EffortScale::Rpe).has_value());
    EXPECT_EQ(parseEffort("2", EffortScale::Reserve).value(), Reserve{20});
    EXPECT_EQ(sentence({effortPhrase(Reserve{15}, EffortScale::Rpe)}), "at RPE 8.5");
    EXPECT_EQ(sentence({effortPhrase(Reserve{20}, EffortScale::Reserve)}), "with 2 in reserve");
}

} // namespace
} // namespace levelbar::target_test
