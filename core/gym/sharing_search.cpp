// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/gym/sharing_search.h"

#include "core/gym/shortest_round.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <numeric>
#include <random>

namespace levelbar {

namespace {

// Chosen by trial on random gyms of 12 to 60 lifters: hotter or slower found nothing better.
constexpr double kHottest = 6.0; // in moves
constexpr double kColdest = 0.4;
constexpr std::size_t kStepsPerLifter = 3000;
constexpr std::size_t kMostLookUps = 60'000'000; // what the time goes into
constexpr std::size_t kStarts = 3;
constexpr std::size_t kMostPolished = 12; // lifters of a rack whose order is made exact

// Lifters that start together: as equal shares of a row.
RackOrders shares(std::span<const std::size_t> row, std::size_t racks)
{
    RackOrders orders;
    std::size_t from = 0;
    for (std::size_t rack = 0; rack < racks; ++rack) {
        const std::size_t size = row.size() / racks + (rack < row.size() % racks ? 1 : 0);
        const auto begin = row.begin() + static_cast<std::ptrdiff_t>(from);
        orders.emplace_back(begin, begin + static_cast<std::ptrdiff_t>(size));
        from += size;
    }
    return orders;
}

class Annealing {
public:
    Annealing(const TurnCosts& costs, RackOrders start, std::uint64_t seed)
        : m_costs(costs)
        , m_racks(std::move(start))
        , m_random(seed)
    {
        for (std::size_t rack = 0; rack < m_racks.size(); ++rack) {
            for (std::size_t at = 0; at < m_racks[rack].size(); ++at) {
                m_places.push_back({rack, at});
            }
            m_rounds.push_back(m_costs.round(m_racks[rack]));
        }
        m_sum = std::accumulate(m_rounds.begin(), m_rounds.end(), 0);
        m_best = m_racks;
        m_least = m_sum;
    }

    RackOrders run(std::size_t steps)
    {
        const double cooling = std::pow(kColdest / kHottest,
                                        1.0 / static_cast<double>(std::max<std::size_t>(steps, 1)));
        m_heat = kHottest;
        for (std::size_t step = 0; step < steps; ++step) {
            const std::size_t what = below(4);
            if (what < 2) {
                swap();
            } else if (what == 2) {
                turn();
            } else {
                move();
            }
            m_heat *= cooling;
            m_isCool = 2 * step >= steps;
        }
        return m_best;
    }

private:
    struct Spot {
        std::size_t rack = 0;
        std::size_t at = 0;
    };

    // The standard's generator is the same everywhere, its distributions are not.
    std::size_t below(std::size_t count)
    {
        return static_cast<std::size_t>(m_random() >> 33U) % count;
    }

    double uniform() { return static_cast<double>(m_random() >> 11U) * 0x1.0p-53; }

    Spot anySpot() { return m_places[below(m_places.size())]; }

    // Keeps what a change made of one or two racks, or says that it must be undone.
    bool keeps(std::size_t first, std::size_t second)
    {
        const int firstRound = m_costs.round(m_racks[first]);
        const int secondRound = first == second ? 0 : m_costs.round(m_racks[second]);
        const int before = m_rounds[first] + (first == second ? 0 : m_rounds[second]);
        const int more = firstRound + secondRound - before;
        if (more > 0 && uniform() >= std::exp(-more / m_heat)) {
            return false;
        }
        m_rounds[first] = firstRound;
        if (first != second) {
            m_rounds[second] = secondRound;
        }
        m_sum += more;
        if (m_sum < m_least && m_isCool) { // while hot the next step would undo it
            m_least = m_sum;
            m_best = m_racks;
        }
        return true;
    }

    void swap()
    {
        const Spot one = anySpot();
        const Spot other = anySpot();
        auto& left = m_racks[one.rack][one.at];
        auto& right = m_racks[other.rack][other.at];
        std::swap(left, right);
        if (!keeps(one.rack, other.rack)) {
            std::swap(left, right);
        }
    }

    void turn()
    {
        const Spot spot = anySpot();
        auto& order = m_racks[spot.rack];
        const auto low = std::min(spot.at, below(order.size()));
        const auto begin = order.begin() + static_cast<std::ptrdiff_t>(low);
        const auto end = begin + static_cast<std::ptrdiff_t>(1 + below(order.size() - low));
        std::reverse(begin, end);
        if (!keeps(spot.rack, spot.rack)) {
            std::reverse(begin, end);
        }
    }

    // To another place of the same rack, or of a smaller rack.
    void move()
    {
        const Spot from = anySpot();
        const Spot to = anySpot();
        auto& source = m_racks[from.rack];
        auto& target = m_racks[to.rack];
        if (from.rack != to.rack && source.size() <= target.size()) {
            return;
        }
        const auto place = [](auto& order, std::size_t at) {
            return order.begin() + static_cast<std::ptrdiff_t>(at);
        };
        const std::size_t lifter = source[from.at];
        source.erase(place(source, from.at));
        target.insert(place(target, to.at), lifter);
        if (!keeps(from.rack, to.rack)) {
            target.erase(place(target, to.at));
            source.insert(place(source, from.at), lifter);
        } else if (from.rack != to.rack) {
            m_places.clear();
            for (std::size_t rack = 0; rack < m_racks.size(); ++rack) {
                for (std::size_t at = 0; at < m_racks[rack].size(); ++at) {
                    m_places.push_back({rack, at});
                }
            }
        }
    }

    const TurnCosts& m_costs;
    RackOrders m_racks;
    std::mt19937_64 m_random;
    std::vector<Spot> m_places; // every place of every rack
    std::vector<int> m_rounds;
    int m_sum = 0;
    RackOrders m_best;
    int m_least = 0;
    double m_heat = kHottest;
    bool m_isCool = false;
};

} // namespace

int roundsOf(const TurnCosts& costs, const RackOrders& racks)
{
    int sum = 0;
    for (const auto& rack : racks) {
        sum += costs.round(rack);
    }
    return sum;
}

RackOrders searchSharing(const TurnCosts& costs, std::size_t racks, std::uint64_t seed)
{
    assert(racks >= 1 && racks <= costs.size());
    std::vector<std::size_t> row(costs.size());
    std::iota(row.begin(), row.end(), std::size_t{0});
    const std::size_t size = costs.size() / racks + 1;
    const std::size_t steps =
        std::min(kStepsPerLifter * costs.size(), kMostLookUps / (kStarts * 2 * size));
    RackOrders best = shares(row, racks);
    for (std::size_t start = 0; start < kStarts; ++start) {
        if (start == 1) { // by hole, then by plates
            std::stable_sort(row.begin(), row.end(), [&](std::size_t a, std::size_t b) {
                return costs.places()[a].hookHole < costs.places()[b].hookHole;
            });
        }
        RackOrders found = Annealing(costs, shares(row, racks), seed + start).run(steps);
        if (start == 0 || roundsOf(costs, found) < roundsOf(costs, best)) {
            best = std::move(found);
        }
    }
    ShortestRound shortest(costs);
    for (auto& order : best) {
        if (order.size() <= kMostPolished) {
            order = shortest.order(order);
        }
    }
    return best;
}

} // namespace levelbar
