// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/member/member.h"

#include <optional>

namespace levelbar {

// Nuzzo 2024 gives the mean number of reps at a share of 1RM, over people whose rep-curve factors
// scatter by 0.30 in ln. A mean of factors lies 0.30^2 / 2 in ln above the factor in the middle.
inline constexpr double kPublishedLogFactor = -0.045;
// How far gyms lie from it, as standard deviations: published curves differ as much at eight reps,
// and as much in their trend.
inline constexpr double kFactorSpreadOfGyms = 0.10;
inline constexpr double kShapeSpreadOfGyms = 0.17;

// Where the rep curve of a gym's average person lies against the plain one of rep_curve.h.
struct RepCurveExpectation {
    double factor = kPublishedLogFactor; // ln
    double shape = 0.0;                  // change of ln factor per ln reps
    double factorVariance = kFactorSpreadOfGyms * kFactorSpreadOfGyms; // of the two above
    double shapeVariance = kShapeSpreadOfGyms * kShapeSpreadOfGyms;
    int people = 0; // who taught it; 0: as published

    friend bool operator==(const RepCurveExpectation&, const RepCurveExpectation&) = default;
};

// What is known of a person before any set.
struct StrengthPrior {
    std::optional<Experience> experience;
    RepCurveExpectation curve;
};

} // namespace levelbar
