// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/gym/rack_sharing.h"

#include "core/gym/group_cover.h"
#include "core/gym/sharing_bounds.h"
#include "core/gym/sharing_problem.h"
#include "core/gym/sharing_search.h"
#include "core/gym/shortest_round.h"

#include <algorithm>
#include <numeric>
#include <utility>

namespace levelbar {

namespace {

using Order = std::vector<std::size_t>;

struct Solution {
    RackOrders racks;
    int lowerBound = 0;
};

// Whether each of them has a value of its own, or none has.
template <typename Value>
bool isAllOrNone(const std::vector<TurnCosts::Place>& places, const Value& value)
{
    const auto given = std::count_if(
        places.begin(), places.end(), [&](const auto& place) { return value(place).has_value(); });
    return given == 0 || given == static_cast<std::ptrdiff_t>(places.size());
}

// One rack. Lifters that are the same for it may follow each other at no cost, and taking one of
// them out from elsewhere never makes a round dearer; so one stands for all of them. Not so for a
// lifter without a hole among some with: between two holes he spares the hooks a move.
Solution solveOneRack(const TurnCosts& all, std::uint64_t seed)
{
    using Place = TurnCosts::Place;
    const bool isAnyKindOne =
        isAllOrNone(all.places(), [](const Place& place) { return place.safetyHole; }) &&
        isAllOrNone(all.places(), [](const Place& place) { return place.benchAngle; });
    const bool areHolesGiven = std::any_of(all.places().begin(),
                                           all.places().end(),
                                           [](const Place& place) { return place.hookHole; });
    std::vector<Place> places;
    std::vector<Order> standsFor;
    for (const TurnCosts::Kind& kind : all.kinds()) {
        const Place& place = all.places()[kind.first];
        const bool isOneForAll = isAnyKindOne && (place.hookHole.has_value() || !areHolesGiven);
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

Solution solve(const TurnCosts& costs, std::size_t racks, const RackSharingTask& task)
{
    if (racks == 1) {
        return solveOneRack(costs, task.seed);
    }
    Solution solution{searchSharing(costs, racks, task.seed), crossingBound(costs, racks)};
    const int found = roundsOf(costs, solution.racks);
    if (solution.lowerBound == found || !task.isProofWanted) {
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
    const auto problem = SharingProblem::make(task);
    if (!problem) {
        return tl::unexpected(problem.error());
    }
    Solution solution = solve(problem->costs(), problem->racks(), task);
    return problem->written(std::move(solution.racks), solution.lowerBound);
}

} // namespace levelbar
