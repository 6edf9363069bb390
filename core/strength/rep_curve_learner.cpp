// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/strength/rep_curve_learner.h"

#include "core/base/square.h"

#include <algorithm>
#include <cmath>

namespace levelbar {

namespace {

// Assumed: see the class.
constexpr double kWeightOfPerson = 0.3;
// A tenth of what one person's sets can tell at most.
constexpr double kLeastTold = 0.1;

// A gym whose average is known: people around it scatter by their own spread alone.
RepCurveExpectation knownAverage()
{
    RepCurveExpectation curve;
    curve.factorVariance = 0.0;
    curve.shapeVariance = 0.0;
    return curve;
}

} // namespace

// With prior T and posterior P around the prior's mean, sets that tell of a person tell
// 1/T - P/T^2 of the mean of all people.
RepCurveLearner::Information RepCurveLearner::informationOf(const StrengthFit& fit,
                                                            const StrengthParameters& known)
{
    const double factor = square(known.factorSpread);
    const double shape = square(known.shapeSpread);
    Information told;
    told.factor = std::max(0.0, 1.0 / factor - fit.factorVariance / square(factor));
    told.shape = std::max(0.0, 1.0 / shape - fit.shapeVariance / square(shape));
    told.cross = -fit.factorShapeCovariance / (factor * shape);
    told.towardsFactor = (fit.factor - known.expectedFactor) / factor;
    told.towardsShape = (fit.shape - known.expectedShape) / shape;
    return told;
}

void RepCurveLearner::add(std::span<const ExerciseHistory> exercises,
                          std::optional<Experience> experience,
                          Day today)
{
    const StrengthPrior prior{experience, knownAverage()};
    const StrengthParameters known = forPrior(prior);
    Information sum;
    int count = 0;
    for (const ExerciseHistory& exercise : exercises) {
        const ExerciseHistory alone{exercise.both, exercise.left, exercise.right, std::nullopt};
        const auto fits = fitMember({&alone, 1}, prior, today);
        if (!fits.front() || fits.front()->evidence.measured == 0 || !fits.front()->fit.isFinite) {
            continue;
        }
        const Information told = informationOf(fits.front()->fit, known);
        sum.factor += told.factor;
        sum.cross += told.cross;
        sum.shape += told.shape;
        sum.towardsFactor += told.towardsFactor;
        sum.towardsShape += told.towardsShape;
        ++count;
    }
    if (count == 0) {
        return;
    }
    const double weight = kWeightOfPerson / count;
    m_sum.factor += weight * sum.factor;
    m_sum.cross += weight * sum.cross;
    m_sum.shape += weight * sum.shape;
    m_sum.towardsFactor += weight * sum.towardsFactor;
    m_sum.towardsShape += weight * sum.towardsShape;
    const double most = count / square(known.factorSpread);
    m_people += sum.factor > kLeastTold * most ? 1 : 0;
}

RepCurveExpectation RepCurveLearner::learnt() const
{
    RepCurveExpectation expected;
    if (m_people == 0) {
        return expected;
    }
    const double factor = m_sum.factor + 1.0 / square(kFactorSpreadOfGyms);
    const double shape = m_sum.shape + 1.0 / square(kShapeSpreadOfGyms);
    const double determinant = factor * shape - square(m_sum.cross);
    expected.factor +=
        (m_sum.towardsFactor * shape - m_sum.towardsShape * m_sum.cross) / determinant;
    expected.shape +=
        (m_sum.towardsShape * factor - m_sum.towardsFactor * m_sum.cross) / determinant;
    expected.factorVariance = shape / determinant;
    expected.shapeVariance = factor / determinant;
    expected.people = m_people;
    return expected;
}

} // namespace levelbar
