// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/estimate.h"
#include "core/base/fault.h"

#include <span>

namespace levelbar {

// How points far off a line weigh. Huber: as many standard deviations at most as 1.345; keeps 95 %
// of the efficiency (Huber 1964, Ann Math Statist 35:73-101). Bisquare: less and less, nothing
// beyond 4.685; the same efficiency, and stands many bad points (Beaton and Tukey 1974,
// Technometrics 16:147-185).
enum class RobustLoss { Huber, Bisquare };

// y = intercept + slope x; units as given.
struct RobustLine {
    double intercept = 0.0;
    double slope = 0.0;
    double interceptError = 0.0; // standard errors (Huber 1981, Robust Statistics, 7.6)
    double slopeError = 0.0;
    double spread = 0.0; // of one value: median size of residuals over 0.6745
    int count = 0;
};

// Iterated weights from the line of Theil and Sen, until nothing moves by over a millionth of the
// spread. Where half the points lie on one line exactly, that line with errors 0. NotInDomain: as
// fitLine(), and when the weights do not settle.
[[nodiscard]] Result<RobustLine>
fitRobustLine(std::span<const double> xs, std::span<const double> ys, RobustLoss loss);

// The slope with its interval from Student's t with count - 2 degrees of freedom.
[[nodiscard]] Estimate slopeOf(const RobustLine& line, double level = kLevel);

} // namespace levelbar
