// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/fault.h"

#include <optional>
#include <span>
#include <vector>

namespace levelbar {

// The local linear trend in continuous time: a level and a slope that wander, seen through noisy
// values at any times. Time in weeks; the rest in the value's unit. Durbin and Koopman 2012, Time
// Series Analysis by State Space Methods, 3.2; the integrated random walk of Wecker and Ansley
// 1983, JASA 78:81-89, whose steps add up: one of five weeks is one of two and one of three.
struct LocalTrendModel {
    double levelNoise = 0.0; // variance a week that the level gains by itself
    double slopeNoise = 0.0; // variance a week that the slope gains
};

// What is known of level and slope at one time: means, variances and covariance.
struct TrendState {
    double level = 0.0;
    double slope = 0.0;
    double levelVariance = 0.0;
    double covariance = 0.0;
    double slopeVariance = 0.0;
};

// The state `weeks` later (0 or more).
[[nodiscard]] constexpr TrendState
advanced(const TrendState& from, double weeks, const LocalTrendModel& model)
{
    TrendState to;
    to.level = from.level + weeks * from.slope;
    to.slope = from.slope;
    to.levelVariance =
        from.levelVariance + weeks * (2.0 * from.covariance + weeks * from.slopeVariance +
                                      model.levelNoise + model.slopeNoise * weeks * weeks / 3.0);
    to.covariance = from.covariance + weeks * (from.slopeVariance + 0.5 * model.slopeNoise * weeks);
    to.slopeVariance = from.slopeVariance + weeks * model.slopeNoise;
    return to;
}

// How a value differs from what was expected, and how far it moves level and slope.
struct Innovation {
    double surprise = 0.0;  // value - expected
    double precision = 0.0; // 1 / variance of the surprise; 0 for the first value of all
    double levelGain = 0.0;
    double slopeGain = 0.0;
};

// Takes a value in; `variance` is that of its error (above 0).
constexpr Innovation absorb(TrendState& state, double value, double variance)
{
    const double precision = 1.0 / (state.levelVariance + variance);
    const Innovation found{value - state.level,
                           precision,
                           state.levelVariance * precision,
                           state.covariance * precision};
    state.level += found.levelGain * found.surprise;
    state.slope += found.slopeGain * found.surprise;
    state.slopeVariance -= found.slopeGain * state.covariance;
    state.covariance *= variance * precision;
    state.levelVariance *= variance * precision;
    return found;
}

// A time in a series, with the value seen then, if any. The loosenings are variances that level
// and slope gain on the way here on top of the model's, as over a lay-off.
struct TrendNode {
    double weeks = 0.0; // since the node before; not used at the first
    std::optional<double> value;
    double variance = 1.0; // of the value's error
    double levelLoosening = 0.0;
    double slopeLoosening = 0.0;
};

struct FilteredTrend {
    std::vector<TrendState> expected; // before the node's value, from those before
    std::vector<TrendState> known;    // with it
    double logLikelihood = 0.0;       // natural, with all constants
};

// Kalman's filter. `start` is what is known at the first node before its value; without it
// nothing is known of the level (the exact diffuse start: the first value is taken as it stands
// and adds only its constant to the likelihood) and the slope's variance is `slopeVariance`, 0 or
// more. NotInDomain when nodes are none, times or variances are not usable, a number is not
// finite, or the first node has no value and no start.
[[nodiscard]] Result<FilteredTrend> filterTrend(std::span<const TrendNode> nodes,
                                                const LocalTrendModel& model,
                                                const std::optional<TrendState>& start,
                                                double slopeVariance = 0.0);

// What all values say of each node (Rauch, Tung and Striebel 1965, AIAA J 3:1445-1450).
[[nodiscard]] std::vector<TrendState> smoothTrend(const FilteredTrend& filtered,
                                                  std::span<const TrendNode> nodes);

} // namespace levelbar
