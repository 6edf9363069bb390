// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later

#include "core/sides/measure_steadiness.h"
#include "core/sides/side_cut.h"
#include "tests/support/random.h"
#include "tests/support/sets.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numeric>

namespace levelbar::measure_steadiness_test {
namespace {

const Day kToday = tests::day("2026-06-30");

MeasuredSides measureOf(int people, int days, double spread)
{
    tests::Random random(11);
    MeasuredSides measure;
    measure.measure.name = "Grip strength";
    for (int person = 0; person < people; ++person) {
        const double truth = random.normal(0.0, 8.0);
        SideSeries series;
        for (int i = days; i-- > 0;) {
            series.pairs.push_back({kToday - 14 * i, truth + random.normal(0.0, spread)});
        }
        measure.owners.push_back(static_cast<std::size_t>(person));
        measure.series.push_back(std::move(series));
    }
    return measure;
}

TEST(MeasureSteadinessTest, FindsTheSpreadThatTheDaysWereDrawnWith)
{
    const MeasureSteadiness steadiness = steadinessOf(measureOf(400, 4, 5.0), kToday);
    EXPECT_EQ(steadiness.people, 400);
    EXPECT_EQ(steadiness.repeated, 400);
    EXPECT_NEAR(steadiness.daySpread, 5.0, 0.5);
    ASSERT_TRUE(steadiness.typicalError && steadiness.intraclass && steadiness.detectable);
    EXPECT_NEAR(steadiness.typicalError->value, 5.0, 0.5);
    // True variance over true and noise together: 64 / (64 + 25).
    EXPECT_NEAR(steadiness.intraclass->value, 64.0 / 89.0, 0.06);
    EXPECT_NEAR(
        *steadiness.detectable, 1.959964 * std::sqrt(2.0) * steadiness.typicalError->value, 1e-4);
}

TEST(MeasureSteadinessTest, TellsHowMuchPeopleDifferInSteadiness)
{
    MeasuredSides mixed = measureOf(200, 8, 2.5);
    const MeasuredSides shaky = measureOf(200, 8, 9.0);
    mixed.series.insert(mixed.series.end(), shaky.series.begin(), shaky.series.end());
    mixed.owners.resize(mixed.series.size());
    const MeasureSteadiness steadiness = steadinessOf(mixed, kToday);
    EXPECT_LT(steadiness.steadiest, 3.5);
    EXPECT_GT(steadiness.unsteadiest, 8.0);
    EXPECT_NEAR(steadiness.daySpread, std::sqrt((2.5 * 2.5 + 9.0 * 9.0) / 2.0), 1.0);
}

TEST(MeasureSteadinessTest, OneDayEachIsNoReliability)
{
    const MeasureSteadiness steadiness = steadinessOf(measureOf(30, 1, 5.0), kToday);
    EXPECT_EQ(steadiness.people, 30);
    EXPECT_EQ(steadiness.repeated, 0);
    EXPECT_FALSE(steadiness.typicalError);
    EXPECT_FALSE(steadiness.intraclass);
}

TEST(MeasureSteadinessTest, OnlyTheLastTwoDaysUpToTheDayCount)
{
    MeasuredSides measure = measureOf(10, 3, 5.0);
    const MeasureSteadiness then = steadinessOf(measure, kToday - 1);
    for (SideSeries& series : measure.series) {
        series.pairs.back().logPercent = 60.0; // today's, not yet seen
    }
    EXPECT_EQ(steadinessOf(measure, kToday - 1).typicalError, then.typicalError);
}

TEST(SideCutTest, AgreesWithBruteForceWhereNobodyWasListed)
{
    tests::Random random(3);
    for (int trial = 0; trial < 200; ++trial) {
        std::vector<ListCandidate> candidates(static_cast<std::size_t>(random.below(30)));
        for (ListCandidate& candidate : candidates) {
            candidate.probability = random.uniform();
        }
        // The longest list of the surest whose mean probability of being false is a tenth at most.
        std::vector<double> sorted;
        for (const ListCandidate& candidate : candidates) {
            sorted.push_back(candidate.probability);
        }
        std::sort(sorted.rbegin(), sorted.rend());
        std::size_t longest = 0;
        for (std::size_t k = 1; k <= sorted.size(); ++k) {
            const double sure = std::accumulate(
                sorted.begin(), sorted.begin() + static_cast<std::ptrdiff_t>(k), 0.0);
            longest = static_cast<double>(k) - sure <= 0.1 * static_cast<double>(k) ? k : longest;
        }
        const auto listed = listOf(candidates);
        EXPECT_EQ(static_cast<std::size_t>(std::count(listed.begin(), listed.end(), true)),
                  longest);
    }
}

TEST(SideCutTest, WhoWasListedStaysALittleBelowTheCut)
{
    const std::vector<bool> listed =
        listOf({{0.95, false}, {0.86, true}, {0.84, false}, {0.7, true}});
    EXPECT_EQ(listed, (std::vector<bool>{true, true, false, false}));
    EXPECT_EQ(listOf({{0.85, true}, {0.85, false}}), (std::vector<bool>{true, false}))
        << "nobody is in the cut";
}

} // namespace
} // namespace levelbar::measure_steadiness_test
