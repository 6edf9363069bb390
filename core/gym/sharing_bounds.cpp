// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/gym/sharing_bounds.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <limits>
#include <map>

namespace levelbar {

namespace {

// Whether some racks hold exactly so many lifters, up to `spare` of them strangers.
bool fillsRacks(std::size_t lifters, std::size_t spare, std::size_t all, std::size_t racks)
{
    const std::size_t small = all / racks;
    const std::size_t larger = all % racks; // racks with one more
    for (std::size_t held = lifters; held <= lifters + spare; ++held) {
        for (std::size_t of = 0; of <= larger && of * (small + 1) <= held; ++of) {
            const std::size_t rest = held - of * (small + 1);
            if (rest % small == 0 && rest / small <= racks - larger) {
                return true;
            }
        }
    }
    return false;
}

// How many lifters hang on each branch of the tree of stacks; stackOf(place) is the stack meant.
template <typename StackOf>
std::vector<std::size_t> branches(const TurnCosts& costs, const StackOf& stackOf)
{
    std::map<std::pair<std::size_t, std::int64_t>, std::size_t> next; // node 0 is the empty bar
    std::vector<std::size_t> lifters(1);
    for (const TurnCosts::Place& place : costs.places()) {
        std::size_t node = 0;
        for (const Mass plate : stackOf(place)) {
            const auto [found, isNew] =
                next.emplace(std::pair(node, plate.thousandths()), lifters.size());
            if (isNew) {
                lifters.push_back(0);
            }
            node = found->second;
            ++lifters[node];
        }
    }
    lifters.erase(lifters.begin());
    return lifters;
}

template <typename StackOf>
int plateBound(const TurnCosts& costs, std::size_t racks, const StackOf& stackOf)
{
    int bound = 0;
    for (const std::size_t lifters : branches(costs, stackOf)) {
        bound += fillsRacks(lifters, 0, costs.size(), racks) ? 0 : 4;
    }
    return bound;
}

// Of a setting with a value a lifter, `moves` a change.
template <typename ValueOf>
int settingBound(const TurnCosts& costs, std::size_t racks, int moves, const ValueOf& valueOf)
{
    std::map<int, std::size_t> values;
    std::size_t without = 0;
    for (const TurnCosts::Place& place : costs.places()) {
        const std::optional<int>& value = valueOf(place);
        if (value) {
            ++values[*value];
        } else {
            ++without;
        }
    }
    int mixed = 0;
    for (const auto& [value, lifters] : values) {
        mixed += fillsRacks(lifters, without, costs.size(), racks) ? 0 : 1;
    }
    return moves * std::max(0, mixed - static_cast<int>(without));
}

// Prices and costs are whole numbers of 1 / kScale moves, so that the bound is exact.
constexpr std::int64_t kScale = 1024;

class TreeAscent {
public:
    TreeAscent(const TurnCosts& costs, std::size_t racks)
        : m_costs(costs)
        , m_racks(racks)
        , m_prices(costs.size())
        , m_degrees(costs.size())
    {
    }

    // Scaled.
    std::int64_t run(std::int64_t known)
    {
        const std::size_t square = m_costs.size() * m_costs.size();
        const std::size_t rounds = std::clamp<std::size_t>(kMostLookUps / square, 10, 600);
        std::int64_t best = 0;
        double pace = 1.5;
        int idle = 0;
        for (std::size_t round = 0; round < rounds && pace > 1e-3; ++round) {
            const std::int64_t bound = value();
            idle = bound > best ? 0 : idle + 1;
            best = std::max(best, bound);
            std::int64_t square2 = 0;
            for (const int degree : m_degrees) {
                square2 += std::int64_t{degree - 2} * (degree - 2);
            }
            if (square2 == 0 || best >= known) {
                break;
            }
            if (idle == kPatience) {
                pace /= 2;
                idle = 0;
            }
            const double step =
                pace * static_cast<double>(known - bound) / static_cast<double>(square2);
            for (std::size_t i = 0; i < m_prices.size(); ++i) {
                m_prices[i] += std::llround(step * (m_degrees[i] - 2));
            }
        }
        return best;
    }

private:
    static constexpr std::size_t kMostLookUps = 20'000'000; // of pairs of lifters
    static constexpr int kPatience = 15;

    struct Edge {
        std::int64_t cost = 0;
        std::size_t from = 0;
        std::size_t to = 0;

        friend auto operator<=>(const Edge&, const Edge&) = default;
    };

    [[nodiscard]] std::int64_t priced(std::size_t from, std::size_t to) const
    {
        return kScale * m_costs.total(from, to) + m_prices[from] + m_prices[to];
    }

    // The cheapest tree over the lifters from `first` on (Prim 1957).
    std::vector<Edge> tree(std::size_t first) const
    {
        const std::size_t count = m_costs.size();
        std::vector<Edge> nearest(count);
        std::vector<Edge> edges;
        std::vector<bool> isIn(count, false);
        std::size_t last = first;
        isIn[first] = true;
        for (std::size_t i = first; i < count; ++i) {
            nearest[i].cost = std::numeric_limits<std::int64_t>::max();
        }
        for (std::size_t added = first + 1; added < count; ++added) {
            std::size_t next = count;
            for (std::size_t i = first; i < count; ++i) {
                if (isIn[i]) {
                    continue;
                }
                const std::int64_t cost = priced(last, i);
                if (cost < nearest[i].cost) {
                    nearest[i] = {cost, last, i};
                }
                if (next == count || nearest[i].cost < nearest[next].cost) {
                    next = i;
                }
            }
            isIn[next] = true;
            edges.push_back(nearest[next]);
            last = next;
        }
        return edges;
    }

    // One rack: a tree over all but the first lifter, who is tied on by two changes.
    std::vector<Edge> oneTree() const
    {
        std::vector<Edge> edges = tree(1);
        std::vector<Edge> ties;
        for (std::size_t i = 1; i < m_costs.size(); ++i) {
            ties.push_back({priced(0, i), 0, i});
        }
        std::partial_sort(ties.begin(), ties.begin() + 2, ties.end());
        edges.insert(edges.end(), ties.begin(), ties.begin() + 2);
        return edges;
    }

    // More racks: a forest of as many trees, and for each one change more, wherever it is
    // cheapest.
    std::vector<Edge> forest() const
    {
        std::vector<Edge> edges = tree(0);
        std::sort(edges.begin(), edges.end());
        edges.resize(m_costs.size() - m_racks);
        std::vector<bool> isTaken(m_costs.size() * m_costs.size(), false);
        for (const Edge& edge : edges) {
            isTaken[std::min(edge.from, edge.to) * m_costs.size() + std::max(edge.from, edge.to)] =
                true;
        }
        std::vector<Edge> others;
        for (std::size_t i = 0; i < m_costs.size(); ++i) {
            for (std::size_t j = i + 1; j < m_costs.size(); ++j) {
                if (!isTaken[i * m_costs.size() + j]) {
                    others.push_back({priced(i, j), i, j});
                }
            }
        }
        const auto end = others.begin() + static_cast<std::ptrdiff_t>(m_racks);
        std::nth_element(others.begin(), end - 1, others.end());
        edges.insert(edges.end(), others.begin(), end);
        return edges;
    }

    std::int64_t value()
    {
        std::fill(m_degrees.begin(), m_degrees.end(), 0);
        std::int64_t sum = 0;
        for (const Edge& edge : m_racks == 1 ? oneTree() : forest()) {
            sum += edge.cost;
            ++m_degrees[edge.from];
            ++m_degrees[edge.to];
        }
        for (const std::int64_t price : m_prices) {
            sum -= 2 * price;
        }
        return sum;
    }

    const TurnCosts& m_costs;
    std::size_t m_racks;
    std::vector<std::int64_t> m_prices;
    std::vector<int> m_degrees;
};

} // namespace

int crossingBound(const TurnCosts& costs, std::size_t racks)
{
    using Place = TurnCosts::Place;
    const auto work = [](const Place& place) -> const PlateStack& { return place.stack; };
    int bound = plateBound(costs, racks, work);
    for (std::size_t round = 0; round < costs.places().front().ramp.size(); ++round) {
        bound += plateBound(costs, racks, [round](const Place& place) -> const PlateStack& {
            return place.ramp[round];
        });
    }
    const auto hook = [](const Place& place) -> const std::optional<int>& {
        return place.hookHole;
    };
    const auto safety = [](const Place& place) -> const std::optional<int>& {
        return place.safetyHole;
    };
    const auto angle = [](const Place& place) -> const std::optional<int>& {
        return place.benchAngle;
    };
    return bound + settingBound(costs, racks, 2, hook) + settingBound(costs, racks, 2, safety) +
           settingBound(costs, racks, 1, angle);
}

int treeBound(const TurnCosts& costs, std::size_t racks, int known)
{
    if (costs.size() / racks < 3) {
        return 0;
    }
    const std::int64_t grain = kScale * costs.grain();
    const std::int64_t bound = TreeAscent(costs, racks).run(kScale * known);
    return static_cast<int>((bound + grain - 1) / grain) * costs.grain();
}

} // namespace levelbar
