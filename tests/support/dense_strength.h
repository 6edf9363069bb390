// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

// The strength model a second time, for tested maxima alone: all unknowns of an exercise in one
// dense system of weighted equations, solved at once. Nothing of core is used, the numbers of the
// model are written out again. Level and slope at every day, the side difference, the rep-curve
// factor and shape and the days' effects have a normal prior each; a move between two days is an
// equation between their unknowns; a test is an equation after linearising. The answer of a
// filter and smoother that linearises at the same points must be the same but for rounding.
namespace levelbar::tests {

struct DenseTest {
    double week = 0.0; // any origin
    double kilograms = 0.0;
    double side = 0.0; // -0.5 left, 0 both, +0.5 right
};

// ln 1RM on a day with tests, or today, given everything up to today.
struct DensePast {
    double week = 0.0;
    double level = 0.0;
    double difference = 0.0;
    double levelVariance = 0.0;
    double differenceVariance = 0.0;
};

// ln 1RM (mean of both sides) and ln(right / left) today; slope: mean ln/week over the look-back.
struct DenseStrength {
    double level = 0.0;
    double difference = 0.0;
    double slope = 0.0;
    double levelVariance = 0.0;
    double differenceVariance = 0.0;
    double levelDifferenceCovariance = 0.0;
    double slopeVariance = 0.0;
    double factor = 0.0; // ln rep-curve factor
    double factorVariance = 0.0;
    std::vector<DensePast> past;
};

// One answer an exercise of one person. No exercise may be empty; tests in order of week, and
// none after `today`. Of two exercises or more, each learns the rep-curve factor and each day's
// effect from the others.
[[nodiscard]] std::vector<DenseStrength>
denseStrength(const std::vector<std::vector<DenseTest>>& exercises, double today);

} // namespace levelbar::tests
