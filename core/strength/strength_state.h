// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/strength/strength_filter.h"
#include "core/strength/strength_timeline.h"

#include <array>
#include <vector>

// The state of the strength filter and what its passes leave for each other; inside the strength
// model only.
namespace levelbar {

template <bool kSides, bool kFatigue> struct StrengthState {
    // Places. Past is the level at the look-back.
    enum Place : int { Level, Slope, Factor, Shape, Day, Past, Difference, SideDay };

    // Difference and SideDay exist with sides, fatigue (the last place) only when it is learnt.
    static constexpr int kSize = 6 + (kSides ? 2 : 0) + (kFatigue ? 1 : 0);
    static constexpr int kFatigueAt = kSize - 1;

    using Vector = std::array<double, static_cast<std::size_t>(kSize)>;
    using Matrix = std::array<Vector, static_cast<std::size_t>(kSize)>;

    static constexpr std::size_t at(int place) { return static_cast<std::size_t>(place); }

    static void clear(Matrix& matrix, int place)
    {
        for (int c = 0; c < kSize; ++c) {
            matrix[at(place)][at(c)] = 0.0;
            matrix[at(c)][at(place)] = 0.0;
        }
    }

    // What was expected at a node before its sets.
    struct NodeRecord {
        TrendStep step; // the way here; the same in every iteration
        Vector predicted{};
        Matrix covariance{};
        double dayWeight = 1.0; // 1 at the usual spread of days; less: a day far off
    };

    // How a set moved the state.
    struct SetRecord {
        Vector gradient{};
        Vector gain{};
        double innovation = 0.0;
        double variance = 1.0;
    };
};

// All of one fit. `input` and `parameters` must outlive it.
template <bool kSides, bool kFatigue> struct StrengthRecords {
    using State = StrengthState<kSides, kFatigue>;

    const StrengthInput& input;
    const StrengthParameters& parameters;
    StrengthTimeline timeline;
    double firstLevel = 0.0;                       // first guess of ln 1RM at the first node
    std::vector<typename State::NodeRecord> nodes; // one a node of the timeline
    std::vector<typename State::SetRecord> sets;   // one a set
    std::vector<StrengthPoint> points;             // one a node: where it is linearised
};

} // namespace levelbar
