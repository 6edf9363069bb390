// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>

namespace levelbar {

// How one person's push-up load differs from the formula's, as ln(own / formula's):
//   level + slope * rise,
// rise = height of the hands over stature; and how a bathroom scale under their hands differs
// from that load beyond its own noise:
//   push * rise,
// for a scale reads only what goes straight down, and on an incline friction lets each person
// choose the direction of their push. All three are normal. Without readings the mean is zero.
//
// Spreads of the average person, nine in ten within 1.645 of them:
// level 0.055: between people 0.050 (Mier 2014: SD 3.1 to 3.8 of 65 to 75 % of body weight on the
//   floor), between studies 0.024 (Suprak 2011, Mier 2014 men, women: -1.3, 0.0, +2.6 points);
// slope 0.32: TUNED so that the interval at 61 cm just holds the only forces published by hand
//   height (Ebben 2011: 0.64 of the floor's; the formula has 0.78);
// push 0.25: by geometry. A hand's push lies between square to the body and what arms square to
//   the body need when it goes straight down; at 61 cm that is +-15 % of the load.
struct PersonalLever {
    enum Part { Level = 0, Slope = 1, Push = 2, Parts = 3 };

    std::array<double, Parts> mean{};
    std::array<std::array<double, Parts>, Parts> covariance = {
        {{0.055 * 0.055, 0.0, 0.0}, {0.0, 0.32 * 0.32, 0.0}, {0.0, 0.0, 0.25 * 0.25}}};
    int readings = 0; // how many it was learnt from

    // ln of own over formula's load at a rise, and its variance.
    [[nodiscard]] double logFactor(double rise) const;
    [[nodiscard]] double logVariance(double rise) const;
};

// The lever after one reading: ln(reading / formula's load) = level + (slope + push) rise + noise.
// Precision-weighted (Bayes' rule for normals); the order of readings does not matter.
// noiseVariance > 0.
[[nodiscard]] PersonalLever
learnt(const PersonalLever& lever, double logRatio, double rise, double noiseVariance);

// Mean and variance that the lever expects of ln(reading / formula's load), without noise.
struct ExpectedReading {
    double mean = 0.0;
    double variance = 0.0;
};

[[nodiscard]] ExpectedReading expectedReading(const PersonalLever& lever, double rise);

} // namespace levelbar
