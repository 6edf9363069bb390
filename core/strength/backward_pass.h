// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/strength/strength_state.h"

#include <vector>

namespace levelbar {

// The smoother from today back to the first set (modified Bryson-Frazier), inside the strength
// model only: needs no inverse, x = predicted - covariance * costate.
template <bool kSides, bool kFatigue> class BackwardPass {
    using State = StrengthState<kSides, kFatigue>;
    using Vector = typename State::Vector;
    using Matrix = typename State::Matrix;
    using NodeRecord = typename State::NodeRecord;
    using SetRecord = typename State::SetRecord;

public:
    explicit BackwardPass(StrengthRecords<kSides, kFatigue>& records)
        : m_records(records)
    {
    }

    // Moves the points to the smoothed means, or half the way, and weighs the days anew. Returns
    // the largest change of a point.
    double movePoints(bool isDamped);

    // Means and variances of the past given everything, by the adjoint covariance. `shared`: the
    // error that all days have in common.
    [[nodiscard]] std::vector<SmoothedStrength> path(double shared) const;

private:
    static void passSet(const SetRecord& set, Vector& costate);
    static void passSet(const SetRecord& set, Matrix& adjoint);
    static void passStep(const TrendStep& step, Vector& costate);
    static void passStep(const TrendStep& step, Matrix& adjoint);
    static void passLookBack(Vector& costate);
    static void passLookBack(Matrix& adjoint);
    static double smoothed(const NodeRecord& record, const Vector& costate, int place);
    static double
    smoothed(const NodeRecord& record, const Matrix& adjoint, int place, int otherPlace);

    [[nodiscard]] double dayWeight(const TimelineNode& node, const StrengthPoint& point) const;
    [[nodiscard]] StrengthPoint pointAt(const NodeRecord& record, const Vector& costate) const;
    [[nodiscard]] SmoothedStrength
    strengthAt(const NodeRecord& record, const Vector& costate, const Matrix& adjoint) const;

    StrengthRecords<kSides, kFatigue>& m_records;
};

extern template class BackwardPass<false, false>;
extern template class BackwardPass<false, true>;
extern template class BackwardPass<true, false>;
extern template class BackwardPass<true, true>;

} // namespace levelbar
