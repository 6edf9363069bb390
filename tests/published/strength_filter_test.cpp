// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later

#include "core/strength/strength_filter.h"

#include <gtest/gtest.h>

#include <cmath>

// Check vectors of the trial of this method, an independent program in another language whose
// recursion agrees with a dense solution of the same linearised problem to 4e-14. "One pass" is one
// forward and backward pass from the first guess; "converged" is run to 1e-13. The trial's own
// numbers stand where the product's differ: the reserve's bias, the curve's shape down to one rep,
// and a published curve in the middle (DEVELOPERS.md says what each changes and why).
namespace levelbar::strength_filter_test {
namespace {

struct Row {
    double week;
    double kilograms;
    double reps;
    double reserve; // -1: not told
    double number;
    double side; // -1 left, 0 both, 1 right
};

struct Expected {
    double oneRepMax;
    double logSpread;
    double slope;
    double slopeSpread;
    double loadForSeven;
    double loadForTen;
};

StrengthFit fitRows(const std::vector<Row>& rows,
                    double today,
                    double lookBack,
                    Experience experience,
                    const FitOptions& options)
{
    std::vector<StrengthObservation> sets;
    bool hasSides = false;
    for (const Row& row : rows) {
        hasSides = hasSides || row.side != 0.0;
        sets.push_back({row.week,
                        std::log(row.kilograms),
                        row.reps,
                        std::max(0.0, row.reserve),
                        row.number - 1.0,
                        0.5 * row.side,
                        row.reserve < 0.0 ? SetEvidence::AtLeast : SetEvidence::Measured});
    }
    StrengthInput input;
    input.sets = sets;
    input.today = today;
    input.lookBack = lookBack;
    input.hasSides = hasSides;
    input.factor = {0.0, 0.09};
    StrengthParameters parameters = forExperience(experience);
    parameters.reserveBias = 0.2;
    parameters.shapeFrom = 1.2;
    return fitStrength(input, parameters, options);
}

void expectNear(const StrengthFit& fit, const Expected& expected, double tolerance)
{
    EXPECT_NEAR(std::exp(fit.level), expected.oneRepMax, 1e3 * tolerance);
    EXPECT_NEAR(std::sqrt(fit.levelVariance), expected.logSpread, tolerance);
    EXPECT_NEAR(fit.slope, expected.slope, tolerance);
    EXPECT_NEAR(std::sqrt(fit.slopeVariance), expected.slopeSpread, tolerance);
    EXPECT_NEAR(std::exp(loadForReps(fit, 7, 0).logLoad), expected.loadForSeven, 1e3 * tolerance);
    EXPECT_NEAR(std::exp(loadForReps(fit, 10, 0).logLoad), expected.loadForTen, 1e3 * tolerance);
}

const std::vector<Row> kBarbell = {{0, 60, 8, 2, 1, 0},
                                   {0, 60, 8, 1, 2, 0},
                                   {1, 62.5, 8, 1, 1, 0},
                                   {1, 62.5, 8, -1, 2, 0},
                                   {2, 70, 4, 1, 1, 0},
                                   {3, 65, 8, 0, 1, 0}};
const std::vector<Row> kSingleArm = {{0, 20, 10, 2, 1, -1},
                                     {0, 20, 10, 4, 1, 1},
                                     {1, 22, 8, 1, 1, -1},
                                     {1, 22, 10, 1, 1, 1},
                                     {2, 22, 9, 0, 1, -1},
                                     {2, 22, 10, 2, 1, 1}};
const std::vector<Row> kLayOff = {
    {0, 100, 5, 1, 1, 0}, {1, 102.5, 5, 1, 1, 0}, {2, 90, 8, 6, 1, 0}, {9, 95, 5, 2, 1, 0}};

constexpr FitOptions kOnePass{1, 0.0, true, false, true};
constexpr FitOptions kConverged{400, 1e-13, true, false, true};

TEST(StrengthFilterVectors, BarbellOnePass)
{
    expectNear(fitRows(kBarbell, 3, 2, Experience::Intermediate, kOnePass),
               {79.973568438, 0.052356174, 0.003544177, 0.004423336, 66.574493046, 61.211414270},
               1e-9);
}

TEST(StrengthFilterVectors, BarbellConverged)
{
    expectNear(fitRows(kBarbell, 3, 2, Experience::Intermediate, kConverged),
               {80.027081858, 0.053375242, 0.003582572, 0.004417771, 66.565904669, 61.165466050},
               1e-9);
}

TEST(StrengthFilterVectors, SingleArmConverged)
{
    const StrengthFit fit = fitRows(kSingleArm, 2, 2, Experience::Novice, kConverged);
    expectNear(fit,
               {28.684702146, 0.072151673, 0.010023410, 0.007729155, 24.074279189, 22.265733682},
               1e-9);
    EXPECT_NEAR(fit.difference, 0.055167252, 1e-9);
    EXPECT_NEAR(std::sqrt(fit.differenceVariance), 0.031002562, 1e-9);
}

TEST(StrengthFilterVectors, LayOffOnePass)
{
    expectNear(fitRows(kLayOff, 10, 8, Experience::Advanced, kOnePass),
               {116.342196409, 0.062031861, -0.001776977, 0.003711700, 98.597441148, 91.864272822},
               1e-9);
}

TEST(StrengthFilterVectors, WhatTheProductLeavesOutCostsLittle)
{
    // The product takes fatigue as known and stops after three rounds.
    const StrengthFit fit = fitRows(kBarbell, 3, 2, Experience::Intermediate, {});
    EXPECT_NEAR(std::exp(fit.level), 80.027, 0.02);
    EXPECT_NEAR(std::sqrt(fit.levelVariance), 0.05338, 1e-4);
}

} // namespace
} // namespace levelbar::strength_filter_test
