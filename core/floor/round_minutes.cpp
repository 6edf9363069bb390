// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/floor/round_minutes.h"

#include <algorithm>
#include <cmath>

namespace levelbar {

namespace {

constexpr double kMinute = 60.0;
constexpr double kRounding = 1e-9;

double longestRound(const std::vector<SharedRack>& racks, const RoundPace& pace)
{
    double longest = 0.0;
    for (const SharedRack& rack : racks) {
        longest = std::max(longest, roundSeconds(rack, pace));
    }
    return longest;
}

double blockMinutes(const BlockTask& task)
{
    double seconds = 0.0;
    for (const auto& racks : task.halves) {
        seconds += task.rounds * longestRound(racks, task.pace);
    }
    const auto swaps = task.halves.empty() ? 0 : task.halves.size() - 1;
    return (seconds + static_cast<double>(swaps) * task.pace.swap) / kMinute;
}

BlockSaving saving(BlockCut cut, int value, const BlockTask& task)
{
    return {cut, value, blockMinutes(task)};
}

BlockSaving withShorterRest(BlockTask task)
{
    task.pace.rest = std::min(task.pace.rest, kLeastRest);
    return saving(BlockCut::ShorterRest, static_cast<int>(std::lround(task.pace.rest)), task);
}

BlockSaving withSameHooks(BlockTask task)
{
    for (auto& racks : task.halves) {
        for (SharedRack& rack : racks) {
            rack.hookMoves = 0;
            rack.benchMoves = 0;
        }
    }
    return saving(BlockCut::SameHooks, 0, task);
}

// As many rounds as fit, at least one.
BlockSaving withFewerRounds(BlockTask task)
{
    while (task.rounds > 1 && blockMinutes(task) > task.minutes + kRounding) {
        --task.rounds;
    }
    return saving(BlockCut::FewerRounds, task.rounds, task);
}

// The last lifter leaves the slowest rack. The moves of its round are kept: who goes is for the
// rack sharing to choose, and it makes them fewer.
BlockSaving withFewerPeople(BlockTask task)
{
    SharedRack* slowest = nullptr;
    for (auto& racks : task.halves) {
        for (SharedRack& rack : racks) {
            const bool isSlower = slowest == nullptr ||
                                  roundSeconds(rack, task.pace) > roundSeconds(*slowest, task.pace);
            slowest = isSlower ? &rack : slowest;
        }
    }
    if (slowest == nullptr || slowest->turns.size() < 2) {
        return saving(BlockCut::FewerPeople, slowest == nullptr ? 0 : 1, task);
    }
    slowest->turns.pop_back();
    return saving(BlockCut::FewerPeople, static_cast<int>(slowest->turns.size()), task);
}

} // namespace

double roundSeconds(const SharedRack& rack, const RoundPace& pace)
{
    if (rack.turns.empty()) {
        return 0.0;
    }
    const auto people = static_cast<double>(rack.turns.size());
    const double busy = people * (pace.work + pace.handOver) + rack.plateMoves * pace.plateMove +
                        (rack.hookMoves + rack.benchMoves) * pace.hookMove;
    return std::max(busy, pace.work + pace.rest);
}

BlockMinutes minutesOf(const BlockTask& task)
{
    BlockMinutes result;
    for (const auto& racks : task.halves) {
        result.roundSeconds.push_back(longestRound(racks, task.pace));
    }
    result.minutes = blockMinutes(task);
    result.fits = result.minutes <= task.minutes + kRounding;
    if (result.fits) {
        return result;
    }
    for (const BlockSaving& one : {withShorterRest(task),
                                   withSameHooks(task),
                                   withFewerPeople(task),
                                   withFewerRounds(task)}) {
        if (one.minutes < result.minutes - kRounding) {
            result.savings.push_back(one);
        }
    }
    const auto isEnough = [&task](const BlockSaving& one) {
        return one.minutes <= task.minutes + kRounding;
    };
    std::vector<BlockSaving> enough;
    std::copy_if(
        result.savings.begin(), result.savings.end(), std::back_inserter(enough), isEnough);
    if (!enough.empty()) {
        result.savings = enough;
    } else {
        std::stable_sort(result.savings.begin(),
                         result.savings.end(),
                         [](const auto& a, const auto& b) { return a.minutes < b.minutes; });
    }
    return result;
}

} // namespace levelbar
