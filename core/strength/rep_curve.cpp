// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/strength/rep_curve.h"

#include <algorithm>
#include <cmath>

namespace levelbar {

namespace {

constexpr double kScale = 0.837677;
constexpr double kRate = 0.0338;
constexpr double kFloor = 0.176846;
constexpr double kSecondRep = 0.0402; // share lost from the first to the second rep
constexpr double kLeastFraction = 0.25;

} // namespace

double repFraction(double reps)
{
    if (reps <= 1.0) {
        return 1.0;
    }
    if (reps < 2.0) {
        return 1.0 - (reps - 1.0) * kSecondRep;
    }
    return kScale * std::exp(-kRate * reps) + kFloor;
}

double repsAtFraction(double fraction)
{
    if (fraction > 1.0 - kSecondRep) {
        return 1.0 + (1.0 - fraction) / kSecondRep;
    }
    const double share = std::max(fraction, kLeastFraction);
    return -std::log((share - kFloor) / kScale) / kRate;
}

double repCurveSteepness(double reps, double fraction)
{
    if (reps < 2.0) {
        return kSecondRep / fraction;
    }
    const double falling = std::max(fraction, kLeastFraction) - kFloor;
    return kRate * falling / (falling + kFloor);
}

} // namespace levelbar
