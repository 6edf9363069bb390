// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/strength/forward_pass.h"

#include "core/base/square.h"

#include <algorithm>

namespace levelbar {

template <bool kSides, bool kFatigue> void ForwardPass<kSides, kFatigue>::run()
{
    start();
    m_hasTrained = false;
    m_excess = 0.0;
    for (std::size_t j = 0; j < m_records.nodes.size(); ++j) {
        const TimelineNode& node = m_records.timeline.nodes[j];
        const StrengthPoint& point = m_records.points[j];
        auto& record = m_records.nodes[j];
        if (j > 0) {
            move(record.step);
            takeBreak(node);
            forget(State::Day);
            if constexpr (kSides) {
                forget(State::SideDay);
            }
        }
        if (node.hasSets()) {
            enterDay(node, record.dayWeight);
        }
        record.predicted = m_state;
        record.covariance = m_covariance;
        SetReader reader(m_records.parameters, point);
        for (int i = node.first; i < node.last; ++i) {
            const auto set = static_cast<std::size_t>(i);
            update(set, reader.read(m_records.input.sets[set]), point);
        }
        if (node.isPast) {
            rememberLevel();
        }
    }
}

template <bool kSides, bool kFatigue> void ForwardPass<kSides, kFatigue>::start()
{
    const StrengthInput& input = m_records.input;
    const StrengthParameters& p = m_records.parameters;
    m_state = {};
    m_covariance = {};
    m_state[State::Level] = m_records.firstLevel;
    m_state[State::Slope] = p.firstSlope;
    m_state[State::Factor] = input.factor.mean;
    m_state[State::Shape] = p.expectedShape;
    m_covariance[State::Level][State::Level] = square(p.startSpread);
    m_covariance[State::Slope][State::Slope] = square(p.firstSlopeSpread);
    m_covariance[State::Factor][State::Factor] = input.factor.variance;
    m_covariance[State::Shape][State::Shape] = square(p.shapeSpread);
    if (input.level) {
        const double own = 1.0 / square(p.startSpread);
        const double related = 1.0 / input.level->variance;
        m_state[State::Level] =
            (own * m_records.firstLevel + related * input.level->mean) / (own + related);
        m_covariance[State::Level][State::Level] = 1.0 / (own + related);
    }
    if constexpr (kSides) {
        m_covariance[State::Difference][State::Difference] = square(p.sideSpread);
    }
    if constexpr (kFatigue) {
        m_state[State::kFatigueAt] = p.fatigue;
        m_covariance[State::kFatigueAt][State::kFatigueAt] = square(p.fatigueSpread);
    }
}

template <bool kSides, bool kFatigue>
void ForwardPass<kSides, kFatigue>::move(const TrendStep& step)
{
    constexpr int kLevel = State::Level;
    constexpr int kSlope = State::Slope;
    const double late = m_records.parameters.lateSlope;
    m_state[kLevel] += late * step.weeks + (m_state[kSlope] - late) * step.mix;
    m_state[kSlope] = late + (m_state[kSlope] - late) * step.keep;
    for (std::size_t c = 0; c < m_state.size(); ++c) {
        m_covariance[kLevel][c] += step.mix * m_covariance[kSlope][c];
        m_covariance[kSlope][c] *= step.keep;
    }
    for (Vector& row : m_covariance) {
        row[kLevel] += step.mix * row[kSlope];
        row[kSlope] *= step.keep;
    }
    m_covariance[kLevel][kLevel] += step.levelNoise;
    m_covariance[kLevel][kSlope] += step.crossNoise;
    m_covariance[kSlope][kLevel] += step.crossNoise;
    m_covariance[kSlope][kSlope] += step.slopeNoise;
    if constexpr (kSides) {
        m_covariance[State::Difference][State::Difference] +=
            square(m_records.parameters.sideWalk) * step.weeks;
    }
}

// What a break costs, counted from the last day with sets.
template <bool kSides, bool kFatigue>
void ForwardPass<kSides, kFatigue>::takeBreak(const TimelineNode& node)
{
    const StrengthParameters& p = m_records.parameters;
    if (!m_hasTrained) {
        return;
    }
    const double counted = std::min(node.weeks, m_records.input.layOffsUntil);
    const double excess =
        std::clamp(counted - m_lastTrained - m_records.timeline.freeGap, 0.0, p.longestBreak);
    const double growth = excess - m_excess;
    m_excess = excess;
    if (growth > 0.0) {
        m_state[State::Level] -= p.breakLoss * growth;
        m_covariance[State::Level][State::Level] += square(p.breakLossSpread) * growth;
    }
    if (node.hasSets() && excess > 0.0) {
        m_state[State::Slope] += p.regain;
        m_covariance[State::Slope][State::Slope] += square(p.regainSpread);
    }
}

template <bool kSides, bool kFatigue> void ForwardPass<kSides, kFatigue>::forget(int place)
{
    m_state[State::at(place)] = 0.0;
    State::clear(m_covariance, place);
}

template <bool kSides, bool kFatigue>
void ForwardPass<kSides, kFatigue>::enterDay(const TimelineNode& node, double weight)
{
    m_lastTrained = node.weeks;
    m_hasTrained = true;
    m_excess = 0.0;
    const StrengthParameters& p = m_records.parameters;
    const auto& days = m_records.input.days;
    if (days.empty()) {
        m_covariance[State::Day][State::Day] = square(p.daySpread) / weight;
    } else {
        const NormalPrior& day = days[static_cast<std::size_t>(node.day)];
        m_state[State::Day] = day.mean;
        m_covariance[State::Day][State::Day] = day.variance / weight;
    }
    if constexpr (kSides) {
        m_covariance[State::SideDay][State::SideDay] = square(p.sideDaySpread);
    }
}

template <bool kSides, bool kFatigue>
inline void ForwardPass<kSides, kFatigue>::update(std::size_t i,
                                                  const SetReading& reading,
                                                  const StrengthPoint& point)
{
    auto& record = m_records.sets[i];
    Vector& gradient = record.gradient;
    gradient = {};
    gradient[State::Level] = reading.perLevel;
    gradient[State::Factor] = reading.perFactor;
    gradient[State::Shape] = reading.perShape;
    gradient[State::Day] = reading.perLevel;
    double innovation = reading.residual -
                        reading.perLevel * (m_state[State::Level] - point.level) -
                        reading.perFactor * (m_state[State::Factor] - point.factor) -
                        reading.perShape * (m_state[State::Shape] - point.shape) -
                        reading.perLevel * (m_state[State::Day] - point.day);
    if constexpr (kSides) {
        const double perSide = m_records.input.sets[i].side * reading.perLevel;
        gradient[State::Difference] = perSide;
        gradient[State::SideDay] = perSide;
        innovation -= perSide * (m_state[State::Difference] - point.difference) +
                      perSide * (m_state[State::SideDay] - point.sideDay);
    }
    if constexpr (kFatigue) {
        gradient[State::kFatigueAt] = reading.perFatigue;
        innovation -= reading.perFatigue * (m_state[State::kFatigueAt] - point.fatigue);
    }
    absorb(record, innovation, reading.variance);
}

// The scalar Kalman update.
template <bool kSides, bool kFatigue>
inline void ForwardPass<kSides, kFatigue>::absorb(typename State::SetRecord& record,
                                                  double innovation,
                                                  double noise)
{
    const Vector& gradient = record.gradient;
    Vector spreadAlong{};
    double variance = noise;
    for (std::size_t r = 0; r < m_state.size(); ++r) {
        // The gradient is zero at Slope and Past.
        const Vector& row = m_covariance[r];
        double sum = gradient[State::Level] * (row[State::Level] + row[State::Day]) +
                     gradient[State::Factor] * row[State::Factor] +
                     gradient[State::Shape] * row[State::Shape];
        if constexpr (kSides) {
            sum += gradient[State::Difference] * (row[State::Difference] + row[State::SideDay]);
        }
        if constexpr (kFatigue) {
            sum += gradient[State::kFatigueAt] * row[State::kFatigueAt];
        }
        spreadAlong[r] = sum;
        variance += gradient[r] * sum;
    }
    record.innovation = innovation;
    record.variance = variance;
    const double precision = 1.0 / variance;
    for (std::size_t r = 0; r < m_state.size(); ++r) {
        record.gain[r] = spreadAlong[r] * precision;
        m_state[r] += record.gain[r] * innovation;
        Vector& row = m_covariance[r];
        for (std::size_t c = 0; c < row.size(); ++c) {
            row[c] -= record.gain[r] * spreadAlong[c];
        }
    }
}

template <bool kSides, bool kFatigue> void ForwardPass<kSides, kFatigue>::rememberLevel()
{
    m_state[State::Past] = m_state[State::Level];
    m_covariance[State::Past] = m_covariance[State::Level];
    for (Vector& row : m_covariance) {
        row[State::Past] = row[State::Level];
    }
    m_covariance[State::Past][State::Past] = m_covariance[State::Level][State::Level];
}

template class ForwardPass<false, false>;
template class ForwardPass<false, true>;
template class ForwardPass<true, false>;
template class ForwardPass<true, true>;

} // namespace levelbar
