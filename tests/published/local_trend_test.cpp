// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/base/distributions.h"
#include "core/trend/local_trend.h"
#include "core/trend/regression.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>

namespace levelbar::local_trend_test {
namespace {

// Flow of the Nile at Aswan, 1871 to 1970 (Cobb 1978, Biometrika 65:243-251; R's Nile). Variances
// of Durbin and Koopman 2012, 2.2; values computed by R 4.2.2 and statsmodels 0.13.5.
constexpr std::array kNile = {
    1120., 1160., 963.,  1210., 1160., 1160., 813.,  1230., 1370., 1140., 995.,  935.,  1110.,
    994.,  1020., 960.,  1180., 799.,  958.,  1140., 1100., 1210., 1150., 1250., 1260., 1220.,
    1030., 1100., 774.,  840.,  874.,  694.,  940.,  833.,  701.,  916.,  692.,  1020., 1050.,
    969.,  831.,  726.,  456.,  824.,  702.,  1120., 1100., 832.,  764.,  821.,  768.,  845.,
    864.,  862.,  698.,  845.,  744.,  796.,  1040., 759.,  781.,  865.,  845.,  944.,  984.,
    897.,  822.,  1010., 771.,  676.,  649.,  846.,  812.,  742.,  801.,  1040., 860.,  874.,
    848.,  890.,  744.,  749.,  838.,  1050., 918.,  986.,  797.,  923.,  975.,  815.,  1020.,
    906.,  901.,  1170., 912.,  746.,  919.,  718.,  714.,  740.};
constexpr double kValueNoise = 15099.0;
constexpr LocalTrendModel kNileModel{1469.1, 0.0};

std::vector<TrendNode> nileNodes()
{
    std::vector<TrendNode> nodes;
    for (const double flow : kNile) {
        nodes.push_back({1.0, flow, kValueNoise, 0.0, 0.0});
    }
    return nodes;
}

TEST(LocalTrendNile, LikelihoodOfTheDiffuseStart)
{
    const auto nodes = nileNodes();
    const FilteredTrend run = filterTrend(nodes, kNileModel, std::nullopt).value();
    EXPECT_NEAR(run.logLikelihood, -633.464564, 5e-7);
    EXPECT_NEAR(run.known[0].level, 1120.0, 1e-9);
    EXPECT_NEAR(run.known[1].level, 1140.927840, 5e-7);
    EXPECT_NEAR(run.known[1].levelVariance, 7899.736379, 5e-7);
    EXPECT_NEAR(run.known[2].level, 1072.798530, 5e-7);
    EXPECT_NEAR(run.known[2].levelVariance, 5781.469939, 5e-7);
    EXPECT_NEAR(run.known[99].level, 798.370293, 5e-7);
    EXPECT_NEAR(run.known[99].levelVariance, 4032.157942, 5e-7);
    EXPECT_NEAR(run.expected[99].levelVariance, 5501.257942, 5e-7);
}

TEST(LocalTrendNile, FilteredFromAVaguePrior)
{
    const auto nodes = nileNodes();
    const TrendState vague{0.0, 0.0, 1e7, 0.0, 0.0};
    const FilteredTrend run = filterTrend(nodes, kNileModel, vague).value();
    EXPECT_NEAR(run.known[0].level, 1118.311462, 5e-7);
    EXPECT_NEAR(run.known[0].levelVariance, 15076.236391, 5e-7);
    EXPECT_NEAR(run.known[1].level, 1140.108439, 5e-7);
    EXPECT_NEAR(run.known[1].levelVariance, 7894.557531, 5e-7);
    EXPECT_NEAR(run.known[2].level, 1072.316018, 5e-7);
    EXPECT_NEAR(run.known[3].level, 1116.974768, 5e-7);
}

TEST(LocalTrendNile, Smoothed)
{
    const auto nodes = nileNodes();
    const FilteredTrend run = filterTrend(nodes, kNileModel, std::nullopt).value();
    const auto all = smoothTrend(run, nodes);
    EXPECT_NEAR(all[0].level, 1111.668319, 5e-7);
    EXPECT_NEAR(all[27].level, 999.585219, 5e-7);
    EXPECT_NEAR(all[28].level, 950.930087, 5e-7);
    EXPECT_NEAR(all[99].level, 798.370293, 5e-7);
    EXPECT_NEAR(all[49].levelVariance, 2326.756870, 5e-7);
    // Forecast errors of R's predict(StructTS) at its own variances, 15098.52 and 1469.17.
    const TrendState one = advanced(run.known[99], 1.0, kNileModel);
    const TrendState two = advanced(run.known[99], 2.0, kNileModel);
    EXPECT_NEAR(std::sqrt(one.levelVariance + kValueNoise), 143.5266, 0.01);
    EXPECT_NEAR(std::sqrt(two.levelVariance + kValueNoise), 148.5564, 0.01);
}

// Eight loads at irregular days, in ln-percent of 60 kg. Expected values: a Kalman filter in
// Python checked against generalised least squares of the whole series.
constexpr std::array kDays = {0., 3., 7., 14., 16., 24., 35., 38.};
constexpr std::array kKilograms = {60., 61., 60.5, 62.5, 61.5, 64., 64.5, 65.5};
constexpr LocalTrendModel kModel{0.0, 0.02};
constexpr TrendState kStart{0.0, 0.5, 400.0, 0.0, 1.0};

std::vector<TrendNode> irregular()
{
    std::vector<TrendNode> nodes;
    for (std::size_t i = 0; i < kDays.size(); ++i) {
        const double weeks = i == 0 ? 0.0 : (kDays[i] - kDays[i - 1]) / 7.0;
        nodes.push_back({weeks, 100.0 * std::log(kKilograms[i] / 60.0), 16.0, 0.0, 0.0});
    }
    return nodes;
}

TEST(LocalTrendIrregular, FilteredLevelSlopeAndLikelihood)
{
    const auto nodes = irregular();
    const FilteredTrend run = filterTrend(nodes, kModel, kStart).value();
    EXPECT_NEAR(*nodes[1].value - run.expected[1].level, 1.43864448, 5e-9);
    EXPECT_NEAR(run.expected[1].levelVariance + 16.0, 31.56881364, 5e-9);
    EXPECT_NEAR(run.known[1].level, 0.923783007, 5e-10);
    EXPECT_NEAR(run.known[1].slope, 0.519614431, 5e-10);
    EXPECT_NEAR(run.known[3].level, 2.392139176, 5e-10);
    EXPECT_NEAR(run.known[3].slope, 0.667248046, 5e-10);
    EXPECT_NEAR(run.known[7].level, 7.453672510, 5e-10);
    EXPECT_NEAR(run.known[7].slope, 1.188149683, 5e-10);
    EXPECT_NEAR(run.known[7].levelVariance, 5.266907610, 5e-10);
    EXPECT_NEAR(run.known[7].covariance, 1.119959018, 5e-10);
    EXPECT_NEAR(run.known[7].slopeVariance, 0.408571982, 5e-10);
    EXPECT_NEAR(run.logLikelihood, -22.124759824, 5e-10);
}

TEST(LocalTrendIrregular, SmoothedFirstAndForecastInFourWeeks)
{
    const auto nodes = irregular();
    const FilteredTrend run = filterTrend(nodes, kModel, kStart).value();
    const auto all = smoothTrend(run, nodes);
    EXPECT_NEAR(all[0].level, 1.064356579, 5e-10);
    EXPECT_NEAR(all[0].slope, 1.152560204, 5e-10);
    const TrendState then = advanced(run.known[7], 4.0, kModel);
    EXPECT_NEAR(then.level, 12.206271243, 5e-9);
    EXPECT_NEAR(then.levelVariance, 21.190398134, 5e-9);
    const double slopeSpread = std::sqrt(run.known[7].slopeVariance);
    EXPECT_NEAR(normalBelow((run.known[7].slope - 0.25) / slopeSpread), 0.928907, 5e-7);
}

TEST(LocalTrendIrregular, SplittingAStepChangesNothing)
{
    auto nodes = irregular();
    const FilteredTrend whole = filterTrend(nodes, kModel, kStart).value();
    TrendNode half;
    half.weeks = 0.6;
    nodes[6].weeks -= 0.6;
    nodes.insert(nodes.begin() + 6, half);
    const FilteredTrend split = filterTrend(nodes, kModel, kStart).value();
    EXPECT_NEAR(split.known[8].level, whole.known[7].level, 1e-12);
    EXPECT_NEAR(split.known[8].slopeVariance, whole.known[7].slopeVariance, 1e-12);
    EXPECT_NEAR(split.logLikelihood, whole.logLikelihood, 1e-12);
}

TEST(LocalTrendIrregular, PlainLinesThroughTheSamePoints)
{
    std::vector<double> weeks;
    std::vector<double> y;
    for (std::size_t i = 0; i < kDays.size(); ++i) {
        weeks.push_back(kDays[i] / 7.0);
        y.push_back(100.0 * std::log(kKilograms[i] / 60.0));
    }
    const LineFit line = fitLine(weeks, y).value();
    EXPECT_NEAR(line.slope, 1.537473, 5e-7);
    EXPECT_NEAR(line.slopeError, 0.172541, 5e-7);
    EXPECT_NEAR(theilSenSlope(weeks, y).value().value, 1.573103, 5e-7);
}

TEST(LocalTrendIrregular, RefusesWhatIsNoSeries)
{
    EXPECT_FALSE(filterTrend({}, kModel, kStart));
    auto nodes = irregular();
    nodes[2].variance = 0.0;
    EXPECT_FALSE(filterTrend(nodes, kModel, kStart));
    nodes = irregular();
    nodes[3].value = std::nan("");
    EXPECT_FALSE(filterTrend(nodes, kModel, kStart));
    nodes = irregular();
    nodes[3].weeks = -1.0;
    EXPECT_FALSE(filterTrend(nodes, kModel, kStart));
    nodes = irregular();
    nodes[0].value.reset();
    EXPECT_FALSE(filterTrend(nodes, kModel, std::nullopt));
    EXPECT_TRUE(filterTrend(nodes, kModel, kStart));
}

} // namespace
} // namespace levelbar::local_trend_test
