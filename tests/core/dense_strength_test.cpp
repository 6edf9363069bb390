// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later

#include "core/strength/member_strength.h"
#include "tests/support/dense_strength.h"
#include "tests/support/leg_data.h"
#include "tests/support/sets.h"

#include <gtest/gtest.h>

#include <cmath>

// The filter and smoother against one dense system of equations for the same tests. Both linearise
// at the same points, so they must agree but for rounding: 2e-11 was seen.
namespace levelbar::dense_strength_test {
namespace {

using tests::DenseStrength;
using tests::DenseTest;
using Tests = std::vector<DenseTest>;

constexpr double kRounding = 1e-9; // of the value

// The filter's answer; dates are counted from a Monday.
std::vector<std::optional<ExerciseFit>> filtered(const std::vector<Tests>& exercises, double today)
{
    const Day start = tests::day("2026-01-05");
    const auto on = [start](double week) {
        return start + static_cast<int>(std::lround(7.0 * week));
    };
    std::vector<std::vector<TestedMaximum>> maxima;
    for (const Tests& all : exercises) {
        for (const double side : {0.0, -0.5, 0.5}) {
            maxima.emplace_back();
            for (const DenseTest& test : all) {
                if (test.side == side) {
                    maxima.back().push_back({on(test.week), test.kilograms});
                }
            }
        }
    }
    std::vector<ExerciseHistory> histories;
    for (std::size_t i = 0; i < maxima.size(); i += 3) {
        histories.push_back(
            {{{}, maxima[i]}, {{}, maxima[i + 1]}, {{}, maxima[i + 2]}, std::nullopt});
    }
    return fitMember(histories, {}, on(today), {true, {}});
}

void expectNear(double actual, double expected, double tolerance)
{
    EXPECT_NEAR(actual, expected, tolerance * std::abs(expected) + 1e-14);
}

void expectSame(const StrengthFit& fit, const DenseStrength& dense, double tolerance)
{
    expectNear(fit.level, dense.level, tolerance);
    expectNear(fit.slope, dense.slope, tolerance);
    expectNear(fit.difference, dense.difference, tolerance);
    expectNear(fit.factor, dense.factor, tolerance);
    expectNear(fit.levelVariance, dense.levelVariance, tolerance);
    expectNear(fit.slopeVariance, dense.slopeVariance, tolerance);
    expectNear(fit.factorVariance, dense.factorVariance, tolerance);
    expectNear(fit.levelDifferenceCovariance, dense.levelDifferenceCovariance, tolerance);
    ASSERT_EQ(fit.path.size(), dense.past.size());
    for (std::size_t j = 0; j < fit.path.size(); ++j) {
        expectNear(fit.path[j].level, dense.past[j].level, tolerance);
        expectNear(fit.path[j].levelVariance, dense.past[j].levelVariance, tolerance);
        if (fit.differenceVariance > 0.0) { // with sides
            expectNear(fit.path[j].difference, dense.past[j].difference, tolerance);
            expectNear(fit.path[j].differenceVariance, dense.past[j].differenceVariance, tolerance);
        }
    }
}

void expectAgreement(const std::vector<Tests>& exercises,
                     double today,
                     double tolerance = kRounding)
{
    const auto fits = filtered(exercises, today);
    const std::vector<DenseStrength> dense = tests::denseStrength(exercises, today);
    ASSERT_EQ(fits.size(), dense.size());
    for (std::size_t i = 0; i < dense.size(); ++i) {
        ASSERT_TRUE(fits[i]);
        expectSame(fits[i]->fit, dense[i], tolerance);
    }
}

TEST(DenseStrengthTest, FilterGivesTheSameForEachExerciseOfTheLegData)
{
    const auto people =
        tests::readLegTests(std::string(LEVELBAR_TEST_DATA) + "/leg_one_rm_12wk.csv");
    ASSERT_EQ(people.size(), 20U);
    for (const auto& [person, exercises] : people) {
        for (const auto& [name, all] : exercises) {
            SCOPED_TRACE(person + " " + name);
            expectAgreement({all}, 12.0);
        }
    }
}

TEST(DenseStrengthTest, FilterGivesTheSameForBothExercisesOfALegPerson)
{
    const auto people =
        tests::readLegTests(std::string(LEVELBAR_TEST_DATA) + "/leg_one_rm_12wk.csv");
    ASSERT_EQ(people.size(), 20U);
    for (const auto& [person, exercises] : people) {
        SCOPED_TRACE(person);
        std::vector<Tests> both;
        for (const auto& [name, all] : exercises) {
            both.push_back(all);
        }
        ASSERT_EQ(both.size(), 2U);
        expectAgreement(both, 12.0);
    }
}

TEST(DenseStrengthTest, FilterGivesTheSameAroundABreakAndLongAfterTheLastTest)
{
    const Tests squat = {
        {0, 100, 0}, {2, 104, 0}, {4, 103, 0}, {6, 107, 0}, {25, 98, 0}, {27, 105, 0}};
    expectAgreement({squat}, 27.0);
    expectAgreement({squat}, 36.0); // today without a test, in a break; the look-back in it too
    expectAgreement({squat}, 60.0);
}

TEST(DenseStrengthTest, FilterGivesTheSameWhenOneBreakFollowsAnother)
{
    const Tests squat = {{0, 100, 0},
                         {2, 104, 0},
                         {4, 103, 0},
                         {6, 107, 0},
                         {18, 98, 0},
                         {25, 101, 0},
                         {27, 100, 0}};
    expectAgreement({squat}, 27.0);
    expectAgreement({squat}, 40.0);
}

TEST(DenseStrengthTest, FilterGivesTheSameForThreeExercisesOfWhichDaysAreShared)
{
    const Tests squat = {{0, 100, 0}, {3, 90, 0}, {6, 110, 0}, {9, 111, 0}};
    const Tests press = {{0, 60, 0}, {3, 53, 0}, {7, 66, 0}, {9, 64, 0}};
    const Tests row = {{3, 30, -0.5}, {3, 33, 0.5}, {9, 36, -0.5}, {9, 36, 0.5}};
    expectAgreement({squat, press, row}, 10.0);
}

TEST(DenseStrengthTest, FilterGivesTheSameForASingleTest)
{
    expectAgreement({{{3, 80, 0}}}, 3.0);
    expectAgreement({{{3, 20, -0.5}, {3, 24, 0.5}}}, 5.0);
}

TEST(DenseStrengthTest, ShortStepsAreTakenWithoutTheSlopesDecay)
{
    // Below half a week the filter leaves a term of the slope's noise out: 1.5 % of it at most.
    expectAgreement({{{0, 80, 0}, {1.0 / 7.0, 83, 0}, {3.0 / 7.0, 82, 0}, {5, 86, 0}}}, 5.0, 1e-7);
}

} // namespace
} // namespace levelbar::dense_strength_test
