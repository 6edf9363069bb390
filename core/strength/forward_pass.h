// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/strength/set_reading.h"
#include "core/strength/strength_state.h"

namespace levelbar {

// The filter from the first set to today, inside the strength model only: writes the records of
// nodes and sets, and ends with the state at today.
template <bool kSides, bool kFatigue> class ForwardPass {
    using State = StrengthState<kSides, kFatigue>;
    using Vector = typename State::Vector;
    using Matrix = typename State::Matrix;

public:
    explicit ForwardPass(StrengthRecords<kSides, kFatigue>& records)
        : m_records(records)
    {
    }

    void run();

    [[nodiscard]] const Vector& state() const { return m_state; }

    [[nodiscard]] const Matrix& covariance() const { return m_covariance; }

private:
    void start();
    void move(const TrendStep& step);
    void takeBreak(const TimelineNode& node);
    void forget(int place);
    void enterDay(const TimelineNode& node, double weight);
    void update(std::size_t i, const SetReading& reading, const StrengthPoint& point);
    void absorb(typename State::SetRecord& record, double innovation, double noise);
    void rememberLevel();

    StrengthRecords<kSides, kFatigue>& m_records;
    Vector m_state{};
    Matrix m_covariance{};
    double m_lastTrained = 0.0; // weeks
    bool m_hasTrained = false;
    double m_excess = 0.0; // weeks of the break under way that were already counted
};

extern template class ForwardPass<false, false>;
extern template class ForwardPass<false, true>;
extern template class ForwardPass<true, false>;
extern template class ForwardPass<true, true>;

} // namespace levelbar
