// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/gym/sharing_problem.h"

#include <algorithm>
#include <numeric>
#include <set>
#include <tuple>
#include <utility>

namespace levelbar {

namespace {

using Order = std::vector<std::size_t>;

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

// Stacks of all ramp rounds, the last one before the work sets at the end. Whoever has fewer ramp
// sets than others repeats the lightest, and without any lifts the work load.
Result<std::vector<PlateStack>>
rampOf(const RackLifter& lifter, std::size_t rounds, const PlateStacks& stacks)
{
    std::vector<PlateStack> ramp;
    for (std::size_t round = 0; round < rounds; ++round) {
        const std::size_t missing = rounds - std::min(rounds, lifter.ramp.size());
        const Mass load = lifter.ramp.empty() ? lifter.load
                          : round < missing   ? lifter.ramp.front()
                                              : lifter.ramp[round - missing];
        auto stack = stacks.stackFor(load);
        if (!stack) {
            return tl::unexpected(stack.error());
        }
        ramp.push_back(std::move(*stack));
    }
    return ramp;
}

Result<std::vector<TurnCosts::Place>> placesOf(const RackSharingTask& task)
{
    const auto stacks = PlateStacks::make(task.bar, task.plates);
    if (!stacks) {
        return tl::unexpected(stacks.error());
    }
    std::size_t rounds = 0;
    for (const RackLifter& lifter : task.lifters) {
        rounds = std::max(rounds, lifter.ramp.size());
    }
    std::vector<TurnCosts::Place> places;
    for (const RackLifter& lifter : task.lifters) {
        auto stack = stacks->stackFor(lifter.load);
        if (!stack) {
            return tl::unexpected(stack.error());
        }
        auto ramp = rampOf(lifter, rounds, *stacks);
        if (!ramp) {
            return tl::unexpected(ramp.error());
        }
        places.push_back({std::move(*stack),
                          lifter.hookHole,
                          lifter.safetyHole,
                          lifter.benchAngle,
                          std::move(*ramp)});
    }
    return places;
}

// Branch by branch of the tree of stacks, then by what else must be set: like lies beside like.
Order branchOrder(const std::vector<TurnCosts::Place>& places)
{
    const auto isBefore = [](Mass a, Mass b) { return a.thousandths() < b.thousandths(); };
    const auto isStackBefore = [&](const PlateStack& a, const PlateStack& b) {
        return std::lexicographical_compare(a.begin(), a.end(), b.begin(), b.end(), isBefore);
    };
    Order order(places.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        const TurnCosts::Place& left = places[a];
        const TurnCosts::Place& right = places[b];
        if (left.stack != right.stack) {
            return isStackBefore(left.stack, right.stack);
        }
        const auto settings = [](const TurnCosts::Place& place) {
            return std::tie(place.hookHole, place.safetyHole, place.benchAngle);
        };
        if (settings(left) != settings(right)) {
            return settings(left) < settings(right);
        }
        return std::lexicographical_compare(left.ramp.begin(),
                                            left.ramp.end(),
                                            right.ramp.begin(),
                                            right.ramp.end(),
                                            isStackBefore);
    });
    return order;
}

} // namespace

Result<SharingProblem> SharingProblem::make(const RackSharingTask& task)
{
    if (const auto fault = faultOf(task)) {
        return tl::unexpected(*fault);
    }
    const auto places = placesOf(task);
    if (!places) {
        return tl::unexpected(places.error());
    }
    Order byBranch = branchOrder(*places);
    std::vector<TurnCosts::Place> inOrder;
    for (const std::size_t lifter : byBranch) {
        inOrder.push_back((*places)[lifter]);
    }
    return SharingProblem(task, std::move(byBranch), std::move(inOrder));
}

// Of all ways to write a round down: from the lightest lifter on, towards the lighter neighbour;
// whoever comes first in the task comes first among equals.
void SharingProblem::beginWithLightest(Order& round) const
{
    const auto isLighter = [&](std::size_t a, std::size_t b) {
        return std::tuple(m_task->lifters[m_lifters[a]].load.thousandths(), m_lifters[a]) <
               std::tuple(m_task->lifters[m_lifters[b]].load.thousandths(), m_lifters[b]);
    };
    std::rotate(
        round.begin(), std::min_element(round.begin(), round.end(), isLighter), round.end());
    if (round.size() > 2 && isLighter(round.back(), round[1])) {
        std::reverse(round.begin() + 1, round.end());
    }
}

SharedRack SharingProblem::rackOf(const Order& round) const
{
    SharedRack rack;
    std::size_t before = round.back();
    for (const std::size_t turn : round) {
        rack.turns.push_back({m_lifters[turn],
                              m_costs.places()[turn].stack,
                              m_costs.plateMoves(before, turn),
                              m_costs.hookMoves(before, turn),
                              m_costs.benchMoves(before, turn),
                              m_costs.rampMoves(before, turn)});
        rack.plateMoves += rack.turns.back().plateMoves;
        rack.hookMoves += rack.turns.back().hookMoves;
        rack.benchMoves += rack.turns.back().benchMoves;
        rack.rampMoves += rack.turns.back().rampMoves;
        before = turn;
    }
    return rack;
}

RackSharing SharingProblem::written(RackOrders racks, int lowerBound) const
{
    RackSharing sharing;
    for (Order& round : racks) {
        beginWithLightest(round);
        sharing.racks.push_back(rackOf(round));
        sharing.plateMoves += sharing.racks.back().plateMoves;
        sharing.hookMoves += sharing.racks.back().hookMoves;
        sharing.benchMoves += sharing.racks.back().benchMoves;
        sharing.rampMoves += sharing.racks.back().rampMoves;
    }
    std::sort(sharing.racks.begin(), sharing.racks.end(), [&](const auto& a, const auto& b) {
        const auto key = [&](const SharedRack& rack) {
            const std::size_t first = rack.turns.front().lifter;
            return std::tuple(m_task->lifters[first].load.thousandths(), first);
        };
        return key(a) < key(b);
    });
    sharing.lowerBound = lowerBound;
    sharing.isProvedBest = lowerBound == sharing.moves();
    return sharing;
}

} // namespace levelbar
