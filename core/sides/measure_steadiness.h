// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/sides/side_difference.h"

#include <optional>

namespace levelbar {

// How steady the left/right difference of a measure is in this roster. Spreads are in ln-percent,
// which near 0 are percent. The first three are what the lists reckon with; the rest are the
// numbers of papers, for whoever asks.
struct MeasureSteadiness {
    Measure measure;
    double thresholdPercent = kUsualThreshold;
    int people = 0;   // with a pair within the window
    int repeated = 0; // with two or more
    // One day's difference around the person's own: the roster's, and what nine in ten people lie
    // between.
    double daySpread = 0.0;
    double steadiest = 0.0;
    double unsteadiest = 0.0;
    // Of everyone's last two days; nothing for fewer than two people or when nothing varies. See
    // reliability.h.
    std::optional<Estimate> intraclass; // (3,1)
    std::optional<Estimate> typicalError;
    std::optional<double> detectable; // change between two days, 95 in 100
};

[[nodiscard]] MeasureSteadiness
steadinessOf(const MeasuredSides& sides, Day day, double usualThreshold = kUsualThreshold);

} // namespace levelbar
