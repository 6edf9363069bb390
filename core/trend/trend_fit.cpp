// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/trend/trend_fit.h"

#include "core/base/distributions.h"
#include "core/base/square.h"
#include "core/trend/off_days.h"

#include <algorithm>
#include <cmath>

namespace levelbar {

namespace {

// (percent a week) squared a week, for a mattering change of 0.25 % a week; for other measures in
// proportion. Wider steps cost calls more than they gain (assumed, tried on simulated series).
constexpr Paces<double> kSlopeNoise = {0.0005, 0.002, 0.006, 0.02};
constexpr double kUsualMattering = 0.25;

// A gap of this many days, and of three usual gaps, is a lay-off: level and slope may have
// changed. Standard deviations 5 % a six weeks and 1 % a week; assumed.
constexpr int kLayOffDays = 42;
constexpr int kLayOffGaps = 3;
constexpr double kLayOffLevel = 5.0;
constexpr double kLayOffSlope = 1.0;

constexpr double kForecastWeeks = 6.0;

double weeksBetween(Day from, Day to)
{
    return (to - from) / 7.0;
}

// The state of the filter in all paces side by side, so that the machine can work on them at once.
struct Lanes {
    Paces<double> level{}, slope{};
    Paces<double> levelVariance{}, covariance{}, slopeVariance{};
    Paces<double> carried{}, carriedVariance{}, withLevel{}, withSlope{};
    Paces<double> squares{}, determinant{}, logDeterminant{};
};

void start(Lanes& lanes, const TrendSeries& series)
{
    lanes.level.fill(*series.nodes.front().value);
    lanes.levelVariance.fill(series.nodes.front().variance);
    lanes.slopeVariance.fill(series.slopeVariance);
    lanes.determinant.fill(1.0);
}

void advance(Lanes& l, const TrendNode& node, const Paces<double>& noise)
{
    const double w = node.weeks;
    for (std::size_t i = 0; i < kTrendPaces; ++i) {
        l.level[i] += w * l.slope[i];
        l.levelVariance[i] +=
            w * (2.0 * l.covariance[i] + w * (l.slopeVariance[i] + noise[i] * w / 3.0)) +
            node.levelLoosening;
        l.covariance[i] += w * (l.slopeVariance[i] + 0.5 * noise[i] * w);
        l.slopeVariance[i] += w * noise[i] + node.slopeLoosening;
        l.withLevel[i] += w * l.withSlope[i];
    }
}

void absorbInto(Lanes& l, double value, double variance)
{
    for (std::size_t i = 0; i < kTrendPaces; ++i) {
        const double total = l.levelVariance[i] + variance;
        const double precision = 1.0 / total;
        const double surprise = value - l.level[i];
        const double levelGain = l.levelVariance[i] * precision;
        const double slopeGain = l.covariance[i] * precision;
        const double carriedGain = l.withLevel[i] * precision;
        l.squares[i] += surprise * surprise * precision;
        l.determinant[i] *= total;
        l.level[i] += levelGain * surprise;
        l.slope[i] += slopeGain * surprise;
        l.carried[i] += carriedGain * surprise;
        l.carriedVariance[i] -= carriedGain * l.withLevel[i];
        l.withSlope[i] -= slopeGain * l.withLevel[i];
        l.withLevel[i] *= variance * precision;
        l.slopeVariance[i] -= slopeGain * l.covariance[i];
        l.covariance[i] *= variance * precision;
        l.levelVariance[i] *= variance * precision;
    }
}

// Keeps the product of the variances within what a double holds.
void foldDeterminant(Lanes& l)
{
    for (std::size_t i = 0; i < kTrendPaces; ++i) {
        l.logDeterminant[i] += std::log(l.determinant[i]);
        l.determinant[i] = 1.0;
    }
}

void carry(Lanes& l, bool isSlope)
{
    l.carried = isSlope ? l.slope : l.level;
    l.carriedVariance = isSlope ? l.slopeVariance : l.levelVariance;
    l.withLevel = isSlope ? l.covariance : l.levelVariance;
    l.withSlope = isSlope ? l.slopeVariance : l.covariance;
}

Lanes run(const TrendSeries& series, const Carried& carried)
{
    constexpr std::size_t kFoldEvery = 16;
    Paces<double> noise{};
    for (std::size_t i = 0; i < kTrendPaces; ++i) {
        noise[i] = series.models[i].slopeNoise;
    }
    Lanes lanes;
    start(lanes, series);
    if (carried.node == 0) {
        carry(lanes, carried.isSlope);
    }
    for (std::size_t n = 1; n < series.nodes.size(); ++n) {
        const TrendNode& node = series.nodes[n];
        advance(lanes, node, noise);
        if (node.value) {
            absorbInto(lanes, *node.value, node.variance);
        }
        if (n == carried.node) {
            carry(lanes, carried.isSlope);
        }
        if (n % kFoldEvery == 0) {
            foldDeterminant(lanes);
        }
    }
    foldDeterminant(lanes);
    return lanes;
}

} // namespace

TrendSeries makeTrendSeries(std::span<const DatedValue> values,
                            const TrendMeasure& measure,
                            const TrendNoise& noise)
{
    TrendSeries series;
    series.values = static_cast<int>(values.size());
    series.variance = square(noise.spread);
    series.freedom = noise.freedom;
    series.firstError = noise.firstError;
    series.meanSlope = noise.meanSlope - noise.firstSlope;
    series.firstSlope = noise.firstSlope;
    series.paces = noise.paces;
    series.slopeVariance = square(noise.slopeSpread) / series.variance;
    const double unit = square(measure.mattering / kUsualMattering) / series.variance;
    for (std::size_t i = 0; i < kTrendPaces; ++i) {
        series.models[i].slopeNoise = kSlopeNoise[i] * unit;
    }
    const int layOff = std::max(kLayOffDays, kLayOffGaps * medianGapDays(values, measure));
    series.nodes.reserve(values.size() + 2);
    series.days.reserve(values.size() + 2);
    for (std::size_t i = 0; i < values.size(); ++i) {
        TrendNode node;
        node.value = onScale(values[i].value, measure.scale) -
                     noise.firstSlope * weeksBetween(values.front().day, values[i].day);
        const int gap = i == 0 ? 0 : values[i].day - values[i - 1].day;
        node.weeks = gap / 7.0;
        node.variance = i == 0 ? noise.firstError : 1.0;
        if (gap > layOff) {
            node.levelLoosening = square(kLayOffLevel) * unit * gap / kLayOffDays;
            node.slopeLoosening = square(kLayOffSlope) * unit;
        }
        series.nodes.push_back(node);
        series.days.push_back(values[i].day);
    }
    weighOffDays(series);
    return series;
}

double TrendSeries::expectedBy(Day day) const
{
    return firstSlope * weeksBetween(days.front(), day);
}

std::size_t nodeAt(TrendSeries& series, Day day)
{
    const auto at = std::lower_bound(series.days.begin(), series.days.end(), day);
    const auto place = at - series.days.begin();
    const auto index = static_cast<std::size_t>(place);
    if (at != series.days.end() && *at == day) {
        // The last of the day: what a day says is known with all its values.
        const auto after = std::upper_bound(at, series.days.end(), day);
        return static_cast<std::size_t>(after - series.days.begin()) - 1;
    }
    TrendNode node;
    node.weeks = weeksBetween(series.days[index - 1], day);
    if (at != series.days.end()) {
        series.nodes[index].weeks = weeksBetween(day, *at);
    }
    series.nodes.insert(series.nodes.begin() + place, node);
    series.days.insert(at, day);
    return index;
}

double TrendGuess::above(double x) const
{
    return studentBelow((mean - x) / std::sqrt(variance), freedom);
}

Estimate TrendGuess::interval(double quantile, int count) const
{
    const double half = quantile * std::sqrt(variance);
    return {mean, mean - half, mean + half, kLevel, count};
}

double TrendMixture::quantile() const
{
    return studentQuantile(0.5 + kLevel / 2.0, freedom);
}

TrendGuess TrendMixture::average(const Paces<double>& means, const Paces<double>& variances) const
{
    TrendGuess guess;
    guess.freedom = freedom;
    for (std::size_t i = 0; i < kTrendPaces; ++i) {
        guess.mean += share[i] * means[i];
    }
    for (std::size_t i = 0; i < kTrendPaces; ++i) {
        guess.variance += share[i] * (variance[i] * variances[i] + square(means[i] - guess.mean));
    }
    guess.variance = std::max(guess.variance, 1e-18); // a probability must stay defined
    return guess;
}

TrendGuess TrendMixture::levelAfter(const TrendSeries& series, double weeks) const
{
    const double leaving = std::min(weeks, kForecastWeeks);
    const double own = leaving * (1.0 - 0.5 * leaving / kForecastWeeks);
    Paces<double> means{};
    Paces<double> variances{};
    for (std::size_t i = 0; i < kTrendPaces; ++i) {
        means[i] = last[i].level + own * last[i].slope + (weeks - own) * series.meanSlope +
                   series.expectedBy(series.days.back()) + weeks * series.firstSlope;
        variances[i] = advanced(last[i], weeks, series.models[i]).levelVariance;
    }
    return average(means, variances);
}

double TrendMixture::valueVariance() const
{
    double sum = 0.0;
    for (std::size_t i = 0; i < kTrendPaces; ++i) {
        sum += share[i] * variance[i];
    }
    return sum;
}

TrendGuess TrendMixture::gain(double factor) const
{
    Paces<double> means{};
    Paces<double> variances{};
    for (std::size_t i = 0; i < kTrendPaces; ++i) {
        means[i] = factor * (last[i].level - carried[i] + expectedGain);
        variances[i] =
            square(factor) * (last[i].levelVariance + carriedVariance[i] - 2.0 * withLevel[i]);
    }
    return average(means, variances);
}

TrendMixture mixTrend(const TrendSeries& series, const Carried& carried)
{
    const Lanes lanes = run(series, carried);
    TrendMixture mix;
    mix.expectedGain =
        series.expectedBy(series.days.back()) - series.expectedBy(series.days.at(carried.node));
    mix.freedom = series.freedom + series.values - 1.0;
    Paces<double> log{};
    for (std::size_t i = 0; i < kTrendPaces; ++i) {
        mix.squares[i] = lanes.squares[i] / series.variance;
        mix.variance[i] = series.variance * (series.freedom + mix.squares[i]) / mix.freedom;
        log[i] = -0.5 * lanes.logDeterminant[i] -
                 0.5 * mix.freedom * std::log(series.freedom + mix.squares[i]);
        mix.last[i] = {lanes.level[i],
                       lanes.slope[i],
                       lanes.levelVariance[i],
                       lanes.covariance[i],
                       lanes.slopeVariance[i]};
    }
    const double largest = *std::max_element(log.begin(), log.end());
    double sum = 0.0;
    for (std::size_t i = 0; i < kTrendPaces; ++i) {
        mix.share[i] = series.paces[i] * std::exp(log[i] - largest);
        sum += mix.share[i];
    }
    for (double& share : mix.share) {
        share /= sum;
    }
    mix.logEvidence = largest + std::log(sum);
    mix.carried = lanes.carried;
    mix.carriedVariance = lanes.carriedVariance;
    mix.withLevel = lanes.withLevel;
    mix.withSlope = lanes.withSlope;
    return mix;
}

} // namespace levelbar
