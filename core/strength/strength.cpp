// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/strength/strength.h"

#include <cmath>

namespace levelbar {

namespace {

constexpr int kRecentDays = 28;
constexpr int kOldDays = 84;

double sideOffset(Side side)
{
    return side == Side::Left ? -0.5 : (side == Side::Right ? 0.5 : 0.0);
}

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

} // namespace levelbar
