// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/gym/turn_costs.h"

#include <cstdint>
#include <span>
#include <vector>

namespace levelbar {

// Beyond this many lifters a cheapest round by subsets costs too much memory and time.
inline constexpr std::size_t kMostInExactRound = 20;

// The cheapest full round of a few lifters, exactly: the travelling-salesman problem by dynamic
// programming over subsets (Bellman 1962; Held and Karp 1962). Keeps its tables between calls.
class ShortestRound {
public:
    explicit ShortestRound(const TurnCosts& costs)
        : m_costs(costs)
    {
    }

    // At most kMostInExactRound lifters, each once; at least one.
    [[nodiscard]] int cost(std::span<const std::size_t> lifters);
    [[nodiscard]] std::vector<std::size_t> order(std::span<const std::size_t> lifters);

private:
    // Fills m_paths for all lifters but the first, where every path starts.
    void fill(std::span<const std::size_t> lifters);

    const TurnCosts& m_costs;
    std::vector<int> m_paths; // cheapest path over a subset, by subset and last lifter
};

} // namespace levelbar
