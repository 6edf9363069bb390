// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/floor/round_minutes.h"
#include "core/floor/turn_seconds.h"
#include "tests/support/random.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace levelbar::round_minutes_test {
namespace {

SharedRack rack(std::size_t people, int plateMoves = 0, int hookMoves = 0)
{
    return {std::vector<RackTurn>(people), plateMoves, hookMoves};
}

// 40 s of work and 20 s to hand over.
RoundPace evenPace()
{
    RoundPace pace;
    pace.work = 40.0;
    pace.handOver = 20.0;
    return pace;
}

TEST(RoundMinutesTest, SixTurnsOfFortyAndTwentySecondsAreSixMinutes)
{
    // Arithmetic of a circuit: stations × (work + change), common practice, no source.
    EXPECT_DOUBLE_EQ(roundSeconds(rack(6), evenPace()), 360.0);
}

TEST(RoundMinutesTest, PlatesAndHooksTakeTheirTime)
{
    const RoundPace pace = evenPace();
    EXPECT_DOUBLE_EQ(roundSeconds(rack(3, 8, 4), pace),
                     180.0 + 8 * pace.plateMove + 4 * pace.hookMove);
}

TEST(RoundMinutesTest, WhoLiftsAloneStillRests)
{
    RoundPace pace = evenPace();
    pace.rest = 120.0;
    EXPECT_DOUBLE_EQ(roundSeconds(rack(1), pace), 160.0);
    EXPECT_DOUBLE_EQ(roundSeconds(rack(0), pace), 0.0);
}

TEST(RoundMinutesTest, APublishedOrderOfARackIsPricedByItsMoves)
{
    RackSharingTask task;
    task.plates = commonPlates();
    for (const double load : {40.0, 42.5, 60.0}) {
        task.lifters.push_back({std::to_string(load), Mass::ofKilograms(load), 5});
    }
    const SharedRack shared = shareRacks(task).value().racks.front();
    EXPECT_GT(shared.plateMoves, 0);
    EXPECT_DOUBLE_EQ(roundSeconds(shared, evenPace()), 180.0 + 4.0 * shared.plateMoves);
}

TEST(RoundMinutesTest, HalvesThatSwapTakeTwiceTheRoundsAndTheSwap)
{
    BlockTask task;
    task.pace = evenPace();
    task.pace.swap = 60.0;
    task.rounds = 3;
    task.halves = {{rack(3), rack(2)}, {rack(2), rack(2)}};
    const BlockMinutes minutes = minutesOf(task);
    EXPECT_DOUBLE_EQ(minutes.minutes, 3 * 3.0 + 3 * 2.0 + 1.0);
    EXPECT_TRUE(minutes.fits);
    EXPECT_TRUE(minutes.savings.empty());
}

TEST(RoundMinutesTest, WhatMakesItFitIsSaidAndFits)
{
    BlockTask task;
    task.pace = evenPace();
    task.halves = {{rack(4, 8, 8), rack(3)}};
    task.rounds = 4;
    task.minutes = 19.0; // 4 × (240 + 32 + 144) s are 27.7 min
    const BlockMinutes minutes = minutesOf(task);
    EXPECT_FALSE(minutes.fits);
    ASSERT_EQ(minutes.savings.size(), 2U);
    EXPECT_EQ(minutes.savings[0].cut, BlockCut::SameHooks);
    EXPECT_NEAR(minutes.savings[0].minutes, 4 * 272.0 / 60.0, 1e-9);
    EXPECT_EQ(minutes.savings[1].cut, BlockCut::FewerRounds);
    EXPECT_EQ(minutes.savings[1].value, 2);
    for (const BlockSaving& saving : minutes.savings) {
        EXPECT_LE(saving.minutes, task.minutes);
    }
}

TEST(RoundMinutesTest, WhereNothingAloneIsEnoughTheLargestSavingComesFirst)
{
    BlockTask task;
    task.pace = evenPace();
    task.halves = {{rack(6, 0, 4)}};
    task.rounds = 3;
    task.minutes = 3.0;
    const BlockMinutes minutes = minutesOf(task);
    ASSERT_GE(minutes.savings.size(), 2U);
    EXPECT_EQ(minutes.savings.front().cut, BlockCut::FewerRounds);
    EXPECT_EQ(minutes.savings.front().value, 1);
    EXPECT_TRUE(std::is_sorted(minutes.savings.begin(),
                               minutes.savings.end(),
                               [](const auto& a, const auto& b) { return a.minutes < b.minutes; }));
}

// ---- learning ----

std::vector<KeyedTurn> turnsOf(tests::Random& random, double seconds, double spread, int count)
{
    std::vector<KeyedTurn> turns;
    double at = 0.0;
    for (int place = 0; place < count; ++place) {
        turns.push_back({1, place, Moment{static_cast<std::int64_t>(at * 1000.0)}});
        at += seconds * std::exp(random.normal(0.0, spread));
    }
    return turns;
}

TEST(TurnSecondsTest, StartsFromThePrior)
{
    const Estimate before = secondsOfTurn({});
    EXPECT_DOUBLE_EQ(before.value, kPriorTurnSeconds);
    EXPECT_EQ(before.count, 0);
    EXPECT_NEAR(before.high / before.value, std::pow(1.5, 1.6449), 1e-3);
}

TEST(TurnSecondsTest, LearnsFromWhenSetsWereKeyed)
{
    tests::Random random(1);
    const Estimate learnt = secondsOfTurn(turnsOf(random, 60.0, 0.25, 80));
    EXPECT_NEAR(learnt.value, 60.0, 4.0);
    EXPECT_EQ(learnt.count, 79);
    EXPECT_LT(learnt.high / learnt.low, 1.2);
}

TEST(TurnSecondsTest, PausesAndWhatWasKeyedAfterwardsDoNotMoveIt)
{
    tests::Random random(2);
    auto turns = turnsOf(random, 60.0, 0.2, 60);
    const double before = secondsOfTurn(turns).value;
    for (std::size_t i = 30; i < turns.size(); ++i) {
        turns[i].at.milliseconds += 30 * 60'000; // a talk of half an hour
    }
    turns.push_back({2, 0, Moment{5'000'000}});
    turns.push_back({2, 1, Moment{5'001'000}}); // two in a second
    EXPECT_NEAR(secondsOfTurn(turns).value, before, 1.0);
}

TEST(TurnSecondsTest, AGapOverSkippedTurnsCountsAsThatMany)
{
    tests::Random random(3);
    auto turns = turnsOf(random, 60.0, 0.1, 90);
    std::vector<KeyedTurn> third;
    for (std::size_t i = 0; i < turns.size(); i += 3) {
        third.push_back(turns[i]);
    }
    EXPECT_NEAR(secondsOfTurn(third).value, 60.0, 3.0);
}

TEST(TurnSecondsTest, TheIntervalHoldsTheTruthAboutNineTimesInTen)
{
    tests::Random random(4);
    int held = 0;
    constexpr int kTrials = 400;
    for (int trial = 0; trial < kTrials; ++trial) {
        const double truth = kPriorTurnSeconds * std::exp(random.normal(0.0, std::log(1.5)));
        const Estimate learnt = secondsOfTurn(turnsOf(random, truth, 0.3, 12));
        held += learnt.low <= truth && truth <= learnt.high ? 1 : 0;
    }
    EXPECT_GT(held, kTrials * 85 / 100);
    EXPECT_LT(held, kTrials * 98 / 100);
}

} // namespace
} // namespace levelbar::round_minutes_test
