// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/strength/expected_learning.h"

#include "core/strength/rep_curve.h"
#include "core/strength/set_reading.h"

#include <algorithm>
#include <cmath>

namespace levelbar {

namespace {

// Scalar update of a Kalman filter, for the level of one side alone: with `sets` alike on one day
// the day's part of the error stays and the sets' own shrinks.
double fallAfter(
    const StrengthFit& fit, const SetReading& reading, double side, double dayVariance, int sets)
{
    if (sets == 0) {
        return 0.0;
    }
    const double levelOfSide = fit.levelVariance + side * side * fit.differenceVariance +
                               2.0 * side * fit.levelDifferenceCovariance;
    // Covariance of the side's level with what the set shows, and the set's variance before it.
    const double shown = reading.perLevel * levelOfSide +
                         reading.perFactor * fit.levelFactorCovariance +
                         reading.perShape * fit.levelShapeCovariance;
    const double spread = reading.perLevel * shown +
                          reading.perFactor * (reading.perLevel * fit.levelFactorCovariance +
                                               reading.perFactor * fit.factorVariance +
                                               2.0 * reading.perShape * fit.factorShapeCovariance) +
                          reading.perShape * (reading.perLevel * fit.levelShapeCovariance +
                                              reading.perShape * fit.shapeVariance);
    const double error =
        square(reading.perLevel) * dayVariance + reading.variance / static_cast<double>(sets);
    return square(shown) / (std::max(spread, 0.0) + error);
}

} // namespace

double
expectedFall(const StrengthFit& fit, const ComingSet& set, const StrengthParameters& parameters)
{
    StrengthObservation seen;
    seen.logLoad = set.logLoad;
    seen.side = set.side;
    seen.evidence = set.reserve > 0.0 ? SetEvidence::Measured : SetEvidence::Limit;
    seen.reps = set.reps;
    seen.reserve = set.reserve;
    StrengthPoint point;
    point.level = fit.level;
    point.factor = fit.factor;
    point.shape = fit.shape;
    point.difference = fit.difference;
    SetReading reading = SetReader(parameters, point).read(seen);
    // The error as it is when the set goes as expected, not as far off as the plan may be.
    const double predicted = set.reps + set.reserve;
    reading.variance = valueOf(seen, predicted, parameters).lowVariance;
    const double dayVariance = square(parameters.daySpread) + square(parameters.exerciseDaySpread);
    const double before = fallAfter(fit, reading, set.side, dayVariance, set.seenToday);
    const double after = fallAfter(fit, reading, set.side, dayVariance, set.seenToday + 1);
    return std::max(0.0, after - before);
}

double expectedFallUnknown(const ComingSet& set, const StrengthParameters& parameters)
{
    StrengthFit fit;
    fit.level = set.logLoad - std::log(repFraction(std::max(1.0, set.reps + set.reserve)));
    fit.levelVariance = square(parameters.startSpread);
    fit.factorVariance = square(parameters.factorSpread);
    fit.shapeVariance = square(parameters.shapeSpread);
    fit.differenceVariance = square(parameters.sideSpread);
    return expectedFall(fit, set, parameters);
}

} // namespace levelbar
