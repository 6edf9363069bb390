// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/gym/rack_rules.h"

#include "core/gym/sharing_problem.h"
#include "core/gym/shortest_round.h"

#include <algorithm>
#include <map>
#include <random>
#include <set>
#include <tuple>

namespace levelbar {

namespace {

constexpr std::size_t kMostInQuickRound = 10; // an exact round of more takes too long to try many
constexpr int kKicks = 8;                     // starts from a sharing with some lifters exchanged

using Order = std::vector<std::size_t>;

// Counts of plates by mass, of one side.
using PlateCounts = std::map<std::int64_t, int>;

void takeMost(PlateCounts& most, const PlateStack& stack)
{
    PlateCounts counts;
    for (const Mass& plate : stack) {
        ++counts[exactWeight(plate)];
    }
    for (const auto& [mass, count] : counts) {
        most[mass] = std::max(most[mass], count);
    }
}

// The rules in places of the costs.
class Judge {
public:
    Judge(const SharingProblem& problem, const RackRules& rules)
        : m_costs(problem.costs())
        , m_apart(m_costs.size())
        , m_spots(m_costs.size(), false)
    {
        std::vector<std::size_t> placeOf(m_costs.size());
        for (std::size_t place = 0; place < m_costs.size(); ++place) {
            placeOf[problem.lifterAt(place)] = place;
        }
        for (const auto& [one, other] : rules.apart) {
            m_apart[placeOf[one]].insert(placeOf[other]);
            m_apart[placeOf[other]].insert(placeOf[one]);
        }
        for (const std::size_t lifter : rules.spotters) {
            m_spots[placeOf[lifter]] = true;
        }
        m_spotters = static_cast<int>(std::count(m_spots.begin(), m_spots.end(), true));
        for (const PlateKind& kind : rules.stock) {
            m_stock[exactWeight(kind.mass)] += kind.count;
        }
        m_countsPlates = !rules.stock.empty();
    }

    [[nodiscard]] BrokenRules broken(const RackOrders& racks) const
    {
        BrokenRules broken;
        PlateCounts needed;
        int bare = 0;
        int shared = 0;
        for (const Order& rack : racks) {
            broken.together += pairsTogether(rack);
            shared += rack.size() > 1 ? 1 : 0;
            bare += rack.size() > 1 && !hasSpotter(rack) ? 1 : 0;
            addPlates(rack, needed);
        }
        if (m_spotters > 0) {
            broken.racksWithoutSpot = std::max(0, bare - std::max(0, shared - m_spotters));
        }
        broken.platesShort = shortOf(needed);
        return broken;
    }

private:
    [[nodiscard]] int pairsTogether(const Order& rack) const
    {
        int pairs = 0;
        for (const std::size_t place : rack) {
            for (const std::size_t other : rack) {
                pairs += place < other && m_apart[place].contains(other) ? 1 : 0;
            }
        }
        return pairs;
    }

    [[nodiscard]] bool hasSpotter(const Order& rack) const
    {
        return std::any_of(rack.begin(), rack.end(), [this](std::size_t p) { return m_spots[p]; });
    }

    void addPlates(const Order& rack, PlateCounts& needed) const
    {
        if (!m_countsPlates) {
            return;
        }
        PlateCounts most;
        for (const std::size_t place : rack) {
            takeMost(most, m_costs.places()[place].stack);
            for (const PlateStack& stack : m_costs.places()[place].ramp) {
                takeMost(most, stack);
            }
        }
        for (const auto& [mass, count] : most) {
            needed[mass] += 2 * count;
        }
    }

    [[nodiscard]] int shortOf(const PlateCounts& needed) const
    {
        int missing = 0;
        for (const auto& [mass, count] : needed) {
            const auto owned = m_stock.find(mass);
            missing += std::max(0, count - (owned == m_stock.end() ? 0 : owned->second));
        }
        return missing;
    }

    const TurnCosts& m_costs;
    std::vector<std::set<std::size_t>> m_apart; // by place
    std::vector<bool> m_spots;
    PlateCounts m_stock; // single plates
    int m_spotters = 0;
    bool m_countsPlates = false;
};

// Exchanges and moves until none is better.
class Mender {
public:
    Mender(const SharingProblem& problem, const RackRules& rules)
        : m_problem(problem)
        , m_judge(problem, rules)
        , m_shortest(problem.costs())
        , m_random(problem.seed())
    {
    }

    [[nodiscard]] RackOrders mend(RackOrders racks)
    {
        const RackOrders first = racks;
        descend(racks);
        RackOrders best = racks;
        for (int kick = 0; kick < kKicks && racks.size() > 1; ++kick) {
            racks = kick % 2 == 0 ? best : first;
            for (int exchange = 0; exchange < 2 + kick / 4; ++exchange) {
                shake(racks);
            }
            descend(racks);
            if (score(racks) < score(best)) {
                best = racks;
            }
        }
        for (Order& rack : best) {
            rack = roundOf(rack);
        }
        return best;
    }

    [[nodiscard]] BrokenRules broken(const RackOrders& racks) const
    {
        return m_judge.broken(racks);
    }

private:
    using Score = std::tuple<int, int, int, int>;

    [[nodiscard]] Score score(const RackOrders& racks)
    {
        const BrokenRules broken = m_judge.broken(racks);
        int moves = 0;
        for (const Order& rack : racks) {
            moves += costOf(rack);
        }
        return {broken.together, broken.racksWithoutSpot, broken.platesShort, moves};
    }

    // The cheapest round; of many lifters that along the tree of stacks.
    [[nodiscard]] Order roundOf(Order rack)
    {
        std::sort(rack.begin(), rack.end());
        return rack.size() <= kMostInExactRound ? m_shortest.order(rack) : rack;
    }

    [[nodiscard]] int costOf(Order rack)
    {
        std::sort(rack.begin(), rack.end());
        const auto known = m_known.find(rack);
        if (known != m_known.end()) {
            return known->second;
        }
        const int cost = rack.size() <= kMostInQuickRound ? m_shortest.cost(rack)
                                                          : m_problem.costs().round(rack);
        m_known.emplace(std::move(rack), cost);
        return cost;
    }

    void descend(RackOrders& racks)
    {
        Score best = score(racks);
        for (bool isBetter = true; isBetter;) {
            isBetter = false;
            for (std::size_t a = 0; a < racks.size(); ++a) {
                for (std::size_t b = 0; b < racks.size(); ++b) {
                    isBetter = a != b && improve(racks, a, b, best) ? true : isBetter;
                }
            }
        }
    }

    // Takes the first exchange between two racks, or move from the larger to the smaller, that is
    // better.
    bool improve(RackOrders& racks, std::size_t a, std::size_t b, Score& best)
    {
        for (std::size_t i = 0; i < racks[a].size(); ++i) {
            for (std::size_t j = 0; a < b && j < racks[b].size(); ++j) {
                std::swap(racks[a][i], racks[b][j]);
                if (const Score now = score(racks); now < best) {
                    best = now;
                    return true;
                }
                std::swap(racks[a][i], racks[b][j]);
            }
            if (racks[a].size() > racks[b].size()) {
                const RackOrders before = racks;
                racks[b].push_back(racks[a][i]);
                racks[a].erase(racks[a].begin() + static_cast<std::ptrdiff_t>(i));
                if (const Score now = score(racks); now < best) {
                    best = now;
                    return true;
                }
                racks = before;
            }
        }
        return false;
    }

    void shake(RackOrders& racks)
    {
        const auto below = [this](std::size_t count) { return m_random() % count; };
        Order& one = racks[below(racks.size())];
        Order& other = racks[below(racks.size())];
        std::swap(one[below(one.size())], other[below(other.size())]);
    }

    const SharingProblem& m_problem;
    Judge m_judge;
    ShortestRound m_shortest;
    std::mt19937_64 m_random;
    std::map<Order, int> m_known; // cost by sorted lifters
};

RackOrders ordersOf(const SharingProblem& problem, const RackSharing& sharing)
{
    std::vector<std::size_t> placeOf(problem.costs().size());
    for (std::size_t place = 0; place < placeOf.size(); ++place) {
        placeOf[problem.lifterAt(place)] = place;
    }
    RackOrders orders;
    for (const SharedRack& rack : sharing.racks) {
        orders.emplace_back();
        for (const RackTurn& turn : rack.turns) {
            orders.back().push_back(placeOf[turn.lifter]);
        }
    }
    return orders;
}

std::optional<Fault> faultOf(const RackRules& rules, std::size_t lifters)
{
    std::size_t largest = 0;
    for (const auto& [one, other] : rules.apart) {
        largest = std::max({largest, one + 1, other + 1});
    }
    for (const std::size_t lifter : rules.spotters) {
        largest = std::max(largest, lifter + 1);
    }
    if (largest <= lifters) {
        return std::nullopt;
    }
    return Fault{FaultCode::OutOfRange, {std::to_string(largest), "1", std::to_string(lifters)}};
}

} // namespace

Result<RuledSharing> shareRacks(const RackSharingTask& task, const RackRules& rules)
{
    if (const auto fault = faultOf(rules, task.lifters.size())) {
        return tl::unexpected(*fault);
    }
    auto free = shareRacks(task);
    if (!free) {
        return tl::unexpected(free.error());
    }
    const auto problem = SharingProblem::make(task);
    RackOrders orders = ordersOf(*problem, *free);
    Mender mender(*problem, rules);
    RuledSharing ruled{std::move(*free), mender.broken(orders)};
    if (ruled.broken.none()) {
        return ruled;
    }
    orders = mender.mend(std::move(orders));
    ruled.broken = mender.broken(orders);
    ruled.sharing = problem->written(std::move(orders), ruled.sharing.lowerBound);
    return ruled;
}

} // namespace levelbar
