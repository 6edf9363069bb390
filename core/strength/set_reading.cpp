// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/strength/set_reading.h"

#include "core/base/square.h"
#include "core/strength/personal_curve.h"
#include "core/strength/rep_curve.h"

#include <algorithm>
#include <cmath>

namespace levelbar {

namespace {

constexpr double kMostEarlierSets = 4.0;

} // namespace

// Spread is taken at the predicted reps: taken at the logged ones it would tie a set's weight to
// its own error. Rep noise: Mitter 2022 (0.7 reps at 90 %, 1.1 at 70 %); reserve noise: Hackett
// 2017, Refalo 2023.
SetValue valueOf(const StrengthObservation& set, double predicted, const StrengthParameters& p)
{
    const double reps = std::clamp(predicted, 1.0, 30.0);
    const double spread = 0.55 + 0.04 * reps + 0.5 * std::max(0.0, reps - 15.0);
    const double noise = square(spread);
    switch (set.evidence) {
    case SetEvidence::Measured:
    case SetEvidence::Limit: {
        const double left = std::max(0.0, reps - set.reps);
        const double named = 0.73 + 0.13 * std::min(left, 5.0) + 0.35 * std::max(0.0, left - 5.0);
        const double value = set.reps + trueReserve(set.reserve, p);
        return {value, noise + square(named), noise + square(named)};
    }
    case SetEvidence::Tested: {
        // Its spread does not grow with the prediction: that nothing was left is known.
        const double tested = square(p.testedSpread);
        return {set.reps, tested, tested};
    }
    case SetEvidence::AtLeast:
        return {set.reps + p.atLeastReps, noise + square(p.atLeastSpread), noise + square(p.wide)};
    case SetEvidence::Rough:
        return {set.reps + 1.0, noise + square(p.atLeastSpread), noise + square(p.roughSpread)};
    case SetEvidence::AtMost:
        return {0.5, noise + square(p.wide), noise + square(p.atLeastSpread)};
    }
    return {};
}

bool isReserveKnown(const StrengthObservation& set)
{
    return set.evidence == SetEvidence::Measured || set.evidence == SetEvidence::Limit ||
           set.evidence == SetEvidence::Tested;
}

double tiringSets(const StrengthObservation& set)
{
    return std::min(set.earlierSets, kMostEarlierSets);
}

// The part of the prediction that sets of one load and side share.
void SetReader::readCurve(const StrengthObservation& set)
{
    m_hasCurve = true;
    m_load = set.logLoad;
    m_side = set.side;
    const double level = m_point.level + set.side * m_point.difference;
    const double fraction = std::exp(set.logLoad - level);
    const double reps = repsAtFraction(fraction);
    m_isTest = set.evidence == SetEvidence::Tested;
    // One rep is one rep on everybody's curve: were a test to bend it, a small factor would
    // explain away how tests scatter.
    const CurveBend bend =
        m_isTest ? CurveBend()
                 : bendCurve(reps, m_point.factor, m_point.shape, m_parameters.shapeFrom);
    m_logReps = bend.logReps;
    m_repsBeyondFirst = (reps - 1.0) * bend.factor;
    m_repsPerFactor = m_isTest ? 0.0 : m_repsBeyondFirst;
    // How many reps more a one-unit rise of ln 1RM allows; never flatter than 0.3 of plain.
    m_repsPerLevel =
        bend.factor / repCurveSteepness(reps, fraction) * std::max(0.3, bend.steepness);
}

} // namespace levelbar
