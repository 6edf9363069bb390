// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <limits>
#include <vector>

// Weighted linear equations and their dense solution.
namespace levelbar::tests {

using Numbers = std::vector<double>;

inline constexpr double kAlways = -std::numeric_limits<double>::infinity();
inline constexpr double kEver = std::numeric_limits<double>::infinity();

// "The sum of coefficients times unknowns is value", give or take.
struct Equation {
    Numbers coefficients;
    double value = 0.0;
    double variance = 1.0; // > 0
    double week = kAlways; // of evidence
};

struct Solution {
    Numbers mean;
    std::vector<Numbers> covariance;

    // Of a weighted sum of unknowns.
    [[nodiscard]] double variance(const Numbers& weights) const;
};

// By the normal equations, with the evidence up to and including a week. Every unknown must be
// tied down.
[[nodiscard]] Solution solve(const std::vector<Equation>& equations, double until = kEver);

} // namespace levelbar::tests
