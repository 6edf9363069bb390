// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/strength/expected_reps.h"

#include "core/strength/personal_curve.h"
#include "core/strength/rep_curve.h"

#include <cmath>

namespace levelbar {

ExpectedReps expectedReps(const StrengthFit& fit, double logLoad, double side)
{
    const double fraction = std::exp(logLoad - fit.level - side * fit.difference);
    const double plain = repsAtFraction(fraction);
    const CurveBend bend = bendCurve(plain, fit.factor, fit.shape, fit.shapeFrom);
    const double byFactor = (plain - 1.0) * bend.factor;
    const double byShape = byFactor * bend.logReps;
    const double byLevel = bend.factor * bend.steepness / repCurveSteepness(plain, fraction);
    const double levelVariance = fit.levelVariance + side * side * fit.differenceVariance +
                                 2.0 * side * fit.levelDifferenceCovariance;
    ExpectedReps expected;
    expected.reps = 1.0 + byFactor;
    expected.variance = byLevel * byLevel * levelVariance +
                        byFactor * byFactor * fit.factorVariance +
                        byShape * byShape * fit.shapeVariance +
                        2.0 * byLevel * byFactor * fit.levelFactorCovariance +
                        2.0 * byLevel * byShape * fit.levelShapeCovariance +
                        2.0 * byFactor * byShape * fit.factorShapeCovariance;
    return expected;
}

} // namespace levelbar
