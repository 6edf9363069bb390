// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <algorithm>
#include <cmath>

namespace levelbar {

// A person's rep curve, inside the strength model only: where the average person (rep_curve.h)
// does `reps` to the end, this one does 1 + (reps - 1) * factor, the factor changing with reps.
struct CurveBend {
    double factor = 1.0;
    double logReps = 0.0;   // ln of reps over the count where the shape does not matter
    double steepness = 1.0; // of the personal reps along the average ones, over factor
};

// logFactor: ln of the rep-curve factor; shape: how it changes with ln reps, from `shapeFrom` reps
// on. Published curves agree on no trend below that: drawn on to one rep, a shape seen between six
// and thirteen reps misjudges the maximum. In the header: this is the inner loop.
[[nodiscard]] inline CurveBend
bendCurve(double reps, double logFactor, double shape, double shapeFrom)
{
    constexpr double kShapeReps = 8.0; // where the shape does not matter
    const double shaped = std::max(reps, shapeFrom);
    CurveBend bend;
    bend.logReps = std::log(shaped / kShapeReps);
    bend.factor = std::exp(logFactor + shape * bend.logReps);
    bend.steepness = reps > shapeFrom ? 1.0 + (reps - 1.0) * shape / shaped : 1.0;
    return bend;
}

} // namespace levelbar
