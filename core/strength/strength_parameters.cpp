// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/strength/strength_parameters.h"

#include "core/base/square.h"

#include <cmath>

namespace levelbar {

void learnsToTest(StrengthParameters& parameters)
{
    constexpr double kLearningWalk = 0.20; // ln per sqrt(week)
    parameters.learningWalk = kLearningWalk;
    parameters.guessReach = 2.0;
}

StrengthParameters forExperience(std::optional<Experience> experience)
{
    StrengthParameters parameters;
    if (!experience) {
        parameters.firstSlopeSpread = 0.006;
        return parameters;
    }
    switch (*experience) {
    case Experience::Novice:
        parameters.firstSlope = 0.010;
        parameters.firstSlopeSpread = 0.008;
        break;
    case Experience::Intermediate:
        parameters.firstSlope = 0.0035;
        parameters.firstSlopeSpread = 0.004;
        break;
    case Experience::Advanced:
        parameters.firstSlope = 0.0012;
        parameters.firstSlopeSpread = 0.0025;
        break;
    }
    return parameters;
}

StrengthParameters forPrior(const StrengthPrior& prior)
{
    StrengthParameters parameters = forExperience(prior.experience);
    const RepCurveExpectation published;
    parameters.expectedFactor = prior.curve.factor;
    parameters.expectedShape = prior.curve.shape;
    parameters.factorSpread = std::sqrt(square(parameters.factorSpread) - published.factorVariance +
                                        prior.curve.factorVariance);
    parameters.shapeSpread = std::sqrt(square(parameters.shapeSpread) - published.shapeVariance +
                                       prior.curve.shapeVariance);
    return parameters;
}

} // namespace levelbar
