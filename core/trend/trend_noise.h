// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/trend/dated_values.h"

#include <array>
#include <span>
#include <vector>

namespace levelbar {

// How fast slopes wander: four steps. A trend is read under each and averaged by how well each
// explains the values; a few values cannot tell them apart.
inline constexpr std::size_t kTrendPaces = 4;

// What the values of a measure are worth on this roster, in percent or the measure's unit.
struct TrendNoise {
    double spread = 4.0;      // of one value around the own line, of a typical person
    double firstError = 1.6;  // variance of the first value's error over that of later ones
    double slopeSpread = 1.5; // of people's first slopes around their mean, a week
    double firstSlope = 0.0;  // that mean
    double meanSlope = 0.0;   // of people's latest slopes, a week: where forecasts lead to
    std::array<double, kTrendPaces> paces{}; // shares, sum 1
    double freedom = 10.0; // how alike people are in spread: as if each had so many values more
    int series = 0;        // learnt from: with two values or more, the 300 longest
    int values = 0;        // theirs
};

// What is usual for the measure, for a roster nobody knows yet.
[[nodiscard]] TrendNoise usualNoise(const TrendMeasure& measure);

// Learnt from everyone's values, one series a person (and side), and held near what is usual:
// spread as if by 20 values more, slopes and first errors by 10 people more, paces by 8. Tests
// are learnt: a first value that lies apart is common (side_noise.h has the published factor).
// People's variances differ by an inverse gamma law (Smyth 2004, Stat Appl Genet Mol Biol 3:3), so
// that one unsteady person does not make everybody so; off days weigh less. Spread and slopes never
// under half of what is usual. Empty series are passed over; NotInDomain as checkSeries().
[[nodiscard]] Result<TrendNoise> poolTrendNoise(std::span<const std::vector<DatedValue>> all,
                                                const TrendMeasure& measure);

} // namespace levelbar
