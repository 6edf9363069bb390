// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/exercise/effort.h"
#include "core/plan/goal_table.h"
#include "core/strength/rep_curve.h"

#include <gtest/gtest.h>

#include <set>

namespace levelbar::handbook_test {
namespace {

// Sheppard and Triplett in NSCA Essentials of Strength Training and Conditioning, 4th edition,
// 2016, tables 17.9 to 17.12: strength, hypertrophy and power (multiple efforts) by load, reps,
// sets and rest. Cells as seen on a study page; the book itself was not at hand.
TEST(HandbookTest, RowsOfTheAdvancedAreTheStrengthAssociations)
{
    const GoalRow& strength = goalRow(Goal::Strength, Experience::Advanced);
    EXPECT_EQ(strength.percentOfMaximum.low, 85);
    EXPECT_EQ(strength.reps.high, 6);
    EXPECT_EQ(strength.sets, (WholeRange{2, 6}));
    EXPECT_EQ(strength.restSeconds, (WholeRange{120, 300}));
    const GoalRow& size = goalRow(Goal::Hypertrophy, Experience::Advanced);
    EXPECT_EQ(size.percentOfMaximum, (WholeRange{67, 85}));
    EXPECT_EQ(size.reps, (WholeRange{6, 12}));
    EXPECT_EQ(size.sets, (WholeRange{3, 6}));
    EXPECT_EQ(size.restSeconds, (WholeRange{30, 90}));
    const GoalRow& power = goalRow(Goal::Power, Experience::Advanced);
    EXPECT_EQ(power.percentOfMaximum, (WholeRange{75, 85}));
    EXPECT_EQ(power.reps, (WholeRange{3, 5}));
}

// ACSM 2009, Progression models in resistance training, Med Sci Sports Exerc 41:687-708. 8-12
// repetitions for novices: abstract; the other cells from memory.
TEST(HandbookTest, RowsOfNovicesAreTheCollegeOfSportsMedicines)
{
    const GoalRow& strength = goalRow(Goal::Strength, Experience::Novice);
    EXPECT_EQ(strength.reps, (WholeRange{8, 12}));
    EXPECT_EQ(strength.percentOfMaximum, (WholeRange{60, 70}));
    EXPECT_EQ(goalRow(Goal::Hypertrophy, Experience::Novice).percentOfMaximum,
              (WholeRange{70, 85}));
    EXPECT_EQ(goalRow(Goal::Endurance, Experience::Novice).reps, (WholeRange{10, 15}));
}

TEST(HandbookTest, EveryGoalHasOneRowAtEveryLevelWithItsSource)
{
    std::set<std::pair<Goal, Experience>> seen;
    for (const GoalRow& row : goalTable()) {
        EXPECT_TRUE(seen.emplace(row.goal, row.experience).second);
        EXPECT_FALSE(row.source.empty());
        for (const WholeRange& range :
             {row.percentOfMaximum, row.reps, row.sets, row.restSeconds}) {
            EXPECT_LE(range.low, range.high);
        }
        EXPECT_GE(proposedReps(row), row.reps.low);
        EXPECT_LE(proposedReps(row), row.reps.high);
    }
    EXPECT_EQ(seen.size(), 15U);
    EXPECT_EQ(&goalRow(std::nullopt, std::nullopt), &goalRow(Goal::General, Experience::Novice));
}

// Zourdos 2016, J Strength Cond Res 30:267-275: 10 is no rep left, 9 one; the rest from memory.
// The share of 1RM that goes with reps at an RPE is the rep curve at reps plus reserve: worked by
// hand from its formula for 5 at RPE 8 (7 to the end) and 10 at RPE 9 (11 to the end).
TEST(HandbookTest, RpeIsTenLessTheReserveOnTheRepCurve)
{
    const auto share = [](int reps, const char* rpe) {
        return 100.0 * repFraction(reps + parseEffort(rpe, EffortScale::Rpe)->reps());
    };
    EXPECT_NEAR(share(1, "10"), 100.0, 1e-9);
    EXPECT_NEAR(share(5, "8"), 83.8, 0.05);
    EXPECT_NEAR(share(10, "9"), 75.4, 0.05);
}

} // namespace
} // namespace levelbar::handbook_test
