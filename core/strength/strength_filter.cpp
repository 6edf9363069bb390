// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/strength/strength_filter.h"

#include "core/base/square.h"
#include "core/strength/backward_pass.h"
#include "core/strength/forward_pass.h"
#include "core/strength/personal_curve.h"
#include "core/strength/rep_curve.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace levelbar {

namespace {

constexpr int kDampedFrom = 9; // iteration from which steps are halved

// ln 1RM is doubted by a person's way of naming the reserve, which errs alike in all sets and so
// never averages out.
double sharedVariance(const StrengthInput& input, const StrengthParameters& parameters)
{
    double reserves = 0.0;
    int known = 0;
    for (const StrengthObservation& set : input.sets) {
        if (isReserveKnown(set)) {
            reserves += set.reserve;
            ++known;
        }
    }
    const double mean = known == 0 ? 4.0 : std::min(8.0, reserves / known);
    constexpr double kLevelPerRep = 0.026; // one rep is about 2.6 % of 1RM at any count
    return square(kLevelPerRep * (parameters.sharedReps + parameters.sharedRepsPerReserve * mean));
}

template <bool kSides, bool kFatigue> class Filter {
    using State = StrengthState<kSides, kFatigue>;

public:
    Filter(const StrengthInput& input, const StrengthParameters& parameters);

    StrengthFit fit(const FitOptions& options);

private:
    [[nodiscard]] StrengthFit report(int iterations) const;
    void reportCurve(StrengthFit& fit) const;
    void reportSides(StrengthFit& fit) const;
    [[nodiscard]] double dayVariance(std::size_t j) const;
    [[nodiscard]] bool isFinite(const StrengthFit& fit) const;

    StrengthRecords<kSides, kFatigue> m_records;
    ForwardPass<kSides, kFatigue> m_forward;
    BackwardPass<kSides, kFatigue> m_backward;
};

template <bool kSides, bool kFatigue>
Filter<kSides, kFatigue>::Filter(const StrengthInput& input, const StrengthParameters& parameters)
    : m_records{input, parameters, makeTimeline(input, parameters), 0.0, {}, {}, {}}
    , m_forward(m_records)
    , m_backward(m_records)
{
    const std::size_t count = m_records.timeline.nodes.size();
    m_records.nodes.resize(count);
    m_records.sets.resize(input.sets.size());
    m_records.points.resize(count);
    for (std::size_t j = 0; j < count; ++j) {
        m_records.nodes[j].step = stepTo(j, m_records.timeline, parameters);
    }
    const std::vector<double> guess = firstGuess(input, m_records.timeline, parameters);
    m_records.firstLevel = guess.front();
    if (input.start.size() == count) {
        m_records.points.assign(input.start.begin(), input.start.end());
        return;
    }
    for (std::size_t j = 0; j < count; ++j) {
        m_records.points[j].level = guess[j];
        m_records.points[j].fatigue = parameters.fatigue;
    }
}

template <bool kSides, bool kFatigue>
StrengthFit Filter<kSides, kFatigue>::fit(const FitOptions& options)
{
    int iteration = 0;
    for (bool isDone = false; !isDone;) {
        ++iteration;
        m_forward.run();
        const bool isLast = iteration >= options.mostIterations;
        if (isLast && !options.endsSmoothed) {
            break;
        }
        isDone = m_backward.movePoints(iteration >= kDampedFrom) < options.tolerance || isLast;
    }
    StrengthFit result = report(iteration);
    if (options.wantsPath) {
        const double own = m_forward.covariance()[State::Level][State::Level];
        result.path = m_backward.path(result.levelVariance - own);
    }
    return result;
}

template <bool kSides, bool kFatigue>
StrengthFit Filter<kSides, kFatigue>::report(int iterations) const
{
    const auto& state = m_forward.state();
    const auto& covariance = m_forward.covariance();
    StrengthFit fit;
    fit.iterations = iterations;
    fit.level = state[State::Level];
    fit.pastLevel = state[State::Past];
    fit.levelVariance = covariance[State::Level][State::Level];
    const double weeks = m_records.input.lookBack;
    fit.slope = (state[State::Level] - state[State::Past]) / weeks;
    fit.slopeVariance =
        (covariance[State::Level][State::Level] + covariance[State::Past][State::Past] -
         2.0 * covariance[State::Level][State::Past]) /
        square(weeks);
    reportCurve(fit);
    if constexpr (kSides) {
        reportSides(fit);
    }
    for (std::size_t j = 0; j < m_records.nodes.size(); ++j) {
        if (m_records.timeline.nodes[j].hasSets()) {
            fit.dayEffects.push_back({m_records.points[j].day, dayVariance(j)});
        }
    }
    fit.points = m_records.points;
    // The shared error shifts the level now and in the past alike, so the slope keeps its own
    // doubt.
    fit.levelVariance += sharedVariance(m_records.input, m_records.parameters);
    fit.isFinite = isFinite(fit);
    return fit;
}

template <bool kSides, bool kFatigue>
void Filter<kSides, kFatigue>::reportCurve(StrengthFit& fit) const
{
    const auto& state = m_forward.state();
    const auto& covariance = m_forward.covariance();
    fit.factor = state[State::Factor];
    fit.shape = state[State::Shape];
    fit.shapeFrom = m_records.parameters.shapeFrom;
    fit.factorVariance = covariance[State::Factor][State::Factor];
    fit.shapeVariance = covariance[State::Shape][State::Shape];
    fit.levelFactorCovariance = covariance[State::Level][State::Factor];
    fit.levelShapeCovariance = covariance[State::Level][State::Shape];
    fit.factorShapeCovariance = covariance[State::Factor][State::Shape];
}

template <bool kSides, bool kFatigue>
void Filter<kSides, kFatigue>::reportSides(StrengthFit& fit) const
{
    const auto& covariance = m_forward.covariance();
    fit.difference = m_forward.state()[State::Difference];
    fit.differenceVariance = covariance[State::Difference][State::Difference] +
                             square(m_records.parameters.sideScaleError * fit.difference);
    fit.levelDifferenceCovariance = covariance[State::Level][State::Difference];
}

// Of the day effect, given this day's sets and all before.
template <bool kSides, bool kFatigue>
double Filter<kSides, kFatigue>::dayVariance(std::size_t j) const
{
    const TimelineNode& node = m_records.timeline.nodes[j];
    double variance = m_records.nodes[j].covariance[State::Day][State::Day];
    for (int i = node.first; i < node.last; ++i) {
        const auto& set = m_records.sets[static_cast<std::size_t>(i)];
        variance -= square(set.gain[State::Day]) * set.variance;
    }
    return std::max(variance, 1e-8);
}

template <bool kSides, bool kFatigue>
bool Filter<kSides, kFatigue>::isFinite(const StrengthFit& fit) const
{
    double sum = fit.level;
    for (const auto& row : m_forward.covariance()) {
        sum = std::accumulate(row.begin(), row.end(), sum);
    }
    const auto& state = m_forward.state();
    return std::isfinite(std::accumulate(state.begin(), state.end(), sum));
}

template <bool kSides, bool kFatigue>
StrengthFit
fitWith(const StrengthInput& input, const StrengthParameters& parameters, const FitOptions& options)
{
    StrengthFit fit = Filter<kSides, kFatigue>(input, parameters).fit(options);
    if (!fit.isFinite) {
        // Not seen in any test; a plain curve cannot run away.
        StrengthParameters plain = parameters;
        plain.shapeSpread = 0.0;
        StrengthInput simple = input;
        simple.factor.variance = 0.0;
        fit = Filter<kSides, kFatigue>(simple, plain)
                  .fit({1, 1e-3, false, options.wantsPath, kFatigue});
    }
    return fit;
}

} // namespace

StrengthFit fitStrength(const StrengthInput& input,
                        const StrengthParameters& parameters,
                        const FitOptions& options)
{
    if (input.hasSides) {
        return options.learnsFatigue ? fitWith<true, true>(input, parameters, options)
                                     : fitWith<true, false>(input, parameters, options);
    }
    return options.learnsFatigue ? fitWith<false, true>(input, parameters, options)
                                 : fitWith<false, false>(input, parameters, options);
}

LoadForReps loadForReps(const StrengthFit& fit, double reps, double side)
{
    const auto allowed = [&fit](double plain) {
        return 1.0 + (plain - 1.0) * bendCurve(plain, fit.factor, fit.shape, fit.shapeFrom).factor;
    };
    double low = 1.0;
    double high = 40.0;
    for (int step = 0; step < 60; ++step) {
        const double middle = 0.5 * (low + high);
        (allowed(middle) < reps ? low : high) = middle;
    }
    const double plain = 0.5 * (low + high);
    const double fraction = repFraction(plain);
    const CurveBend bend = bendCurve(plain, fit.factor, fit.shape, fit.shapeFrom);
    const double rise = bend.factor * bend.steepness;
    const double byFactor = repCurveSteepness(plain, fraction) * (plain - 1.0) * bend.factor / rise;
    const double byShape = byFactor * bend.logReps;
    LoadForReps load;
    load.logLoad = fit.level + side * fit.difference + std::log(fraction);
    load.variance =
        fit.levelVariance + square(byFactor) * fit.factorVariance +
        square(byShape) * fit.shapeVariance + 2.0 * byFactor * fit.levelFactorCovariance +
        2.0 * byShape * fit.levelShapeCovariance +
        2.0 * byFactor * byShape * fit.factorShapeCovariance +
        square(side) * fit.differenceVariance + 2.0 * side * fit.levelDifferenceCovariance;
    return load;
}

} // namespace levelbar
