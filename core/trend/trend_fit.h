// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/estimate.h"
#include "core/trend/local_trend.h"
#include "core/trend/trend_noise.h"

#include <vector>

// One person's values under the four paces at once; inside the trend engine only. The person's
// own variance is integrated out, so what comes out follows Student's t.
namespace levelbar {

// A series made ready: nodes by day, error variances and loosenings relative to the spread's
// square, days off the line already weighed down.
struct TrendSeries {
    std::vector<TrendNode> nodes;
    std::vector<Day> days; // of the nodes
    std::array<LocalTrendModel, kTrendPaces> models;
    std::array<double, kTrendPaces> paces{};
    double slopeVariance = 0.0; // of the first slope, relative as well
    double variance = 1.0;      // square of the spread
    double freedom = 0.0;       // prior
    double firstError = 1.0;    // variance of the first value's error
    double meanSlope = 0.0;     // the roster's
    double firstSlope = 0.0;    // expected; the values lie around a line of this slope
    int values = 0;

    // What is expected to be gained from the first day to that one; add it to what is reckoned of
    // the nodes' values.
    [[nodiscard]] double expectedBy(Day day) const;

    // Variance of the error of the i-th value when it is not off.
    [[nodiscard]] double usualError(std::size_t i) const { return i == 0 ? firstError : 1.0; }
};

// `series` must pass checkSeries().
[[nodiscard]] TrendSeries makeTrendSeries(std::span<const DatedValue> series,
                                          const TrendMeasure& measure,
                                          const TrendNoise& noise);

// The node of that day; makes one without a value where there is none. Not before the first.
std::size_t nodeAt(TrendSeries& series, Day day);

// A quantity's location, scale (squared), and degrees of freedom of its Student's t.
struct TrendGuess {
    double mean = 0.0;
    double variance = 0.0;
    double freedom = 0.0;

    [[nodiscard]] double above(double x) const; // probability
    // `quantile`: of its Student's t, as TrendMixture::quantile() gives it.
    [[nodiscard]] Estimate interval(double quantile, int count) const;
};

// Which quantity of an earlier node is carried along to the last.
struct Carried {
    std::size_t node = 0;
    bool isSlope = false; // else the level
};

template <typename T> using Paces = std::array<T, kTrendPaces>;

// What is known at the last node, by pace.
struct TrendMixture {
    Paces<double> share{};
    Paces<double> variance{}; // of one value: location of the person's own
    Paces<double> squares{};  // of surprises over what was expected
    Paces<TrendState> last;   // variances relative to `variance`
    // What was carried, with its covariances with the last level and slope.
    Paces<double> carried{};
    Paces<double> carriedVariance{};
    Paces<double> withLevel{};
    Paces<double> withSlope{};
    double expectedGain = 0.0; // from the carried node to the last
    double freedom = 0.0;
    double logEvidence = 0.0; // of the values, up to a constant of the series

    // Averages a quantity over the paces by its first two moments; variances relative.
    [[nodiscard]] TrendGuess average(const Paces<double>& means,
                                     const Paces<double>& variances) const;
    // What half of an interval is in scales.
    [[nodiscard]] double quantile() const;
    // The level `weeks` after the last node. Over six weeks the person's slope gives way to the
    // roster's: trends that are carried straight on miss by more (Gardner 1985, J Forecast
    // 4:1-28). The doubt is that of the slope carried on.
    [[nodiscard]] TrendGuess levelAfter(const TrendSeries& series, double weeks) const;
    // Of one value around its level, over the paces.
    [[nodiscard]] double valueVariance() const;
    // The last level minus the carried one, times a factor.
    [[nodiscard]] TrendGuess gain(double factor) const;
};

[[nodiscard]] TrendMixture mixTrend(const TrendSeries& series, const Carried& carried);

} // namespace levelbar
