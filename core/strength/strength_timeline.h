// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/strength/strength_filter.h"

#include <vector>

// The days of a fit in order, the way from each to the next, and a first guess of ln 1RM on each;
// inside the strength model only.
namespace levelbar {

// A point in time: a day with sets, today, or the look-back.
struct TimelineNode {
    double weeks = 0.0;
    int first = 0; // sets [first, last)
    int last = 0;
    int day = -1; // index among the days with sets
    bool isPast = false;

    [[nodiscard]] bool hasSets() const { return last > first; }
};

struct StrengthTimeline {
    std::vector<TimelineNode> nodes; // ascending, never empty
    double firstWeek = 0.0;          // of the first day with sets
    double freeGap = 0.0;            // weeks without sets that cost nothing
    int days = 0;                    // with sets
};

// The way from one point in time to the next: the damped local linear trend over `weeks`, exact
// in continuous time and the same in every iteration.
struct TrendStep {
    double weeks = 0.0;
    double mix = 0.0;  // how much slope goes into level, in weeks
    double keep = 1.0; // how much of the slope is kept
    // Variances and covariance that are added.
    double levelNoise = 0.0;
    double crossNoise = 0.0;
    double slopeNoise = 0.0;
};

// At least one set.
[[nodiscard]] StrengthTimeline makeTimeline(const StrengthInput& input,
                                            const StrengthParameters& parameters);

// The way to node j from the one before; none to the first.
[[nodiscard]] TrendStep
stepTo(std::size_t j, const StrengthTimeline& timeline, const StrengthParameters& parameters);

// A first guess of ln 1RM at every node: each day's median, smoothed over five days, joined by
// straight lines and flat outside.
[[nodiscard]] std::vector<double> firstGuess(const StrengthInput& input,
                                             const StrengthTimeline& timeline,
                                             const StrengthParameters& parameters);

} // namespace levelbar
