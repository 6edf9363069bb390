// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/trend/local_trend.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace levelbar {

namespace {

bool isVariance(double x)
{
    return std::isfinite(x) && x >= 0.0;
}

bool isUsable(const TrendNode& node)
{
    const bool isValueUsable = !node.value || (std::isfinite(*node.value) && node.variance > 0.0);
    return isValueUsable && isVariance(node.weeks) && isVariance(node.variance) &&
           isVariance(node.levelLoosening) && isVariance(node.slopeLoosening);
}

// One node back. `later` is what all values say of the next node, `expected` what those up to
// here said of it.
TrendState
smoothed(const TrendState& here, const TrendState& expected, const TrendState& later, double weeks)
{
    // Covariance of here with the next node, times the inverse of the next node's covariance.
    const double determinant =
        expected.levelVariance * expected.slopeVariance - expected.covariance * expected.covariance;
    const double levelLevel = here.levelVariance + weeks * here.covariance;
    const double slopeLevel = here.covariance + weeks * here.slopeVariance;
    std::array<std::array<double, 2>, 2> gain{};
    if (determinant > 0.0) {
        const std::array<std::array<double, 2>, 2> rows = {
            {{levelLevel, here.covariance}, {slopeLevel, here.slopeVariance}}};
        for (std::size_t i = 0; i < 2; ++i) {
            const auto [first, second] = rows.at(i);
            gain.at(i) = {
                (first * expected.slopeVariance - second * expected.covariance) / determinant,
                (second * expected.levelVariance - first * expected.covariance) / determinant};
        }
    } else { // the slope is known for certain, as in the local level model
        const bool isKnown = !(expected.levelVariance > 0.0);
        gain[0][0] = isKnown ? 0.0 : levelLevel / expected.levelVariance;
        gain[1][0] = isKnown ? 0.0 : slopeLevel / expected.levelVariance;
    }
    const double level = later.level - expected.level;
    const double slope = later.slope - expected.slope;
    const double a = later.levelVariance - expected.levelVariance;
    const double b = later.covariance - expected.covariance;
    const double c = later.slopeVariance - expected.slopeVariance;
    const auto product = [&](std::size_t i, std::size_t j) {
        return gain[i][0] * (a * gain[j][0] + b * gain[j][1]) +
               gain[i][1] * (b * gain[j][0] + c * gain[j][1]);
    };
    return {here.level + gain[0][0] * level + gain[0][1] * slope,
            here.slope + gain[1][0] * level + gain[1][1] * slope,
            here.levelVariance + product(0, 0),
            here.covariance + product(0, 1),
            here.slopeVariance + product(1, 1)};
}

} // namespace

Result<FilteredTrend> filterTrend(std::span<const TrendNode> nodes,
                                  const LocalTrendModel& model,
                                  const std::optional<TrendState>& start,
                                  double slopeVariance)
{
    const bool isFit = !nodes.empty() && (start || nodes.front().value) &&
                       isVariance(model.levelNoise) && isVariance(model.slopeNoise) &&
                       isVariance(slopeVariance) &&
                       std::all_of(nodes.begin(), nodes.end(), isUsable);
    if (!isFit) {
        return refuse(FaultCode::NotInDomain,
                      {std::to_string(nodes.size()) + " points",
                       "finite values in order of time, variances above 0"});
    }
    FilteredTrend run;
    run.expected.reserve(nodes.size());
    run.known.reserve(nodes.size());
    TrendState state = start.value_or(TrendState{});
    for (std::size_t i = 0; i < nodes.size(); ++i) {
        const TrendNode& node = nodes[i];
        if (i > 0) {
            state = advanced(state, node.weeks, model);
            state.levelVariance += node.levelLoosening;
            state.slopeVariance += node.slopeLoosening;
        }
        run.expected.push_back(state);
        if (i == 0 && !start) {
            state = {*node.value, 0.0, node.variance, 0.0, slopeVariance};
            run.logLikelihood -= 0.5 * std::log(2.0 * std::numbers::pi);
        } else if (node.value) {
            const Innovation found = absorb(state, *node.value, node.variance);
            run.logLikelihood -= 0.5 * (std::log(2.0 * std::numbers::pi / found.precision) +
                                        found.surprise * found.surprise * found.precision);
        }
        run.known.push_back(state);
    }
    return run;
}

std::vector<TrendState> smoothTrend(const FilteredTrend& filtered, std::span<const TrendNode> nodes)
{
    std::vector<TrendState> all = filtered.known;
    for (std::size_t i = all.size(); i-- > 1;) {
        all[i - 1] = smoothed(filtered.known[i - 1], filtered.expected[i], all[i], nodes[i].weeks);
    }
    return all;
}

} // namespace levelbar
