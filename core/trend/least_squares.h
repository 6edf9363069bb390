// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/estimate.h"
#include "core/base/fault.h"

#include <span>
#include <vector>

namespace levelbar {

// y = coefficients[0] + coefficients[1] times the first column + ..., by least squares. Units:
// those of y, over those of the column. One column: see fitLine() in regression.h.
struct LinearFit {
    std::vector<double> coefficients; // intercept first
    std::vector<double> errors;       // standard errors
    double residualSquares = 0.0;
    double residualSpread = 0.0; // square root of residualSquares over the degrees of freedom
    double rSquared = 0.0;       // 0 to 1; 0 when y does not vary
    int count = 0;

    [[nodiscard]] double degreesOfFreedom() const
    {
        return static_cast<double>(count) - static_cast<double>(coefficients.size());
    }
};

// Columns and ys of one length, finite, more values than coefficients, no column a combination of
// others; NotInDomain otherwise. Centred, scaled, and by Householder's reflections (Golub 1965,
// Numer Math 7:206-216): certified data of NIST keep eleven digits.
[[nodiscard]] Result<LinearFit> fitColumns(std::span<const std::vector<double>> columns,
                                           std::span<const double> ys);

// A coefficient with its interval from Student's t; place < coefficients.size().
[[nodiscard]] Estimate
coefficientOf(const LinearFit& fit, std::size_t place, double level = kLevel);

} // namespace levelbar
