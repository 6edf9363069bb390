// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/gym/rack_sharing.h"
#include "tests/support/rack_tasks.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <numeric>
#include <set>

namespace levelbar::rack_sharing_test {
namespace {

using tests::drawnRackTask;
using tests::Random;

RackSharingTask task(const std::vector<std::pair<double, int>>& loadsAndHoles, int racks)
{
    RackSharingTask made;
    made.racks = racks;
    made.plates = commonPlates();
    for (const auto& [load, hole] : loadsAndHoles) {
        made.lifters.push_back({"M" + std::to_string(made.lifters.size()),
                                Mass::ofKilograms(load),
                                hole > 0 ? std::optional(hole) : std::nullopt});
    }
    return made;
}

int movesOf(const RackSharing& sharing)
{
    return sharing.plateMoves + sharing.hookMoves;
}

// A reckoning of its own: plates of one side, by trying every stack.
void tryStacks(int left,
               std::vector<int>& stack,
               std::vector<int>& best,
               const std::vector<int>& plates)
{
    if (left == 0) {
        if (best.empty() || stack.size() < best.size() ||
            (stack.size() == best.size() && stack > best)) {
            best = stack;
        }
        return;
    }
    for (const int plate : plates) {
        const bool isLighter = stack.empty() || plate <= stack.back();
        if (isLighter && plate <= left && (best.empty() || stack.size() < best.size())) {
            stack.push_back(plate);
            tryStacks(left - plate, stack, best, plates);
            stack.pop_back();
        }
    }
}

class Reckoning {
public:
    explicit Reckoning(const RackSharingTask& task)
        : m_task(task)
    {
        std::vector<int> plates;
        for (const Mass plate : task.plates) {
            plates.push_back(static_cast<int>(plate.thousandths()));
        }
        std::sort(plates.rbegin(), plates.rend());
        for (const RackLifter& lifter : task.lifters) {
            std::vector<int> stack;
            m_stacks.emplace_back();
            const auto side = (lifter.load.thousandths() - task.bar.thousandths()) / 2;
            tryStacks(static_cast<int>(side), stack, m_stacks.back(), plates);
        }
    }

    [[nodiscard]] std::pair<int, int> step(std::size_t from, std::size_t to) const
    {
        const std::vector<int>& off = m_stacks[from];
        const std::vector<int>& on = m_stacks[to];
        std::size_t common = 0;
        while (common < off.size() && common < on.size() && off[common] == on[common]) {
            ++common;
        }
        const auto& left = m_task.lifters[from].hookHole;
        const auto& next = m_task.lifters[to].hookHole;
        return {static_cast<int>(2 * (off.size() + on.size() - 2 * common)),
                left && next && *left != *next ? 2 : 0};
    }

    [[nodiscard]] std::pair<int, int> round(std::span<const std::size_t> order) const
    {
        std::pair<int, int> sum;
        for (std::size_t i = 0; i < order.size(); ++i) {
            const auto [plates, hooks] = step(order[i], order[(i + 1) % order.size()]);
            sum.first += plates;
            sum.second += hooks;
        }
        return sum;
    }

    // Every order of everyone, cut into racks.
    [[nodiscard]] int fewest() const
    {
        std::vector<std::size_t> order(m_stacks.size());
        std::iota(order.begin(), order.end(), std::size_t{0});
        const auto racks = static_cast<std::size_t>(m_task.racks);
        int best = 1 << 30;
        do {
            int sum = 0;
            std::size_t from = 0;
            for (std::size_t rack = 0; rack < racks; ++rack) {
                const std::size_t size =
                    order.size() / racks + (rack < order.size() % racks ? 1 : 0);
                const auto [plates, hooks] = round(std::span(order).subspan(from, size));
                sum += plates + hooks;
                from += size;
            }
            best = std::min(best, sum);
        } while (std::next_permutation(order.begin(), order.end()));
        return best;
    }

private:
    const RackSharingTask& m_task;
    std::vector<std::vector<int>> m_stacks;
};

// Everyone once, sizes fair, sums as an outsider counts them, bound not above them.
void expectSound(const RackSharing& sharing, const RackSharingTask& task)
{
    const Reckoning reckoning(task);
    std::set<std::size_t> seen;
    std::set<std::size_t> sizes;
    int plates = 0;
    int hooks = 0;
    ASSERT_EQ(sharing.racks.size(), static_cast<std::size_t>(task.racks));
    for (const SharedRack& rack : sharing.racks) {
        std::vector<std::size_t> order;
        for (const RackTurn& turn : rack.turns) {
            order.push_back(turn.lifter);
            EXPECT_TRUE(seen.insert(turn.lifter).second);
        }
        sizes.insert(order.size());
        EXPECT_EQ(std::pair(rack.plateMoves, rack.hookMoves), reckoning.round(order));
        plates += rack.plateMoves;
        hooks += rack.hookMoves;
    }
    EXPECT_EQ(seen.size(), task.lifters.size());
    EXPECT_LE(*sizes.rbegin() - *sizes.begin(), 1U);
    EXPECT_EQ(sharing.plateMoves, plates);
    EXPECT_EQ(sharing.hookMoves, hooks);
    EXPECT_LE(sharing.lowerBound, plates + hooks);
    EXPECT_EQ(sharing.isProvedBest, sharing.lowerBound == plates + hooks);
}

TEST(RackSharingTest, CountsPlatesOfBothSidesOverAFullRound)
{
    // A side: nothing, 10, 20. On 2, off and on 4, off 2.
    const auto sharing = shareRacks(task({{20, 0}, {40, 0}, {60, 0}}, 1)).value();
    EXPECT_EQ(sharing.plateMoves, 8);
    EXPECT_EQ(sharing.hookMoves, 0);
    EXPECT_TRUE(sharing.isProvedBest);
}

TEST(RackSharingTest, LeavesPlatesOnThatTheNextStackBeginsWith)
{
    // A side: 20; 20 1.25; 20 2.5. The 20 stays on.
    const auto sharing = shareRacks(task({{60, 0}, {62.5, 0}, {65, 0}}, 1)).value();
    EXPECT_EQ(sharing.plateMoves, 8);
}

TEST(RackSharingTest, CountsHooksOnlyBetweenHolesThatAreGiven)
{
    EXPECT_EQ(shareRacks(task({{60, 5}, {60, 6}}, 1)).value().hookMoves, 4);
    EXPECT_EQ(shareRacks(task({{60, 5}, {60, 0}}, 1)).value().hookMoves, 0);
    // From 5 to 6 once; the way back leads over the one without a hole.
    EXPECT_EQ(shareRacks(task({{60, 5}, {60, 0}, {60, 6}}, 1)).value().hookMoves, 2);
    // Two without a hole between 5 and 6, one on each way.
    EXPECT_EQ(shareRacks(task({{60, 5}, {60, 6}, {60, 0}, {60, 0}}, 1)).value().hookMoves, 0);
}

TEST(RackSharingTest, PutsAlikeTogetherOnMoreRacks)
{
    const auto sharing = shareRacks(task({{100, 3}, {60, 7}, {100, 3}, {60, 7}}, 2)).value();
    EXPECT_EQ(movesOf(sharing), 0);
    EXPECT_EQ(sharing.racks[0].turns[0].lifter, 1U) << "the lightest first";
    EXPECT_EQ(sharing.racks[0].turns[1].lifter, 3U);
    EXPECT_EQ(sharing.racks[1].turns[0].lifter, 0U);
}

TEST(RackSharingTest, ARackOfOneCostsNothing)
{
    const auto sharing = shareRacks(task({{100, 3}, {60, 7}}, 2)).value();
    EXPECT_EQ(movesOf(sharing), 0);
    EXPECT_TRUE(sharing.isProvedBest);
}

TEST(RackSharingTest, EqualsTheBestOfEveryOrderInTwoHundredDrawnCases)
{
    Random random(20261125);
    for (int drawn = 0; drawn < 200; ++drawn) {
        const int lifters = 1 + random.below(drawn % 20 == 0 ? 8 : 7);
        RackSharingTask small =
            drawnRackTask(random, lifters, 1 + random.below(lifters), random.below(5));
        if (drawn % 4 == 0) { // where the heaviest first is not the fewest
            small.plates = {Mass::ofKilograms(20),
                            Mass::ofKilograms(17.5),
                            Mass::ofKilograms(6.25),
                            Mass::ofKilograms(2.5),
                            Mass::ofKilograms(1.25)};
        }
        const auto sharing = shareRacks(small).value();
        expectSound(sharing, small);
        EXPECT_TRUE(sharing.isProvedBest) << drawn;
        EXPECT_EQ(movesOf(sharing), Reckoning(small).fewest()) << drawn;
    }
}

TEST(RackSharingTest, ProvesTheBestForTwelveOnAnyNumberOfRacks)
{
    Random random(12);
    for (int racks = 1; racks <= 12; ++racks) {
        const RackSharingTask twelve = drawnRackTask(random, 12, racks, 8);
        const auto sharing = shareRacks(twelve).value();
        expectSound(sharing, twelve);
        EXPECT_TRUE(sharing.isProvedBest) << racks;
    }
}

TEST(RackSharingTest, ProvesTheBestForTwentyFourOnSix)
{
    Random random(24);
    for (const int holes : {0, 8, 20}) {
        const RackSharingTask drawn = drawnRackTask(random, 24, 6, holes);
        const auto sharing = shareRacks(drawn).value();
        expectSound(sharing, drawn);
        EXPECT_GT(movesOf(sharing), 0);
        EXPECT_GE(100 * sharing.lowerBound, 97 * movesOf(sharing));
        EXPECT_TRUE(sharing.isProvedBest) << holes;
    }
}

TEST(RackSharingTest, StaysSoundWhereNothingIsProved)
{
    Random random(60);
    for (const auto& [lifters, racks] : {std::pair(40, 1), std::pair(37, 3), std::pair(60, 6)}) {
        const RackSharingTask drawn = drawnRackTask(random, lifters, racks, 10);
        const auto sharing = shareRacks(drawn).value();
        expectSound(sharing, drawn);
        EXPECT_GE(100 * sharing.lowerBound, 60 * movesOf(sharing)) << lifters;
    }
}

TEST(RackSharingTest, NeverBoundsAboveABetterAnswerOfAnotherSeed)
{
    Random random(7);
    for (int drawn = 0; drawn < 4; ++drawn) {
        RackSharingTask large = drawnRackTask(random, 26, 1 + drawn % 2, 9);
        const auto first = shareRacks(large).value();
        large.seed = 99;
        const auto second = shareRacks(large).value();
        EXPECT_LE(first.lowerBound, movesOf(second));
        EXPECT_LE(second.lowerBound, movesOf(first));
    }
}

TEST(RackSharingTest, IsTheSameForTheSameSeed)
{
    Random random(5);
    const RackSharingTask large = drawnRackTask(random, 30, 2, 10);
    const auto one = shareRacks(large).value();
    const auto two = shareRacks(large).value();
    for (std::size_t rack = 0; rack < one.racks.size(); ++rack) {
        ASSERT_EQ(one.racks[rack].turns.size(), two.racks[rack].turns.size());
        for (std::size_t turn = 0; turn < one.racks[rack].turns.size(); ++turn) {
            EXPECT_EQ(one.racks[rack].turns[turn].lifter, two.racks[rack].turns[turn].lifter);
        }
    }
}

TEST(RackSharingTest, RefusesWhatCannotBeShared)
{
    const auto fault = [](const RackSharingTask& task) {
        const auto sharing = shareRacks(task);
        return sharing ? std::string() : sentence(sharing.error());
    };
    EXPECT_EQ(fault(task({{60, 0}, {80, 0}}, 3)), "too few lifters (2) for the racks (3)");
    EXPECT_EQ(fault(task({}, 1)), "too few lifters (0) for the racks (1)");
    EXPECT_EQ(fault(task({{60, 0}}, 0)), "'0' lies outside 1 to 1");
    EXPECT_EQ(fault(task({{15, 0}}, 1)), "'15' is lighter than the bar, 20");
    EXPECT_EQ(fault(task({{61, 0}}, 1)),
              "'61' cannot be made with these plates; the nearest loads are 60 and 62.5");
    RackSharingTask twice = task({{60, 0}, {80, 0}}, 1);
    twice.lifters[1].id = twice.lifters[0].id;
    EXPECT_EQ(fault(twice), "the lifter 'M0' is there twice");
    EXPECT_EQ(fault(task(std::vector<std::pair<double, int>>(1001, {60, 0}), 1)),
              "too many lifters (1001; at most 1000)");
}

} // namespace
} // namespace levelbar::rack_sharing_test
