// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/trend/trend_noise.h"

#include "core/base/square.h"
#include "core/trend/trend_fit.h"

#include <algorithm>
#include <cmath>

namespace levelbar {

namespace {

// Weights of what is usual, and people's slopes: 1.25 % a week around their mean where 0.25
// matters. All assumed; beginners gain up to 2.5 % a week (from Steele 2022, RQES 94:913). Slopes
// wander slowly rather than fast, until a roster shows otherwise.
constexpr double kUsualValues = 20.0;
constexpr double kUsualPeople = 10.0;
constexpr double kUsualPaces = 8.0;
constexpr double kSlopePerMattering = 5.0;
constexpr double kLeastShare = 0.5; // of what is usual

constexpr double kMostFirst = 50.0;
constexpr double kMostSlopes = 2.0; // gains from learning the test are no slopes

constexpr std::size_t kMostSeries = 300; // the longest; more change nothing and take time
constexpr int kMostRounds = 40;
constexpr double kSettled = 2e-3; // largest relative change, and change of a share

struct Sums {
    double squares = 0.0; // relative to the spread so far
    double freedom = 0.0;
    double firsts = 0.0; // squares of first errors over what one later value's would be
    double slopes = 0.0; // squares of the first
    double first = 0.0;  // sum of the first
    double latest = 0.0; // sum of the last
    Paces<double> paces{};
};

void add(Sums& sums, const TrendSeries& series)
{
    const TrendMixture mix = mixTrend(series, {0, true});
    const TrendMixture levels = mixTrend(series, {0, false});
    double squares = 0.0;
    for (std::size_t i = 0; i < kTrendPaces; ++i) {
        sums.firsts += levels.share[i] *
                       (square(*series.nodes[0].value - levels.carried[i]) / levels.variance[i] +
                        levels.carriedVariance[i]);
        squares += mix.share[i] * mix.squares[i];
        sums.slopes +=
            mix.share[i] * (square(mix.carried[i]) + mix.variance[i] * mix.carriedVariance[i]);
        sums.first += mix.share[i] * (mix.carried[i] + series.firstSlope);
        sums.latest += mix.share[i] * (mix.last[i].slope + series.firstSlope);
        sums.paces[i] += mix.share[i];
    }
    sums.squares += squares * mix.freedom / (series.freedom + squares); // the unsteady weigh less
    sums.freedom += series.values - 1.0;
}

// One round of expectation-maximisation; returns the largest change.
double improve(TrendNoise& noise,
               std::span<const std::span<const DatedValue>> all,
               const TrendMeasure& measure)
{
    const TrendNoise usual = usualNoise(measure);
    const TrendNoise before = noise;
    Sums sums;
    for (const auto& series : all) {
        add(sums, makeTrendSeries(series, measure, noise));
    }
    const auto people = static_cast<double>(all.size());
    noise.spread =
        std::sqrt((kUsualValues * square(usual.spread) + square(before.spread) * sums.squares) /
                  (kUsualValues + sums.freedom));
    noise.slopeSpread = std::sqrt((kUsualPeople * square(usual.slopeSpread) + sums.slopes) /
                                  (kUsualPeople + people));
    noise.spread = std::max(noise.spread, kLeastShare * usual.spread);
    noise.slopeSpread = std::clamp(
        noise.slopeSpread, kLeastShare * usual.slopeSpread, kMostSlopes * usual.slopeSpread);
    noise.firstError = std::clamp(
        (kUsualPeople * usual.firstError + sums.firsts) / (kUsualPeople + people), 1.0, kMostFirst);
    noise.meanSlope = (kUsualPeople * usual.meanSlope + sums.latest) / (kUsualPeople + people);
    noise.firstSlope =
        std::clamp((kUsualPeople * usual.firstSlope + sums.first) / (kUsualPeople + people),
                   0.0,
                   kMostSlopes * usual.firstSlope);
    double change = std::max(std::abs(noise.spread / before.spread - 1.0),
                             std::abs(noise.slopeSpread / before.slopeSpread - 1.0));
    for (std::size_t i = 0; i < kTrendPaces; ++i) {
        noise.paces[i] = (kUsualPaces * usual.paces[i] + sums.paces[i]) / (kUsualPaces + people);
        change = std::max(change, std::abs(noise.paces[i] - before.paces[i]));
    }
    return change;
}

} // namespace

TrendNoise usualNoise(const TrendMeasure& measure)
{
    TrendNoise noise;
    noise.spread = measure.spread;
    noise.firstSlope = measure.expected;
    noise.meanSlope = measure.expected;
    noise.slopeSpread = kSlopePerMattering * measure.mattering;
    noise.paces = {0.4, 0.3, 0.2, 0.1};
    return noise;
}

Result<TrendNoise> poolTrendNoise(std::span<const std::vector<DatedValue>> all,
                                  const TrendMeasure& measure)
{
    TrendNoise noise = usualNoise(measure);
    std::vector<std::span<const DatedValue>> used;
    for (const auto& series : all) {
        if (series.empty()) {
            continue;
        }
        if (const auto checked = checkSeries(series, measure); !checked) {
            return tl::unexpected(checked.error());
        }
        if (series.size() > 1) {
            used.emplace_back(series);
        }
    }
    std::stable_sort(
        used.begin(), used.end(), [](const auto& a, const auto& b) { return a.size() > b.size(); });
    used.resize(std::min(used.size(), kMostSeries));
    noise.series = static_cast<int>(used.size());
    for (const auto& series : used) {
        noise.values += static_cast<int>(series.size());
    }
    for (int round = 0; round < kMostRounds && !used.empty(); ++round) {
        if (improve(noise, used, measure) < kSettled) {
            break;
        }
    }
    return noise;
}

} // namespace levelbar
