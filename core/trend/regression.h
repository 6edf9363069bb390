// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/estimate.h"
#include "core/base/fault.h"

#include <span>

namespace levelbar {

// A straight line through points, y = intercept + slope x, by least squares (Draper and Smith 1998,
// Applied Regression Analysis, 1). Units as given: the slope's are those of y over those of x.
struct LineFit {
    double intercept = 0.0;
    double slope = 0.0;
    double interceptError = 0.0; // standard errors
    double slopeError = 0.0;
    double residualSpread = 0.0; // square root of residual sum of squares over (count - 2)
    int count = 0;
    double meanX = 0.0;
    double spreadX = 0.0; // sum of squared deviations of x
};

// xs and ys of one length, at least three points, xs not all equal, all finite; NotInDomain
// otherwise. Two-pass sums: certified data of NIST keep nine digits and more.
[[nodiscard]] Result<LineFit> fitLine(std::span<const double> xs, std::span<const double> ys);

// The slope, and the line's height at x, with their intervals from Student's t.
[[nodiscard]] Estimate slopeOf(const LineFit& fit, double level = kLevel);
[[nodiscard]] Estimate heightAt(const LineFit& fit, double x, double level = kLevel);

// Slope of Theil and Sen: the median of all slopes between pairs, with Sen's interval by the
// normal approximation of Kendall's statistic (Sen 1968, JASA 63:1379-1389). The same needs as
// fitLine. Cost: square of the count.
[[nodiscard]] Result<Estimate>
theilSenSlope(std::span<const double> xs, std::span<const double> ys, double level = kLevel);

} // namespace levelbar
