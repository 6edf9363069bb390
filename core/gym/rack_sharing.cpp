// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/gym/rack_sharing.h"

#include "core/gym/group_cover.h"
#include "core/gym/sharing_bounds.h"
#include "core/gym/sharing_search.h"
#include "core/gym/shortest_round.h"

#include <algorithm>
#include <numeric>
#include <set>
#include <tuple>

namespace levelbar {

namespace {

using Order = std::vector<std::size_t>;

struct Solution {
    RackOrders racks;
    int lowerBound = 0;
};

std::optional<Fault> faultOf(const RackSharingTask& task)
{
    if (task.racks < 1) {
        return Fault{FaultCode::OutOfRange,
                     {std::to_string(task.racks), "1", std::to_string(task.lifters.size())}};
    }
    if (task.lifters.size() < static_cast<std::size_t>(task.racks)) {
        return Fault{FaultCode::TooFewLifters,
                     {std::to_string(task.lifters.size()), std::to_string(task.racks)}};
    }
    if (task.lifters.size() > kMostRackLifters) {
        return Fault{FaultCode::TooManyLifters,
                     {std::to_string(task.lifters.size()), std::to_string(kMostRackLifters)}};
    }
    std::set<std::string> ids;
    for (const RackLifter& lifter : task.lifters) {
        if (!ids.insert(lifter.id).second) {
            return Fault{FaultCode::RepeatedLifter, {excerpt(lifter.id)}};
        }
    }
    return std::nullopt;
}

Result<std::vector<TurnCosts::Place>> placesOf(const RackSharingTask& task)
{
    const auto stacks = PlateStacks::make(task.bar, task.plates);
    if (!stacks) {
        return tl::unexpected(stacks.error());
    }
    std::vector<TurnCosts::Place> places;
    for (const RackLifter& lifter : task.lifters) {
        auto stack = stacks->stackFor(lifter.load);
        if (!stack) {
            return tl::unexpected(stack.error());
        }
        places.push_back({std::move(*stack), lifter.hookHole});
    }
    return places;
}

// Branch by branch of the tree of stacks, then by hole: like lies beside like.
Order branchOrder(const std::vector<TurnCosts::Place>& places)
{
    const auto isBefore = [](Mass a, Mass b) { return a.thousandths() < b.thousandths(); };
    Order order(places.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        const PlateStack& left = places[a].stack;
        const PlateStack& right = places[b].stack;
        if (left != right) {
            return std::lexicographical_compare(
                left.begin(), left.end(), right.begin(), right.end(), isBefore);
        }
        return places[a].hookHole < places[b].hookHole;
    });
    return order;
}

// One rack. Lifters with the same stack and hole may follow each other at no cost, and taking one
// of them out from elsewhere never makes a round dearer; so one stands for all of them. Not so
// for a lifter without a hole among some with: between two holes he spares the hooks a move.
Solution solveOneRack(const TurnCosts& all, std::uint64_t seed)
{
    const auto hasHole = [](const TurnCosts::Place& place) { return place.hookHole.has_value(); };
    const bool areHolesGiven = std::any_of(all.places().begin(), all.places().end(), hasHole);
    std::vector<TurnCosts::Place> places;
    std::vector<Order> standsFor;
    for (const TurnCosts::Kind& kind : all.kinds()) {
        const TurnCosts::Place& place = all.places()[kind.first];
        const bool isOneForAll = place.hookHole.has_value() || !areHolesGiven;
        for (std::size_t i = kind.first; i < kind.first + kind.count; ++i) {
            if (i == kind.first || !isOneForAll) {
                places.push_back(place);
                standsFor.emplace_back();
            }
            standsFor.back().push_back(i);
        }
    }
    const TurnCosts costs(std::move(places));
    Order order;
    int bound = crossingBound(costs, 1);
    if (costs.size() <= kMostInExactRound) {
        Order lifters(costs.size());
        std::iota(lifters.begin(), lifters.end(), std::size_t{0});
        order = ShortestRound(costs).order(lifters);
        bound = costs.round(order);
    } else {
        order = searchSharing(costs, 1, seed).front();
        bound = std::max(bound, treeBound(costs, 1, costs.round(order)));
    }
    Order unfolded;
    for (const std::size_t place : order) {
        unfolded.insert(unfolded.end(), standsFor[place].begin(), standsFor[place].end());
    }
    return {{std::move(unfolded)}, bound};
}

// Lifters for the kinds of chosen groups, each in the cheapest order.
RackOrders
seat(const TurnCosts& costs, const RackGroups& groups, const std::vector<std::size_t>& chosen)
{
    ShortestRound shortest(costs);
    std::vector<std::size_t> taken(costs.kinds().size(), 0);
    RackOrders racks;
    for (const std::size_t group : chosen) {
        racks.push_back(shortest.order(groups.lifters(group, taken)));
    }
    return racks;
}

Solution solve(const TurnCosts& costs, std::size_t racks, std::uint64_t seed)
{
    if (racks == 1) {
        return solveOneRack(costs, seed);
    }
    Solution solution{searchSharing(costs, racks, seed), crossingBound(costs, racks)};
    const int found = roundsOf(costs, solution.racks);
    if (solution.lowerBound == found) {
        return solution;
    }
    if (auto groups = RackGroups::list(costs, racks)) {
        const GroupPrices prices = priceGroups(*groups, costs, racks);
        const GroupCover cover = cheapestCover(*groups, prices, costs, racks, found);
        solution.lowerBound = std::max(solution.lowerBound, cover.lowerBound);
        if (cover.groups) {
            solution.racks = seat(costs, *groups, *cover.groups);
        }
    }
    if (solution.lowerBound < roundsOf(costs, solution.racks)) {
        solution.lowerBound = std::max(solution.lowerBound, treeBound(costs, racks, found));
    }
    return solution;
}

// Of all ways to write a round down: from the lightest lifter on, towards the lighter neighbour;
// whoever comes first in the task comes first among equals.
void beginWithLightest(Order& round, const Order& lifters, const RackSharingTask& task)
{
    const auto isLighter = [&](std::size_t a, std::size_t b) {
        return std::tuple(task.lifters[lifters[a]].load.thousandths(), lifters[a]) <
               std::tuple(task.lifters[lifters[b]].load.thousandths(), lifters[b]);
    };
    std::rotate(
        round.begin(), std::min_element(round.begin(), round.end(), isLighter), round.end());
    if (round.size() > 2 && isLighter(round.back(), round[1])) {
        std::reverse(round.begin() + 1, round.end());
    }
}

SharedRack sharedRack(const TurnCosts& costs, const Order& round, const Order& lifters)
{
    SharedRack rack;
    std::size_t before = round.back();
    for (const std::size_t turn : round) {
        rack.turns.push_back({lifters[turn],
                              costs.places()[turn].stack,
                              costs.plateMoves(before, turn),
                              costs.hookMoves(before, turn)});
        rack.plateMoves += rack.turns.back().plateMoves;
        rack.hookMoves += rack.turns.back().hookMoves;
        before = turn;
    }
    return rack;
}

} // namespace

std::vector<Mass> commonPlates()
{
    std::vector<Mass> plates;
    for (const std::int64_t grams : {25'000, 20'000, 15'000, 10'000, 5'000, 2'500, 1'250}) {
        plates.push_back(Mass::ofThousandths(grams, MassUnit::Kilogram));
    }
    return plates;
}

Result<RackSharing> shareRacks(const RackSharingTask& task)
{
    if (const auto fault = faultOf(task)) {
        return tl::unexpected(*fault);
    }
    const auto places = placesOf(task);
    if (!places) {
        return tl::unexpected(places.error());
    }
    const Order byBranch = branchOrder(*places);
    std::vector<TurnCosts::Place> inOrder;
    for (const std::size_t lifter : byBranch) {
        inOrder.push_back((*places)[lifter]);
    }
    const TurnCosts costs(std::move(inOrder));
    Solution solution = solve(costs, static_cast<std::size_t>(task.racks), task.seed);
    RackSharing sharing;
    for (Order& round : solution.racks) {
        beginWithLightest(round, byBranch, task);
        sharing.racks.push_back(sharedRack(costs, round, byBranch));
        sharing.plateMoves += sharing.racks.back().plateMoves;
        sharing.hookMoves += sharing.racks.back().hookMoves;
    }
    std::sort(sharing.racks.begin(), sharing.racks.end(), [&](const auto& a, const auto& b) {
        const auto key = [&](const SharedRack& rack) {
            const std::size_t first = rack.turns.front().lifter;
            return std::tuple(task.lifters[first].load.thousandths(), first);
        };
        return key(a) < key(b);
    });
    sharing.lowerBound = solution.lowerBound;
    sharing.isProvedBest = sharing.lowerBound == sharing.plateMoves + sharing.hookMoves;
    return sharing;
}

} // namespace levelbar
