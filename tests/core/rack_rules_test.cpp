// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/gym/rack_rules.h"
#include "tests/support/rack_tasks.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <numeric>
#include <set>

namespace levelbar::rack_rules_test {
namespace {

using tests::drawnRackTask;
using tests::Random;

// A reckoning of its own of what everything together costs, by trying every order of everyone, cut
// into racks. Plates as in the search, by their number a side: the stacks are checked elsewhere.
class AllMoves {
public:
    explicit AllMoves(const RackSharingTask& task)
        : m_task(task)
    {
        const auto stacks = PlateStacks::make(task.bar, task.plates).value();
        std::size_t rounds = 0;
        for (const RackLifter& lifter : task.lifters) {
            rounds = std::max(rounds, lifter.ramp.size());
        }
        for (const RackLifter& lifter : task.lifters) {
            std::vector<PlateStack> all = {stacks.stackFor(lifter.load).value()};
            for (std::size_t round = 0; round < rounds; ++round) {
                // Aligned at the work set; whoever has fewer repeats the lightest.
                const auto behind = static_cast<int>(rounds - round);
                const int place = static_cast<int>(lifter.ramp.size()) - behind;
                const Mass load = lifter.ramp.empty()
                                      ? lifter.load
                                      : lifter.ramp[static_cast<std::size_t>(std::max(0, place))];
                all.push_back(stacks.stackFor(load).value());
            }
            m_stacks.push_back(all);
        }
    }

    [[nodiscard]] int round(std::span<const std::size_t> order) const
    {
        int sum = 0;
        for (std::size_t i = 0; i < order.size(); ++i) {
            sum += step(order[i], order[(i + 1) % order.size()]);
        }
        return sum;
    }

    // The fewest moves of all sharings that allowed(racks) lets through; nothing when none does.
    template <typename Allowed>
    [[nodiscard]] std::optional<int> fewest(const Allowed& allowed) const
    {
        std::vector<std::size_t> order(m_stacks.size());
        std::iota(order.begin(), order.end(), std::size_t{0});
        const auto racks = static_cast<std::size_t>(m_task.racks);
        std::optional<int> best;
        do {
            // Larger racks first: every cut into sizes that differ by one is met by some order.
            std::vector<std::span<const std::size_t>> cut;
            std::size_t from = 0;
            for (std::size_t rack = 0; rack < racks; ++rack) {
                const std::size_t size =
                    order.size() / racks + (rack < order.size() % racks ? 1 : 0);
                cut.emplace_back(order.data() + from, size);
                from += size;
            }
            if (!allowed(cut)) {
                continue;
            }
            int moves = 0;
            for (const auto& rack : cut) {
                moves += round(rack);
            }
            best = std::min(best.value_or(moves), moves);
        } while (std::next_permutation(order.begin(), order.end()));
        return best;
    }

private:
    [[nodiscard]] int step(std::size_t from, std::size_t to) const
    {
        int moves = 0;
        for (std::size_t round = 0; round < m_stacks[from].size(); ++round) {
            const PlateStack& off = m_stacks[from][round];
            const PlateStack& on = m_stacks[to][round];
            std::size_t common = 0;
            while (common < off.size() && common < on.size() && off[common] == on[common]) {
                ++common;
            }
            moves += 2 * static_cast<int>(off.size() + on.size() - 2 * common);
        }
        const RackLifter& left = m_task.lifters[from];
        const RackLifter& next = m_task.lifters[to];
        const auto differ = [](const std::optional<int>& a, const std::optional<int>& b) {
            return a && b && *a != *b;
        };
        return moves + (differ(left.hookHole, next.hookHole) ? 2 : 0) +
               (differ(left.safetyHole, next.safetyHole) ? 2 : 0) +
               (differ(left.benchAngle, next.benchAngle) ? 1 : 0);
    }

    const RackSharingTask& m_task;
    std::vector<std::vector<PlateStack>> m_stacks; // by lifter: work, then the ramp
};

RackSharingTask drawnInFull(Random& random, int lifters, int racks)
{
    RackSharingTask task = drawnRackTask(random, lifters, racks, 3);
    for (RackLifter& lifter : task.lifters) {
        if (!random.chance(0.2)) {
            lifter.safetyHole = 1 + random.below(3);
        }
        if (!random.chance(0.2)) {
            lifter.benchAngle = 15 * random.below(3);
        }
        const int sets = random.below(3);
        for (int set = 0; set < sets; ++set) {
            const auto most = (lifter.load.thousandths() - 20'000) / 2'500;
            const auto steps = most == 0 ? 0 : most * (set + 1) / (sets + 1);
            lifter.ramp.push_back(Mass::ofThousandths(20'000 + 2'500 * steps, MassUnit::Kilogram));
        }
    }
    return task;
}

TEST(RackSharingTest, WithSafetiesBenchesAndWarmUpsItIsAsGoodAsEveryOrderTried)
{
    Random random(7);
    for (int round = 0; round < 60; ++round) {
        const int racks = 1 + random.below(3);
        const RackSharingTask task = drawnInFull(random, racks + 2 + random.below(3), racks);
        const RackSharing found = shareRacks(task).value();
        const auto best = AllMoves(task).fewest([](const auto&) { return true; });
        EXPECT_EQ(found.moves(), *best) << "task " << round;
        EXPECT_EQ(found.lowerBound, *best) << "task " << round;
        EXPECT_TRUE(found.isProvedBest);
    }
}

TEST(RackSharingTest, AWarmUpThatDiffersCountsPlatesOfItsOwn)
{
    RackSharingTask task;
    task.plates = commonPlates();
    // Same work load, one warm-up of 20 and one of 60 kg: a pair of 20 kg plates on and off.
    task.lifters = {{"A", Mass::ofKilograms(100), {}, {}, {}, {Mass::ofKilograms(20)}},
                    {"B", Mass::ofKilograms(100), {}, {}, {}, {Mass::ofKilograms(60)}}};
    const RackSharing sharing = shareRacks(task).value();
    EXPECT_EQ(sharing.plateMoves, 0);
    EXPECT_EQ(sharing.rampMoves, 4);
    EXPECT_EQ(sharing.moves(), 4);
}

std::vector<std::set<std::size_t>> racksOf(const RackSharing& sharing)
{
    std::vector<std::set<std::size_t>> racks;
    for (const SharedRack& rack : sharing.racks) {
        racks.emplace_back();
        for (const RackTurn& turn : rack.turns) {
            racks.back().insert(turn.lifter);
        }
    }
    return racks;
}

TEST(RackRulesTest, WithoutRulesItIsTheSameSharing)
{
    Random random(11);
    const RackSharingTask task = drawnRackTask(random, 9, 3, 3);
    const RuledSharing ruled = shareRacks(task, RackRules{}).value();
    EXPECT_EQ(racksOf(ruled.sharing), racksOf(shareRacks(task).value()));
    EXPECT_TRUE(ruled.broken.none());
}

TEST(RackRulesTest, PeopleKeptApartAreAtDifferentRacksAtTheFewestMoves)
{
    Random random(13);
    for (int round = 0; round < 25; ++round) {
        const RackSharingTask task = drawnRackTask(random, 7, 2, 2);
        // Those who would be together by choice.
        const RackSharing free = shareRacks(task).value();
        const auto& turns = free.racks.front().turns;
        RackRules rules;
        rules.apart = {{turns[0].lifter, turns[1].lifter}, {turns[1].lifter, turns[2].lifter}};
        const RuledSharing ruled = shareRacks(task, rules).value();
        EXPECT_EQ(ruled.broken, BrokenRules{});
        const auto best = AllMoves(task).fewest([&](const auto& racks) {
            return std::all_of(racks.begin(), racks.end(), [&](const auto& rack) {
                return std::none_of(rules.apart.begin(), rules.apart.end(), [&](const auto& pair) {
                    return std::count(rack.begin(), rack.end(), pair.first) > 0 &&
                           std::count(rack.begin(), rack.end(), pair.second) > 0;
                });
            });
        });
        EXPECT_EQ(ruled.sharing.moves(), *best) << "task " << round;
        EXPECT_LE(ruled.sharing.lowerBound, *best);
        EXPECT_EQ(ruled.sharing.isProvedBest, ruled.sharing.lowerBound == *best);
    }
}

TEST(RackRulesTest, EveryRackHasSomebodyWhoCanSpotWhereThereAreEnough)
{
    Random random(17);
    const RackSharingTask task = drawnRackTask(random, 12, 3, 0);
    const auto first = racksOf(shareRacks(task).value()).front();
    RackRules rules; // all who can spot would stand at one rack
    rules.spotters.assign(first.begin(), first.end());
    rules.spotters.resize(3);
    const RuledSharing ruled = shareRacks(task, rules).value();
    EXPECT_TRUE(ruled.broken.none());
    for (const auto& rack : racksOf(ruled.sharing)) {
        EXPECT_TRUE(std::any_of(rules.spotters.begin(), rules.spotters.end(), [&](auto lifter) {
            return rack.contains(lifter);
        }));
    }
    rules.spotters.resize(1);
    EXPECT_TRUE(shareRacks(task, rules)->broken.none()) << "one cannot be at three racks";
}

TEST(RackRulesTest, PlatesOfWhichThereAreTwoAreOnOneBarOnly)
{
    RackSharingTask task;
    task.racks = 2;
    task.plates = commonPlates();
    // Two at 70 kg (a 25 a side) and two light ones; the free sharing puts like beside like, or at
    // two racks; with one pair of 25s both must share a rack.
    for (const double load : {70.0, 30.0, 70.0, 40.0}) {
        task.lifters.push_back(
            {"M" + std::to_string(task.lifters.size()), Mass::ofKilograms(load), {}});
    }
    RackRules rules;
    for (const Mass& plate : commonPlates()) {
        rules.stock.push_back({plate, 2});
    }
    const RuledSharing ruled = shareRacks(task, rules).value();
    EXPECT_EQ(ruled.broken, BrokenRules{});
    for (const auto& rack : racksOf(ruled.sharing)) {
        EXPECT_EQ(rack.contains(0), rack.contains(2));
    }
    rules.stock = {{Mass::ofKilograms(5), 2}, {Mass::ofKilograms(10), 2}};
    EXPECT_EQ(shareRacks(task, rules)->broken.platesShort, 2) << "no 25s at all";
}

TEST(RackRulesTest, WhatCannotBeKeptIsSaid)
{
    Random random(19);
    const RackSharingTask task = drawnRackTask(random, 6, 2, 0);
    RackRules rules; // three people, two racks
    rules.apart = {{0, 1}, {1, 2}, {0, 2}};
    EXPECT_EQ(shareRacks(task, rules)->broken.together, 1);
    rules.apart = {{0, 6}};
    EXPECT_EQ(shareRacks(task, rules).error().code, FaultCode::OutOfRange);
}

TEST(RackRulesTest, TheSameSeedGivesTheSameSharing)
{
    Random random(23);
    const RackSharingTask task = drawnRackTask(random, 16, 4, 4);
    RackRules rules;
    rules.apart = {{0, 1}, {2, 3}, {4, 5}, {0, 5}};
    rules.spotters = {6, 7, 8, 9};
    const RuledSharing one = shareRacks(task, rules).value();
    const RuledSharing again = shareRacks(task, rules).value();
    EXPECT_EQ(racksOf(one.sharing), racksOf(again.sharing));
    EXPECT_TRUE(one.broken.none());
}

} // namespace
} // namespace levelbar::rack_rules_test
