// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later

#include "core/base/distributions.h"
#include "core/sides/reliability.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <limits>
#include <vector>

namespace levelbar::reliability_test {
namespace {

// Weir 2005 (J Strength Cond Res 19:231-240), data set A: eight people, two trials each.
constexpr std::array kWeirA = {
    146., 140., 148., 152., 170., 152., 90., 99., 157., 145., 156., 153., 176., 167., 205., 218.};
// Data set B, the same error with people more alike (order of the rows from memory).
constexpr std::array kWeirB = {
    166., 160., 168., 172., 160., 142., 150., 159., 147., 135., 146., 143., 156., 147., 155., 168.};

// Shrout and Fleiss 1979 (Psychol Bull 86:420-428): six people, four judges.
constexpr std::array kShroutFleiss = {9., 2., 5., 8., 6.,  1., 3., 2., 8., 4., 6., 8.,
                                      7., 1., 2., 6., 10., 5., 6., 9., 6., 2., 4., 7.};

// Bland and Altman 1986 (Lancet i:307-310): peak expiratory flow in l/min by two meters, twice
// each.
constexpr std::array kWright1 = {494.,
                                 395.,
                                 516.,
                                 434.,
                                 476.,
                                 557.,
                                 413.,
                                 442.,
                                 650.,
                                 433.,
                                 417.,
                                 656.,
                                 267.,
                                 478.,
                                 178.,
                                 423.,
                                 427.};
constexpr std::array kWright2 = {490.,
                                 397.,
                                 512.,
                                 401.,
                                 470.,
                                 611.,
                                 415.,
                                 431.,
                                 638.,
                                 429.,
                                 420.,
                                 633.,
                                 275.,
                                 492.,
                                 165.,
                                 372.,
                                 421.};
constexpr std::array kMini1 = {512.,
                               430.,
                               520.,
                               428.,
                               500.,
                               600.,
                               364.,
                               380.,
                               658.,
                               445.,
                               432.,
                               626.,
                               260.,
                               477.,
                               259.,
                               350.,
                               451.};

std::vector<double> sideBySide(const auto& first, const auto& second, bool inLogs)
{
    std::vector<double> values;
    for (std::size_t i = 0; i < first.size(); ++i) {
        for (const double value : {first.at(i), second.at(i)}) {
            values.push_back(inLogs ? 100.0 * std::log(value) : value);
        }
    }
    return values;
}

double correlation(const TrialVariance& variance, IntraclassModel model)
{
    return intraclassCorrelation(variance, model, 0.95).value().value;
}

TEST(PublishedReliability, WeirsDataSetA)
{
    const TrialVariance v = trialVariance({kWeirA, 2}).value();
    // The paper's table prints 2098.4, 30.2 and 57; the rest from the same data in R 4.2.2.
    EXPECT_NEAR(v.betweenPeople, 2098.53571, 1e-5);
    EXPECT_NEAR(v.betweenTrials, 30.25, 1e-9);
    EXPECT_NEAR(v.error, 57.10714, 1e-5);
    EXPECT_NEAR(v.withinPeople, 53.75, 1e-9);
    EXPECT_NEAR(correlation(v, IntraclassModel::OneOne), 0.95005, 5.1e-6);
    EXPECT_NEAR(correlation(v, IntraclassModel::TwoOne), 0.94998, 5.1e-6);
    EXPECT_NEAR(correlation(v, IntraclassModel::ThreeOne), 0.94702, 5.1e-6);
    const double error = typicalError(v).value().value;
    EXPECT_NEAR(error, 7.6, 0.05) << "as printed on page 236";
    EXPECT_NEAR(error, 7.556927, 1e-6);
    EXPECT_NEAR(minimalDetectableChange(error).value(), 20.946732, 5e-4) << "with z = 1.96";
}

TEST(PublishedReliability, WeirsDataSetBHasTheSameErrorAndALowerCorrelation)
{
    const TrialVariance v = trialVariance({kWeirB, 2}).value();
    EXPECT_NEAR(typicalError(v).value().value, 7.556927, 1e-6);
    EXPECT_NEAR(correlation(v, IntraclassModel::OneOne), 0.55891, 1e-5);
    EXPECT_NEAR(correlation(v, IntraclassModel::TwoOne), 0.55275, 1e-5);
    EXPECT_NEAR(correlation(v, IntraclassModel::ThreeOne), 0.53773, 1e-5);
}

TEST(PublishedReliability, ShroutAndFleiss)
{
    const TrialVariance v = trialVariance({kShroutFleiss, 4}).value();
    // The paper prints 11.24, 32.49, 1.02, 6.26 and 0.17, 0.29, 0.71; intervals by ICC() of R's
    // psych 2.2.9.
    EXPECT_NEAR(v.betweenPeople, 11.241667, 1e-6);
    EXPECT_NEAR(v.betweenTrials, 32.486111, 1e-6);
    EXPECT_NEAR(v.error, 1.019444, 1e-6);
    EXPECT_NEAR(v.withinPeople, 6.263889, 1e-6);

    struct Expected {
        IntraclassModel model;
        double value;
        double low;
        double high;
    };

    for (const Expected& e : {Expected{IntraclassModel::OneOne, 0.165742, -0.1329, 0.7226},
                              Expected{IntraclassModel::TwoOne, 0.289764, 0.0188, 0.7611},
                              Expected{IntraclassModel::ThreeOne, 0.714841, 0.3425, 0.9459}}) {
        const Estimate icc = intraclassCorrelation(v, e.model, 0.95).value();
        EXPECT_NEAR(icc.value, e.value, 1e-6);
        EXPECT_NEAR(icc.low, e.low, 5.1e-5);
        EXPECT_NEAR(icc.high, e.high, 5.1e-5);
        EXPECT_EQ(icc.count, 6);
    }
}

TEST(PublishedReliability, BlandAndAltman)
{
    const Agreement a = agreement(kWright1, kMini1).value();
    // The paper prints -2.1, 38.8, and with two spreads for 1.96 and rounded inputs -79.7, 75.5,
    // -22.0 to 17.8, -114.3 to -45.1, 40.9 to 110.1.
    EXPECT_NEAR(a.bias.value, -2.117647059, 1e-9);
    EXPECT_NEAR(a.spread, 38.76512987, 1e-8);
    EXPECT_NEAR(a.bias.low, -22.048838, 1e-6);
    EXPECT_NEAR(a.bias.high, 17.813544, 1e-6);
    EXPECT_NEAR(a.lowerLimit.value, -78.097302, 1e-6);
    EXPECT_NEAR(a.upperLimit.value, 73.862007, 1e-6);
    // Width of a limit's interval: t(16) times the root of 3 s^2 / n, 2.119905299 x 16.284612.
    EXPECT_NEAR(a.lowerLimit.value - a.lowerLimit.low, 2.119905299 * 16.284612, 1e-5);
    EXPECT_NEAR(a.upperLimit.high - a.upperLimit.value, 2.119905299 * 16.284612, 1e-5);
}

TEST(PublishedReliability, TypicalErrorOfRepeatedFlows)
{
    // Hopkins 2000 (Sports Med 30:1-15): the spread of the differences over the root of two; the
    // same data of Bland and Altman, values by R 4.2.2.
    const auto raw = sideBySide(kWright1, kWright2, false);
    const Estimate error = typicalError(trialVariance({raw, 2}).value(), 0.95).value();
    EXPECT_NEAR(error.value, 21.724038 / std::sqrt(2.0), 1e-6);
    EXPECT_NEAR(error.low, 11.4406, 5.1e-5);
    EXPECT_NEAR(error.high, 23.3787, 5.1e-5);
    const auto logs = sideBySide(kWright1, kWright2, true);
    const double logError = typicalError(trialVariance({logs, 2}).value()).value().value;
    EXPECT_NEAR(logError, 3.451510, 1e-6);
    EXPECT_NEAR(variationPercent(logError).value(), 3.5118, 5.1e-5);
}

TEST(PublishedReliability, DetectableChangeOfAKnownError)
{
    // Weir 2005: 1.96 x sqrt(2); 1.645 x sqrt(2) at nine in ten; the mean of four trials halves it.
    EXPECT_NEAR(minimalDetectableChange(1.0).value(), 2.7718, 5.1e-5);
    EXPECT_NEAR(minimalDetectableChange(1.0, 1, 0.90).value(), 2.3262, 5.1e-5);
    EXPECT_NEAR(minimalDetectableChange(5.0, 4).value(), 2.5 * 2.7718, 2e-4);
}

TEST(PublishedReliability, RefusesWhatSaysNothing)
{
    constexpr double kNan = std::numeric_limits<double>::quiet_NaN();
    EXPECT_FALSE(trialVariance({std::span(kWeirA).first(2), 2})) << "one person";
    EXPECT_FALSE(trialVariance({std::span(kWeirA).first(5), 2})) << "a trial is missing";
    EXPECT_FALSE(trialVariance({kWeirA, 1}));
    EXPECT_FALSE(trialVariance({kWeirA, 0}));
    EXPECT_FALSE(trialVariance({kWeirA, -2}));
    const std::array broken = {1.0, 2.0, kNan, 3.0};
    EXPECT_FALSE(trialVariance({broken, 2}));
    const std::array same = {5.0, 5.0, 5.0, 5.0};
    const TrialVariance none = trialVariance({same, 2}).value();
    for (const auto model :
         {IntraclassModel::OneOne, IntraclassModel::TwoOne, IntraclassModel::ThreeOne}) {
        EXPECT_FALSE(intraclassCorrelation(none, model));
    }
    EXPECT_EQ(typicalError(none).value().value, 0.0);
    EXPECT_FALSE(typicalError(none, 1.0));
    EXPECT_FALSE(agreement(kWright1, kWeirA));
    EXPECT_FALSE(agreement(std::span(kWright1).first(1), std::span(kMini1).first(1)));
    EXPECT_FALSE(minimalDetectableChange(-1.0));
    EXPECT_FALSE(minimalDetectableChange(1.0, 0));
    EXPECT_FALSE(minimalDetectableChange(kNan));
    EXPECT_FALSE(variationPercent(-0.1));
    EXPECT_FALSE(variationPercent(1e9));
}

TEST(PublishedDistributions, QuantilesOfTables)
{
    // Printed tables: chi-square(16) 28.845 and 6.908; F(0.975; 5, 15) = 3.576; z 1.959964.
    EXPECT_NEAR(chiSquareQuantile(0.975, 16.0), 28.845, 5.1e-4);
    EXPECT_NEAR(chiSquareQuantile(0.025, 16.0), 6.908, 5.1e-4);
    EXPECT_NEAR(fisherQuantile(0.975, 5.0, 15.0), 3.576, 5.1e-4);
    EXPECT_NEAR(normalQuantile(0.975), 1.959964, 1e-6);
}

} // namespace
} // namespace levelbar::reliability_test
