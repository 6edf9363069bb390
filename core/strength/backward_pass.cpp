// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/strength/backward_pass.h"

#include "core/base/square.h"

#include <algorithm>
#include <cmath>

namespace levelbar {

namespace {

constexpr double kMostFactor = 0.9; // |ln factor| in the linearisation
constexpr double kMostShape = 0.5;  // |shape| in the linearisation

StrengthPoint halfWay(const StrengthPoint& from, const StrengthPoint& to)
{
    return {0.5 * (to.level + from.level),
            0.5 * (to.factor + from.factor),
            0.5 * (to.shape + from.shape),
            0.5 * (to.fatigue + from.fatigue),
            0.5 * (to.difference + from.difference),
            0.5 * (to.day + from.day),
            0.5 * (to.sideDay + from.sideDay)};
}

double changeBetween(const StrengthPoint& from, const StrengthPoint& to)
{
    return std::max({std::abs(to.level - from.level),
                     std::abs(to.difference - from.difference),
                     std::abs(to.factor - from.factor),
                     0.2 * std::abs(to.shape - from.shape)});
}

} // namespace

template <bool kSides, bool kFatigue>
double BackwardPass<kSides, kFatigue>::movePoints(bool isDamped)
{
    Vector costate{};
    double change = 0.0;
    for (std::size_t j = m_records.nodes.size(); j-- > 0;) {
        const TimelineNode& node = m_records.timeline.nodes[j];
        NodeRecord& record = m_records.nodes[j];
        StrengthPoint& point = m_records.points[j];
        if (node.isPast) {
            passLookBack(costate);
        }
        for (int i = node.last; i-- > node.first;) {
            passSet(m_records.sets[static_cast<std::size_t>(i)], costate);
        }
        const StrengthPoint whole = pointAt(record, costate);
        const StrengthPoint next = isDamped ? halfWay(point, whole) : whole;
        change = std::max(change, changeBetween(point, next));
        point = next;
        if (node.hasSets()) {
            record.dayWeight = dayWeight(node, point);
        }
        passStep(record.step, costate);
    }
    return change;
}

template <bool kSides, bool kFatigue>
std::vector<SmoothedStrength> BackwardPass<kSides, kFatigue>::path(double shared) const
{
    std::vector<SmoothedStrength> path;
    Vector costate{};
    Matrix adjoint{};
    for (std::size_t j = m_records.nodes.size(); j-- > 0;) {
        const TimelineNode& node = m_records.timeline.nodes[j];
        const NodeRecord& record = m_records.nodes[j];
        if (node.isPast) {
            passLookBack(costate);
            passLookBack(adjoint);
        }
        for (int i = node.last; i-- > node.first;) {
            const SetRecord& set = m_records.sets[static_cast<std::size_t>(i)];
            passSet(set, costate);
            passSet(set, adjoint);
        }
        if (node.hasSets() || j + 1 == m_records.nodes.size()) {
            path.push_back(strengthAt(record, costate, adjoint));
            path.back().weeks = node.weeks;
            path.back().levelVariance += shared;
        }
        passStep(record.step, costate);
        passStep(record.step, adjoint);
    }
    std::reverse(path.begin(), path.end());
    return path;
}

template <bool kSides, bool kFatigue>
void BackwardPass<kSides, kFatigue>::passSet(const SetRecord& set, Vector& costate)
{
    double pull = set.innovation / set.variance;
    for (std::size_t c = 0; c < costate.size(); ++c) {
        pull += set.gain[c] * costate[c];
    }
    for (std::size_t c = 0; c < costate.size(); ++c) {
        costate[c] -= set.gradient[c] * pull;
    }
}

template <bool kSides, bool kFatigue>
void BackwardPass<kSides, kFatigue>::passSet(const SetRecord& set, Matrix& adjoint)
{
    Vector along{}; // adjoint times gain
    double inner = 1.0 / set.variance;
    for (std::size_t r = 0; r < along.size(); ++r) {
        for (std::size_t c = 0; c < along.size(); ++c) {
            along[r] += adjoint[r][c] * set.gain[c];
        }
        inner += along[r] * set.gain[r];
    }
    for (std::size_t r = 0; r < along.size(); ++r) {
        for (std::size_t c = 0; c < along.size(); ++c) {
            adjoint[r][c] += inner * set.gradient[r] * set.gradient[c] -
                             set.gradient[r] * along[c] - along[r] * set.gradient[c];
        }
    }
}

template <bool kSides, bool kFatigue>
void BackwardPass<kSides, kFatigue>::passStep(const TrendStep& step, Vector& costate)
{
    costate[State::Slope] = step.mix * costate[State::Level] + step.keep * costate[State::Slope];
    costate[State::Day] = 0.0;
    if constexpr (kSides) {
        costate[State::SideDay] = 0.0;
    }
}

template <bool kSides, bool kFatigue>
void BackwardPass<kSides, kFatigue>::passStep(const TrendStep& step, Matrix& adjoint)
{
    for (std::size_t c = 0; c < adjoint.size(); ++c) {
        adjoint[State::Slope][c] =
            step.mix * adjoint[State::Level][c] + step.keep * adjoint[State::Slope][c];
    }
    for (Vector& row : adjoint) {
        row[State::Slope] = step.mix * row[State::Level] + step.keep * row[State::Slope];
    }
    State::clear(adjoint, State::Day);
    if constexpr (kSides) {
        State::clear(adjoint, State::SideDay);
    }
}

// Before the look-back, Past is the level itself.
template <bool kSides, bool kFatigue>
void BackwardPass<kSides, kFatigue>::passLookBack(Vector& costate)
{
    costate[State::Level] += costate[State::Past];
    costate[State::Past] = 0.0;
}

template <bool kSides, bool kFatigue>
void BackwardPass<kSides, kFatigue>::passLookBack(Matrix& adjoint)
{
    for (std::size_t c = 0; c < adjoint.size(); ++c) {
        adjoint[State::Level][c] += adjoint[State::Past][c];
    }
    for (Vector& row : adjoint) {
        row[State::Level] += row[State::Past];
    }
    State::clear(adjoint, State::Past);
}

template <bool kSides, bool kFatigue>
double
BackwardPass<kSides, kFatigue>::smoothed(const NodeRecord& record, const Vector& costate, int place)
{
    double value = record.predicted[State::at(place)];
    const Vector& row = record.covariance[State::at(place)];
    for (std::size_t c = 0; c < costate.size(); ++c) {
        value -= row[c] * costate[c];
    }
    return value;
}

template <bool kSides, bool kFatigue>
double BackwardPass<kSides, kFatigue>::smoothed(const NodeRecord& record,
                                                const Matrix& adjoint,
                                                int place,
                                                int otherPlace)
{
    const Matrix& covariance = record.covariance;
    const std::size_t a = State::at(place);
    const std::size_t b = State::at(otherPlace);
    double value = covariance[a][b];
    for (std::size_t r = 0; r < covariance.size(); ++r) {
        for (std::size_t c = 0; c < covariance.size(); ++c) {
            value -= covariance[a][r] * adjoint[r][c] * covariance[c][b];
        }
    }
    return value;
}

// A Student-t day: the farther off, the less it is held to the usual spread.
template <bool kSides, bool kFatigue>
double BackwardPass<kSides, kFatigue>::dayWeight(const TimelineNode& node,
                                                 const StrengthPoint& point) const
{
    const double tail = m_records.parameters.dayTail;
    NormalPrior usual{0.0, square(m_records.parameters.daySpread)};
    if (!m_records.input.days.empty()) {
        usual = m_records.input.days[static_cast<std::size_t>(node.day)];
    }
    return (tail + 1.0) / (tail + square(point.day - usual.mean) / usual.variance);
}

template <bool kSides, bool kFatigue>
StrengthPoint BackwardPass<kSides, kFatigue>::pointAt(const NodeRecord& record,
                                                      const Vector& costate) const
{
    StrengthPoint point;
    point.level = smoothed(record, costate, State::Level);
    point.factor = std::clamp(smoothed(record, costate, State::Factor), -kMostFactor, kMostFactor);
    point.shape = std::clamp(smoothed(record, costate, State::Shape), -kMostShape, kMostShape);
    point.day = smoothed(record, costate, State::Day);
    point.fatigue = m_records.parameters.fatigue;
    if constexpr (kSides) {
        point.difference = smoothed(record, costate, State::Difference);
        point.sideDay = smoothed(record, costate, State::SideDay);
    }
    if constexpr (kFatigue) {
        point.fatigue = smoothed(record, costate, State::kFatigueAt);
    }
    return point;
}

template <bool kSides, bool kFatigue>
SmoothedStrength BackwardPass<kSides, kFatigue>::strengthAt(const NodeRecord& record,
                                                            const Vector& costate,
                                                            const Matrix& adjoint) const
{
    SmoothedStrength past;
    past.level = smoothed(record, costate, State::Level);
    past.levelVariance = std::max(0.0, smoothed(record, adjoint, State::Level, State::Level));
    if constexpr (kSides) {
        past.difference = smoothed(record, costate, State::Difference);
        past.differenceVariance =
            std::max(0.0, smoothed(record, adjoint, State::Difference, State::Difference)) +
            square(m_records.parameters.sideScaleError * past.difference);
        past.levelDifferenceCovariance = smoothed(record, adjoint, State::Level, State::Difference);
    }
    return past;
}

template class BackwardPass<false, false>;
template class BackwardPass<false, true>;
template class BackwardPass<true, false>;
template class BackwardPass<true, true>;

} // namespace levelbar
