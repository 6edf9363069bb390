// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace levelbar {

// Thin names over Boost.Math, whose headers are slow to compile.

// Standard normal: P(Z <= x).
[[nodiscard]] double normalBelow(double x);

// Student's t: P(T <= x), and the value with P(T <= value) = probability (0 < probability < 1).
// degreesOfFreedom > 0.
[[nodiscard]] double studentBelow(double x, double degreesOfFreedom);
[[nodiscard]] double studentQuantile(double probability, double degreesOfFreedom);

} // namespace levelbar
