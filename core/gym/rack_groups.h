// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/gym/shortest_round.h"
#include "core/gym/turn_costs.h"

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

namespace levelbar {

// Every choice of lifters that may share a rack, with what its cheapest round costs. Lifters of
// one kind count as the same, so that each choice is there once. A group's cost starts as a lower
// bound, its branches of the tree of stacks and its holes, and becomes exact where it matters.
class RackGroups {
public:
    // Nothing when there would be too many to keep. `costs` must outlive the groups.
    [[nodiscard]] static std::optional<RackGroups> list(const TurnCosts& costs, std::size_t racks);

    [[nodiscard]] std::size_t count() const { return m_costs.size(); }

    // Never more than the cost of the cheapest round, and equal to it when isExact().
    [[nodiscard]] int cost(std::size_t group) const { return m_costs[group]; }

    [[nodiscard]] bool isExact(std::size_t group) const { return m_isExact[group]; }

    // Makes the cost exact. False when this took too much work already: then it stays a bound.
    bool makeExact(std::size_t group);

    // The kinds (of TurnCosts) of its lifters, ascending, repeated as often as they are in it.
    [[nodiscard]] std::span<const std::uint8_t> kinds(std::size_t group) const
    {
        return {m_kinds.data() + group * (m_smaller + 1), m_smaller + (isLarger(group) ? 1 : 0)};
    }

    // Racks hold all / racks lifters or one more: the larger groups come after the others.
    [[nodiscard]] bool isLarger(std::size_t group) const { return group >= m_firstLarger; }

    // Its lifters, where the first `taken` of each kind are spoken for; counts them in.
    [[nodiscard]] std::vector<std::size_t> lifters(std::size_t group,
                                                   std::vector<std::size_t>& taken) const;

private:
    explicit RackGroups(const TurnCosts& costs)
        : m_turns(&costs)
        , m_shortest(costs)
    {
    }

    void add(const std::vector<std::uint8_t>& kinds);

    const TurnCosts* m_turns;
    ShortestRound m_shortest;
    std::size_t m_smaller = 1;
    std::size_t m_firstLarger = 0;
    double m_steps = 0.0; // spent on exact costs
    std::vector<int> m_costs;
    std::vector<bool> m_isExact;
    std::vector<std::uint8_t> m_kinds; // m_smaller + 1 places a group
};

} // namespace levelbar
