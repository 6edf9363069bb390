// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/estimate.h"
#include "core/trend/trend_noise.h"

#include <cstddef>
#include <optional>
#include <span>

namespace levelbar {

// A day on which a straight trend turned into another without a jump.
struct TrendKink {
    Day day;               // the likeliest, one with a value
    Day earliest;          // holds the truth nine times in ten, with `latest`
    Day latest;            //
    Estimate before;       // change a week, percent or the measure's unit
    Estimate after;        //
    double evidence = 0.0; // Bayes factor over no kink
};

// What a kink needs: strong evidence (Kass and Raftery 1995, JASA 90:773-795: 20 to 150), and
// four values on either side.
inline constexpr double kStrongEvidence = 20.0;
inline constexpr std::size_t kKinkValues = 4;

// The kink when the values show one clearly, nothing when they do not. A slope that changes on one
// day against one that wanders as slopes on this roster do: the ratio of how well either explains
// the values (their marginal likelihood), averaged over days; the change has the prior of people's
// slopes. `before` and `after` are two straight lines that meet on the day, by least squares. Off
// days weigh less, the noise is held near the roster's. One kink at most. Errors as checkSeries().
// Cost: square of the count.
[[nodiscard]] Result<std::optional<TrendKink>>
findKink(std::span<const DatedValue> series, const TrendMeasure& measure, const TrendNoise& noise);

} // namespace levelbar
