// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/plan/strength_goal.h"

#include <gtest/gtest.h>

#include <cmath>

namespace levelbar::strength_goal_test {
namespace {

const Day kToday{20600};

StrengthGoal goalOf(double kilograms, std::optional<Day> by = std::nullopt)
{
    return {ExerciseId{1}, Side::Both, Mass::ofKilograms(kilograms), by, kToday - 10};
}

// A 1RM of 100 kg, 95 to 105, rising 0.2 to 0.8 % a week.
StrengthReview today()
{
    StrengthReview review;
    review.strength.oneRepMax = {100.0, 95.0, 105.0, kLevel, 12};
    review.trend.call = TrendCall::Rising;
    review.trend.percentPerWeek = Estimate{0.5, 0.2, 0.8, kLevel, 9};
    return review;
}

GoalStanding standing(double kilograms, std::optional<Day> by = std::nullopt)
{
    return goalOutlook(goalOf(kilograms, by), today(), {}, kToday).standing;
}

TEST(StrengthGoalTest, IsReachedWhenTheWholeRangeLiesAboveIt)
{
    EXPECT_EQ(standing(95.0), GoalStanding::Reached);
    EXPECT_EQ(standing(95.1), GoalStanding::There);
    EXPECT_EQ(standing(105.0), GoalStanding::There);
    EXPECT_EQ(standing(105.1), GoalStanding::Open);
}

TEST(StrengthGoalTest, ThePaceNeededIsComparedWithTheRangeOfThePaceSoFar)
{
    // 110 of 100 kg: 100 ln 1.1 = 9.53 % in so many weeks.
    EXPECT_EQ(standing(110.0, kToday + 7 * 60), GoalStanding::OnPace);   // 0.16 a week
    EXPECT_EQ(standing(110.0, kToday + 7 * 20), GoalStanding::Possible); // 0.48
    EXPECT_EQ(standing(110.0, kToday + 7 * 11), GoalStanding::TooFast);  // 0.87
    EXPECT_EQ(standing(110.0, kToday), GoalStanding::Past);
    const GoalOutlook outlook = goalOutlook(goalOf(110.0, kToday + 140), today(), {}, kToday);
    EXPECT_NEAR(outlook.percentToGo, 10.0, 1e-9);
    ASSERT_TRUE(outlook.percentPerWeekNeeded);
    EXPECT_NEAR(*outlook.percentPerWeekNeeded, 100.0 * std::log(1.1) / 20.0, 1e-9);
}

TEST(StrengthGoalTest, WithoutATrendNothingIsSaidOfThePace)
{
    StrengthReview early = today();
    early.trend = {};
    const GoalOutlook outlook = goalOutlook(goalOf(110.0, kToday + 70), early, {}, kToday);
    EXPECT_EQ(outlook.standing, GoalStanding::Open);
    EXPECT_EQ(sentence(phrases(goalOf(110.0, kToday + 70), outlook, early.trend)),
              "Goal 110 kg by " + shortText(kToday + 70) + ": 10 % to go.");
}

TEST(StrengthGoalTest, TheForecastSaysHowLikelyItIsOnTheDay)
{
    const double spread = 0.04;
    const auto point = [&](int days, double value) {
        return BandPoint{kToday + days,
                         value,
                         value * std::exp(-kNormalQuantile * spread),
                         value * std::exp(kNormalQuantile * spread)};
    };
    const std::vector<BandPoint> forecast = {point(0, 100.0), point(14, 104.0)};
    const auto probability = [&](double kilograms, int days) {
        return goalOutlook(goalOf(kilograms, kToday + days), today(), forecast, kToday)
            .probabilityOnTheDay;
    };
    // The centre of the middle day is the geometric mean; one spread above is 15.9 in 100
    // (standard normal table).
    const double middle = std::sqrt(100.0 * 104.0);
    EXPECT_NEAR(probability(middle, 7).value(), 0.5, 1e-4);
    EXPECT_NEAR(probability(middle * std::exp(spread), 7).value(), 0.1587, 1e-3);
    EXPECT_FALSE(probability(110.0, 21)) << "beyond the forecast";
}

TEST(StrengthGoalTest, SaysWhatItTakesAndWhatWasSoFar)
{
    const StrengthGoal goal = goalOf(110.0, kToday + 77);
    const GoalOutlook outlook = goalOutlook(goal, today(), {}, kToday);
    EXPECT_EQ(sentence(phrases(goal, outlook, today().trend)),
              "Goal 110 kg by " + shortText(kToday + 77) +
                  ": 10 % to go. That takes 0.9 % a week; the pace so far is 0.2 to 0.8. Faster "
                  "than so far: a later day or a smaller goal.");
    const StrengthGoal reached = goalOf(90.0);
    EXPECT_EQ(sentence(phrases(reached, goalOutlook(reached, today(), {}, kToday), {})),
              "Goal 90 kg: reached.");
}

TEST(StrengthGoalTest, NoLoadAndADayThatIsOverAreRefused)
{
    EXPECT_EQ(checkGoal(goalOf(0.0)).error().code, FaultCode::OutOfRange);
    EXPECT_EQ(checkGoal(goalOf(80.0, kToday - 10)).error().code, FaultCode::DateOutOfRange);
    EXPECT_TRUE(checkGoal(goalOf(80.0, kToday - 9)));
    EXPECT_TRUE(checkGoal(goalOf(80.0)));
}

} // namespace
} // namespace levelbar::strength_goal_test
