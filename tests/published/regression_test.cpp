// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later

#include "core/base/distributions.h"
#include "core/sides/side_model.h"
#include "core/trend/regression.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>

namespace levelbar::regression_test {
namespace {

// NIST Statistical Reference Datasets, Norris: certified values to 15 digits.
constexpr std::array kNorrisX = {0.2,   337.4, 118.2, 884.6, 10.1,  226.5, 666.3, 996.3, 448.6,
                                 777.0, 558.2, 0.4,   0.6,   775.5, 666.9, 338.0, 447.5, 11.6,
                                 556.0, 228.1, 995.8, 887.6, 120.2, 0.3,   0.3,   556.8, 339.1,
                                 887.2, 999.0, 779.0, 11.1,  118.3, 229.2, 669.1, 448.9, 0.5};
constexpr std::array kNorrisY = {0.1,   338.8, 118.1, 888.0, 9.2,   228.1, 668.5, 998.5, 449.1,
                                 778.9, 559.2, 0.3,   0.1,   778.1, 668.8, 339.3, 448.9, 10.8,
                                 557.7, 228.3, 998.0, 888.8, 119.6, 0.3,   0.6,   557.6, 339.3,
                                 888.0, 998.5, 778.9, 10.2,  117.6, 228.9, 668.4, 449.2, 0.2};

TEST(Regression, NorrisOfNist)
{
    const LineFit fit = fitLine(kNorrisX, kNorrisY).value();
    EXPECT_NEAR(fit.intercept, -0.262323073774029, 1e-12);
    EXPECT_NEAR(fit.slope, 1.00211681802045, 1e-13);
    EXPECT_NEAR(fit.interceptError, 0.232818234301152, 1e-12);
    EXPECT_NEAR(fit.slopeError, 0.429796848199937e-3, 1e-14);
    EXPECT_NEAR(fit.residualSpread, 0.884796396144373, 1e-12);
}

// R's datasets::cars (Ezekiel 1930), stopping distance by speed; lm() in R 4.2.2.
constexpr std::array kSpeed = {4.,  4.,  7.,  7.,  8.,  9.,  10., 10., 10., 11., 11., 12., 12.,
                               12., 12., 13., 13., 13., 13., 14., 14., 14., 14., 15., 15., 15.,
                               16., 16., 17., 17., 17., 18., 18., 18., 18., 19., 19., 19., 20.,
                               20., 20., 20., 20., 22., 23., 24., 24., 24., 24., 25.};
constexpr std::array kDistance = {2.,  10., 4.,  22., 16., 10., 18., 26., 34., 17.,  28., 14., 20.,
                                  24., 28., 26., 34., 34., 46., 26., 36., 60., 80.,  20., 26., 54.,
                                  32., 40., 32., 40., 50., 42., 56., 76., 84., 36.,  46., 68., 32.,
                                  48., 52., 56., 64., 66., 54., 70., 92., 93., 120., 85.};

TEST(Regression, CarsOfR)
{
    const LineFit fit = fitLine(kSpeed, kDistance).value();
    EXPECT_NEAR(fit.intercept, -17.579094891, 1e-8);
    EXPECT_NEAR(fit.slope, 3.932408759, 1e-8);
    const Estimate slope = slopeOf(fit, 0.95);
    EXPECT_NEAR(slope.low, 3.096964328, 1e-8);
    EXPECT_NEAR(slope.high, 4.767853190, 1e-8);
    const Estimate at = heightAt(fit, 21.0, 0.95);
    EXPECT_NEAR(at.value, 65.001489051, 1e-8);
    EXPECT_NEAR(at.low, 58.597383785, 1e-8);
    EXPECT_NEAR(at.high, 71.405594318, 1e-8);
    EXPECT_EQ(at.count, 50);
}

TEST(Regression, SensOwnExample)
{
    // Sen 1968, JASA 63:1379-1389: slope 4, interval 26/7 to 35/8 at 93 %.
    constexpr std::array kT = {1., 2., 3., 4., 10., 12., 18.};
    constexpr std::array kY = {9., 15., 19., 20., 45., 55., 78.};
    const Estimate slope = theilSenSlope(kT, kY, 0.93).value();
    EXPECT_DOUBLE_EQ(slope.value, 4.0);
    EXPECT_NEAR(slope.low, 26.0 / 7.0, 1e-12);
    EXPECT_NEAR(slope.high, 35.0 / 8.0, 1e-12);
}

TEST(Regression, RefusesWhatIsNoLine)
{
    constexpr std::array kOne = {1.0, 2.0};
    EXPECT_FALSE(fitLine(kOne, kOne));
    constexpr std::array kSame = {3.0, 3.0, 3.0};
    constexpr std::array kY = {1.0, 2.0, 3.0};
    EXPECT_FALSE(fitLine(kSame, kY));
    const std::array kBroken = {1.0, std::nan(""), 3.0};
    EXPECT_FALSE(fitLine(kBroken, kY));
}

TEST(Distributions, StudentsTOfTheTables)
{
    // Bland and Altman 1986 use t with 16 degrees of freedom; R's qt() and pt().
    EXPECT_NEAR(studentQuantile(0.975, 16), 2.119905299221, 1e-9);
    EXPECT_NEAR(studentBelow(1.3, 5), 0.874849682914661, 1e-12);
    EXPECT_NEAR(normalBelow(1.6448536269514722), 0.95, 1e-14);
}

TEST(SidePosteriorTest, ShrinksAsWorkedByHand)
{
    // Normal prior and normal noise (Efron and Morris 1977): B = tau^2 / (tau^2 + v). Worked
    // example: left 22.5 22.5 24 24, right 25 26 26 27.5, noise 32.446607, prior 3 and 6.
    SidePrior prior;
    prior.narrow = 6.0;
    prior.wideShare = 0.0;
    SideLook look;
    look.mean = 11.652915662;
    look.variance = 32.446607 / 4.0;
    const SidePosterior posterior = posteriorOf(look, prior, 3.0);
    EXPECT_NEAR(posterior.mean(), 10.061738818, 1e-6);
    EXPECT_NEAR(posterior.parts().front().spread, 2.572937519, 1e-6);
}

TEST(SideIndices, AreTheirTextbookValues)
{
    // Left 40, right 50: the percentage difference is 20, the log ratio 22.314 (arithmetic).
    EXPECT_NEAR(percentOf(100.0 * std::log(50.0 / 40.0)), 20.0, 1e-12);
    EXPECT_NEAR(percentOf(100.0 * std::log(40.0 / 50.0)), -20.0, 1e-12);
    EXPECT_NEAR(logPercentOf(10.0), 10.536051565782628, 1e-12);
    EXPECT_NEAR(logPercentOf(5.0), 5.1293294387550578, 1e-12);
}

} // namespace
} // namespace levelbar::regression_test
