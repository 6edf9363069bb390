// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace levelbar {

// Thin names over Boost.Math, whose headers are slow to compile.

// Standard normal: P(Z <= x).
[[nodiscard]] double normalBelow(double x);

// The value with P(Z <= value) = probability (0 < probability < 1).
[[nodiscard]] double normalQuantile(double probability);

// Student's t: P(T <= x), and the value with P(T <= value) = probability (0 < probability < 1).
// degreesOfFreedom > 0.
[[nodiscard]] double studentBelow(double x, double degreesOfFreedom);
[[nodiscard]] double studentQuantile(double probability, double degreesOfFreedom);

// Quantiles of chi-square and of Fisher's F; 0 < probability < 1, degrees of freedom > 0.
[[nodiscard]] double chiSquareQuantile(double probability, double degreesOfFreedom);
[[nodiscard]] double fisherQuantile(double probability, double above, double below);

} // namespace levelbar
