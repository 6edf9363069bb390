// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/trend/kink.h"

#include "core/base/distributions.h"
#include "core/base/square.h"
#include "core/trend/trend_fit.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace levelbar {

namespace {

// The straight line through weighted points, and what is left over it.
struct Line {
    std::vector<double> weeks; // around their mean
    std::vector<double> weights;
    std::vector<double> rest;
    double slope = 0.0;
    double spread = 0.0; // weighted squares of the weeks
    double squares = 0.0;
    double total = 0.0; // of the weights
};

Line lineThrough(const TrendSeries& series)
{
    Line line;
    double meanWeek = 0.0;
    double meanValue = 0.0;
    for (std::size_t i = 0; i < series.nodes.size(); ++i) {
        const double weight = 1.0 / series.nodes[i].variance;
        line.weights.push_back(weight);
        line.weeks.push_back((series.days[i] - series.days.front()) / 7.0);
        line.total += weight;
        meanWeek += weight * line.weeks.back();
        meanValue += weight * *series.nodes[i].value;
    }
    meanWeek /= line.total;
    meanValue /= line.total;
    double cross = 0.0;
    for (std::size_t i = 0; i < line.weeks.size(); ++i) {
        line.weeks[i] -= meanWeek;
        line.spread += line.weights[i] * square(line.weeks[i]);
        cross += line.weights[i] * line.weeks[i] * (*series.nodes[i].value - meanValue);
    }
    line.slope = cross / line.spread;
    for (std::size_t i = 0; i < line.weeks.size(); ++i) {
        line.rest.push_back(*series.nodes[i].value - meanValue - line.slope * line.weeks[i]);
        line.squares += line.weights[i] * square(line.rest.back());
    }
    return line;
}

// The bend at one point: how much slope is added from there on, how well that is known, and how
// the straight line's slope shares in it.
struct Bend {
    double slope = 0.0;
    double information = 0.0; // its variance is one value's over this
    double share = 0.0;       // of the bend that the straight line's slope has taken up
};

Bend bendAt(const Line& line, std::size_t point)
{
    double mean = 0.0;
    double cross = 0.0;
    double squares = 0.0;
    double toRest = 0.0;
    for (std::size_t i = point + 1; i < line.weeks.size(); ++i) {
        const double hinge = line.weeks[i] - line.weeks[point];
        mean += line.weights[i] * hinge;
        cross += line.weights[i] * hinge * line.weeks[i];
        squares += line.weights[i] * square(hinge);
        toRest += line.weights[i] * hinge * line.rest[i];
    }
    Bend bend;
    bend.share = cross / line.spread;
    bend.information = squares - square(mean) / line.total - square(cross) / line.spread;
    bend.slope = bend.information > 0.0 ? toRest / bend.information : 0.0;
    return bend;
}

// The two lines that meet at the point, by weighted least squares.
void addSlopes(TrendKink& kink, const TrendSeries& series, std::size_t point)
{
    const Line line = lineThrough(series);
    const Bend bend = bendAt(line, point);
    const double freedom = series.freedom + series.values - 3.0;
    const double left = line.squares - square(bend.slope) * bend.information;
    const double variance = (series.freedom * series.variance + left) / freedom;
    const auto slope = [&](double share) { // so much of the bend is added to the straight line's
        const double doubt = variance / line.spread + square(share) * variance / bend.information;
        const double half = studentQuantile(0.5 + kLevel / 2.0, freedom) * std::sqrt(doubt);
        const double value = series.firstSlope + line.slope + share * bend.slope;
        return Estimate{value, value - half, value + half, kLevel, series.values};
    };
    kink.before = slope(-bend.share);
    kink.after = slope(1.0 - bend.share);
}

// The interval of the day, from how well each explains the values. It reaches half a gap beyond
// the days it is made of: the truth lies between days with values as well.
void addDays(TrendKink& kink,
             std::span<const DatedValue> values,
             const std::vector<double>& factors,
             double sum)
{
    constexpr double kTail = (1.0 - kLevel) / 2.0;
    double below = 0.0;
    for (std::size_t i = 1; i < factors.size(); ++i) {
        const double before = below;
        below += factors[i] / sum;
        if (before <= kTail && below > kTail) {
            const int gap = values[i].day - values[i - 1].day;
            kink.earliest = std::min(kink.day, values[i].day - gap / 2);
        }
        if (before < 1.0 - kTail && below >= 1.0 - kTail) {
            const int gap = i + 1 < values.size() ? values[i + 1].day - values[i].day : 0;
            kink.latest = std::max(kink.day, values[i].day + gap / 2);
        }
    }
}

} // namespace

Result<std::optional<TrendKink>>
findKink(std::span<const DatedValue> values, const TrendMeasure& measure, const TrendNoise& noise)
{
    if (const auto checked = checkSeries(values, measure); !checked) {
        return tl::unexpected(checked.error());
    }
    const std::size_t count = values.size();
    if (count < 2 * kKinkValues || values.front().day == values.back().day) {
        return std::nullopt;
    }
    TrendSeries series = makeTrendSeries(values, measure, noise);
    // Candidates have enough values before and from them on.
    const double straight = mixTrend(series, {}).logEvidence;
    std::vector<double> factors(count, 0.0);
    double sum = 0.0;
    std::size_t best = kKinkValues;
    for (std::size_t i = kKinkValues; i + kKinkValues <= count; ++i) {
        TrendNode& node = series.nodes[i];
        const double usual = node.slopeLoosening;
        node.slopeLoosening += series.slopeVariance;
        factors[i] = std::exp(mixTrend(series, {}).logEvidence - straight);
        node.slopeLoosening = usual;
        sum += factors[i];
        best = factors[i] > factors[best] ? i : best;
    }
    const double evidence = sum / static_cast<double>(count - 2 * kKinkValues + 1);
    if (!(evidence >= kStrongEvidence)) {
        return std::nullopt;
    }
    TrendKink kink;
    kink.evidence = evidence;
    kink.day = kink.earliest = kink.latest = values[best].day;
    addDays(kink, values, factors, sum);
    addSlopes(kink, series, best);
    return kink;
}

} // namespace levelbar
