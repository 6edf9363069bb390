// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/strength/strength.h"

#include "core/base/square.h"
#include "core/strength/personal_curve.h"
#include "core/strength/rep_curve.h"
#include "core/strength/side_offset.h"

#include <cmath>

namespace levelbar {

namespace {

constexpr int kRecentDays = 28;
constexpr int kOldDays = 84;

Estimate logNormal(double centre, double spread, int count)
{
    return {std::exp(centre),
            std::exp(centre - kNormalQuantile * spread),
            std::exp(centre + kNormalQuantile * spread),
            kLevel,
            count};
}

} // namespace

std::string_view evidenceWord(Evidence evidence)
{
    switch (evidence) {
    case Evidence::Recent:
        return "recent";
    case Evidence::GettingOld:
        return "getting_old";
    case Evidence::TooOld:
        break;
    }
    return "too_old";
}

Evidence evidenceOf(Day last, Day today)
{
    const int age = today - last;
    if (age <= kRecentDays) {
        return Evidence::Recent;
    }
    return age <= kOldDays ? Evidence::GettingOld : Evidence::TooOld;
}

StrengthEstimate strengthOf(const ExerciseFit& exercise, Side side, Day today)
{
    const StrengthFit& fit = exercise.fit;
    const double offset = sideOffset(side);
    const double variance = fit.levelVariance + offset * offset * fit.differenceVariance +
                            2.0 * offset * fit.levelDifferenceCovariance;
    StrengthEstimate estimate;
    estimate.logSpread = std::sqrt(std::max(variance, 1e-12));
    estimate.oneRepMax = logNormal(
        fit.level + offset * fit.difference, estimate.logSpread, exercise.evidence.measured);
    estimate.repCurveFactor =
        logNormal(fit.factor, std::sqrt(fit.factorVariance), exercise.evidence.measured);
    estimate.bounds = exercise.evidence.bounds;
    estimate.lastSet = exercise.evidence.days.empty() ? today : exercise.evidence.days.back();
    estimate.evidence = evidenceOf(estimate.lastSet, today);
    estimate.isFromRelated = exercise.isFromRelated;
    return estimate;
}

RepsAtFourFifths repsAtFourFifths(const ExerciseFit& exercise, const RepCurveExpectation& curve)
{
    const StrengthFit& fit = exercise.fit;
    const double plain = repsAtFraction(0.8);
    const auto beyondFirst = [&](double factor, double shape) {
        return (plain - 1.0) * bendCurve(plain, factor, shape, fit.shapeFrom).factor;
    };
    const double turn = bendCurve(plain, 0.0, 0.0, fit.shapeFrom).logReps;
    const double variance = fit.factorVariance + square(turn) * fit.shapeVariance +
                            2.0 * turn * fit.factorShapeCovariance;
    const double own = beyondFirst(fit.factor, fit.shape);
    const double reach = std::exp(kNormalQuantile * std::sqrt(std::max(variance, 0.0)));
    RepsAtFourFifths reps;
    reps.own = {
        1.0 + own, 1.0 + own / reach, 1.0 + own * reach, kLevel, exercise.evidence.measured};
    // The curve lies in the middle of people; their mean is higher, as published.
    reps.average = 1.0 + beyondFirst(curve.factor - kPublishedLogFactor, curve.shape);
    reps.people = curve.people;
    return reps;
}

} // namespace levelbar
