// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/base/distributions.h"
#include "core/trend/value_trend.h"
#include "tests/support/random.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>

// How often the calls are right and wrong on invented series whose truth is known.
namespace levelbar::trend_calls_test {
namespace {

using tests::Random;

constexpr Day kStart{20000};

// Two values a week along a straight line, in ln-percent from 60 kg.
std::vector<DatedValue> straight(int weeks, double slope, double spread, Random& random)
{
    std::vector<DatedValue> series;
    for (int i = 0; i <= 2 * weeks; ++i) {
        const int day = 7 * (i / 2) + (i % 2) * 3;
        const double y = slope * day / 7.0 + random.normal(0.0, spread);
        series.push_back({kStart + day, 60.0 * std::exp(y / 100.0)});
    }
    return series;
}

struct Rates {
    double rising = 0.0;
    double falling = 0.0;
    double steady = 0.0;
    double noGain = 0.0;  // "no gain we can see", or falling
    double covered = 0.0; // truth inside the interval of the change
};

Rates ratesOf(int weeks, double slope, double spread, int runs, std::uint64_t seed)
{
    Random random(seed);
    TrendMeasure measure = kMaximumMeasure;
    measure.spread = spread; // what pooling would have found
    const TrendNoise noise = usualNoise(measure);
    Rates rates;
    const double share = 1.0 / runs;
    for (int run = 0; run < runs; ++run) {
        const auto series = straight(weeks, slope, spread, random);
        const ValueTrend trend = valueTrend(series, measure, noise, series.back().day).value();
        EXPECT_TRUE(trend.changePerWeek);
        const Estimate change = trend.changePerWeek.value_or(Estimate{});
        rates.rising += trend.call == TrendCall::Rising ? share : 0.0;
        rates.falling += trend.call == TrendCall::Falling ? share : 0.0;
        rates.steady += trend.call == TrendCall::Steady ? share : 0.0;
        rates.noGain += trend.probabilityRising <= 0.2 ? share : 0.0;
        rates.covered += change.low <= slope && slope <= change.high ? share : 0.0;
    }
    return rates;
}

// A row of the table of the same simulation for calls read off the filter's slope on the last
// day, under the same paces, and with a prior that expects a gain of 0.5 % a week (1500 runs in
// Python; no publication): rising at +1.0; rising, no gain at +0.5; rising, no gain at 0; falling,
// no gain at -0.5. Its rows of four and eight weeks tell +1.0 from 0 better than a line of least
// squares with the spread known could on our days (see tellsApart), so that not all of their cells
// can be reached at once.
struct Row {
    int weeks = 0;
    double spread = 0.0;
    std::array<double, 7> before{};
};

constexpr std::array kRows = {Row{4, 4.0, {.45, .24, .05, .12, .12, .07, .34}},
                              Row{8, 4.0, {.86, .38, .04, .05, .36, .34, .89}},
                              Row{12, 4.0, {.98, .59, .01, .02, .49, .47, 1.0}},
                              Row{16, 4.0, {1.0, .72, .00, .00, .68, .67, 1.0}},
                              Row{12, 2.5, {1.0, .78, .00, .00, .79, .68, 1.0}}};

// Right calls first: right when the rate is high.
constexpr std::array kIsRight = {true, true, false, false, true, true, true};

std::array<double, 7> measured(const Row& row, int runs)
{
    const Rates fast = ratesOf(row.weeks, 1.0, row.spread, runs, 1);
    const Rates slow = ratesOf(row.weeks, 0.5, row.spread, runs, 2);
    const Rates flat = ratesOf(row.weeks, 0.0, row.spread, runs, 3);
    const Rates down = ratesOf(row.weeks, -0.5, row.spread, runs, 4);
    const std::array<double, 7> rates = {
        fast.rising, slow.rising, slow.noGain, flat.rising, flat.noGain, down.falling, down.noGain};
    std::printf("%2d weeks, spread %.1f %%; +1.0 rising | +0.5 rising, no gain | 0 rising, no gain "
                "| -0.5 falling, no gain\n  before",
                row.weeks,
                row.spread);
    for (const double rate : row.before) {
        std::printf(" %6.3f", rate);
    }
    std::printf("\n  now   ");
    for (const double rate : rates) {
        std::printf(" %6.3f", rate);
    }
    std::printf("   0 falling %.3f, steady %.3f; interval holds the truth %.3f %.3f %.3f %.3f\n",
                flat.falling,
                flat.steady,
                fast.covered,
                slow.covered,
                flat.covered,
                down.covered);
    return rates;
}

// `slack`: three standard errors of both simulations.
void expectNoWorse(const Row& row, const std::array<double, 7>& now, double slack)
{
    for (std::size_t i = 0; i < now.size(); ++i) {
        if (kIsRight.at(i)) {
            EXPECT_GE(now.at(i), row.before.at(i) - slack) << row.weeks << " weeks, " << i;
        } else {
            EXPECT_LE(now.at(i), row.before.at(i) + slack) << row.weeks << " weeks, " << i;
        }
    }
}

double normalAt(double share)
{
    return normalQuantile(std::clamp(share, 1e-4, 1.0 - 1e-4));
}

// How well the calls tell +1.0 from 0, in standard deviations, over what a straight line of least
// squares could with the spread known.
double tellsApart(const Row& row, const std::array<double, 7>& now)
{
    Random random(5);
    const auto series = straight(row.weeks, 0.0, row.spread, random);
    double mean = 0.0;
    for (const DatedValue& value : series) {
        mean += (value.day - kStart) / 7.0 / static_cast<double>(series.size());
    }
    double squares = 0.0;
    for (const DatedValue& value : series) {
        const double weeks = (value.day - kStart) / 7.0 - mean;
        squares += weeks * weeks;
    }
    return (normalAt(now[0]) - normalAt(now[3])) / (std::sqrt(squares) / row.spread);
}

TEST(TrendCalls, AtTwelveWeeksAreNoWorseThanTheSlopeOfTheLastDay)
{
    expectNoWorse(kRows[2], measured(kRows[2], 500), 0.06);
}

TEST(TrendCallsSlow, TheWholeTable)
{
    for (const Row& row : kRows) {
        const auto now = measured(row, 4000);
        if (row.weeks >= 12) {
            expectNoWorse(row, now, 0.03);
            continue;
        }
        EXPECT_GE(tellsApart(row, now), 0.93) << row.weeks;
        EXPECT_LE(now[3], row.before[3] + 0.03) << "rising where nothing rises";
        EXPECT_GE(now[0], row.before[0] - 0.06) << "rising where it rises";
        EXPECT_LE(now[2], row.before[2] + 0.02) << "no gain where it rises";
        EXPECT_GE(now[5], row.before[5] - 0.03) << "falling where it falls";
    }
}

// A roster that neither gains nor loses teaches the prior so: then neither side is favoured.
TEST(TrendCalls, ARosterThatStandsStillFavoursNeitherSide)
{
    Random random(6);
    std::vector<std::vector<DatedValue>> roster;
    for (int person = 0; person < 300; ++person) {
        roster.push_back(straight(8, 0.0, 4.0, random));
    }
    const TrendNoise noise = poolTrendNoise(roster, kMaximumMeasure).value();
    EXPECT_LT(noise.firstSlope, 0.1);
    int rising = 0;
    int falling = 0;
    for (const auto& series : roster) {
        const auto trend = valueTrend(series, kMaximumMeasure, noise, series.back().day).value();
        rising += trend.call == TrendCall::Rising ? 1 : 0;
        falling += trend.call == TrendCall::Falling ? 1 : 0;
    }
    EXPECT_LE(rising, 15); // one in twenty
    EXPECT_NEAR(rising, falling, 12);
}

} // namespace
} // namespace levelbar::trend_calls_test
