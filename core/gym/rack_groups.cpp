// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/gym/rack_groups.h"

#include <algorithm>
#include <array>
#include <limits>

namespace levelbar {

namespace {

constexpr double kMostGroups = 1'000'000;
constexpr double kMostSteps = 4e8; // on exact costs: well under a second
constexpr std::size_t kMostKinds = std::numeric_limits<std::uint8_t>::max();

// How many choices of each size there are.
std::vector<double> choices(const TurnCosts& costs, std::size_t largest)
{
    std::vector<double> ways(largest + 1, 0.0);
    ways[0] = 1.0;
    for (const TurnCosts::Kind& kind : costs.kinds()) {
        for (std::size_t size = largest; size > 0; --size) {
            for (std::size_t taken = 1; taken <= std::min(kind.count, size); ++taken) {
                ways[size] += ways[size - taken];
            }
        }
    }
    return ways;
}

// Steps of one round by subsets.
double roundSteps(std::size_t size)
{
    const double half = static_cast<double>(size) / 2;
    return static_cast<double>(std::uint64_t{1} << std::min<std::size_t>(size, 62)) / 2 * half *
           half;
}

// Calls visit(kinds) for every choice of `size` lifters.
template <typename Visit> class Choosing {
public:
    Choosing(const std::vector<TurnCosts::Kind>& kinds, std::size_t size, const Visit& visit)
        : m_kinds(kinds)
        , m_size(size)
        , m_visit(visit)
    {
    }

    void run() { choose(0); }

private:
    void choose(std::size_t from)
    {
        if (m_chosen.size() == m_size) {
            m_visit(m_chosen);
            return;
        }
        for (std::size_t kind = from; kind < m_kinds.size(); ++kind) {
            std::size_t taken = 0;
            for (; taken < m_kinds[kind].count && m_chosen.size() < m_size; ++taken) {
                m_chosen.push_back(static_cast<std::uint8_t>(kind));
                choose(kind + 1);
            }
            m_chosen.resize(m_chosen.size() - taken);
        }
    }

    const std::vector<TurnCosts::Kind>& m_kinds;
    std::size_t m_size;
    const Visit& m_visit;
    std::vector<std::uint8_t> m_chosen;
};

// A round puts on and takes off every plate in which its stacks differ, and in the order of the
// tree of stacks nothing more; and it changes holes as often as there are different ones, less
// one for each lifter without a hole.
int roundBound(const TurnCosts& costs, std::span<const std::uint8_t> kinds)
{
    int plates = 0;
    int without = 0;
    std::array<int, kMostInExactRound> holes{};
    auto end = holes.begin();
    for (std::size_t i = 0; i < kinds.size(); ++i) {
        const std::size_t lifter = costs.kinds()[kinds[i]].first;
        const std::size_t next = costs.kinds()[kinds[i + 1 == kinds.size() ? 0 : i + 1]].first;
        plates += costs.plateMoves(lifter, next);
        const std::optional<int>& hole = costs.places()[lifter].hookHole;
        if (!hole) {
            ++without;
        } else if (std::find(holes.begin(), end, *hole) == end) {
            *end++ = *hole;
        }
    }
    const auto different = static_cast<int>(end - holes.begin());
    return plates + (different > 1 ? 2 * std::max(0, different - without) : 0);
}

} // namespace

std::optional<RackGroups> RackGroups::list(const TurnCosts& costs, std::size_t racks)
{
    const std::size_t smaller = costs.size() / racks;
    const bool hasLarger = costs.size() % racks != 0;
    const std::size_t largest = smaller + (hasLarger ? 1 : 0);
    const std::vector<double> ways = choices(costs, largest);
    const double groups = ways[smaller] + (hasLarger ? ways[largest] : 0.0);
    if (groups > kMostGroups || costs.kinds().size() > kMostKinds || largest > kMostInExactRound) {
        return std::nullopt;
    }
    RackGroups listed(costs);
    listed.m_smaller = smaller;
    const auto add = [&](const std::vector<std::uint8_t>& kinds) { listed.add(kinds); };
    Choosing(costs.kinds(), smaller, add).run();
    listed.m_firstLarger = listed.count();
    if (hasLarger) {
        Choosing(costs.kinds(), largest, add).run();
    }
    return listed;
}

void RackGroups::add(const std::vector<std::uint8_t>& kinds)
{
    m_kinds.insert(m_kinds.end(), kinds.begin(), kinds.end());
    m_kinds.resize((count() + 1) * (m_smaller + 1));
    m_costs.push_back(roundBound(*m_turns, kinds));
    m_isExact.push_back(false);
}

bool RackGroups::makeExact(std::size_t group)
{
    if (!m_isExact[group] && m_steps < kMostSteps) {
        std::vector<std::size_t> taken(m_turns->kinds().size(), 0);
        m_steps += roundSteps(kinds(group).size());
        m_costs[group] = m_shortest.cost(lifters(group, taken));
        m_isExact[group] = true;
    }
    return m_isExact[group];
}

std::vector<std::size_t> RackGroups::lifters(std::size_t group,
                                             std::vector<std::size_t>& taken) const
{
    std::vector<std::size_t> found;
    for (const std::uint8_t kind : kinds(group)) {
        found.push_back(m_turns->kinds()[kind].first + taken[kind]++);
    }
    return found;
}

} // namespace levelbar
