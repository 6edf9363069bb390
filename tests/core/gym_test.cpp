// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/gym/available_loads.h"
#include "core/gym/bar_loads.h"
#include "core/gym/kit.h"
#include "tests/support/random.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <functional>
#include <map>

namespace levelbar::gym_test {
namespace {

Mass kg(double kilograms)
{
    return Mass::ofKilograms(kilograms);
}

Mass lb(std::int64_t pounds)
{
    return Mass::ofThousandths(pounds * 1000, MassUnit::Pound);
}

std::vector<double> kilogramsEach(const std::vector<Mass>& plates)
{
    std::vector<double> all;
    for (const Mass& plate : plates) {
        all.push_back(plate.kilograms());
    }
    return all;
}

Exercise exerciseWith(Implement implement, Sidedness sidedness)
{
    Exercise exercise;
    exercise.implement = implement;
    exercise.sidedness = sidedness;
    return exercise;
}

TEST(KitTest, TheAssumedKitCanBeUsed)
{
    EXPECT_TRUE(checkKit(assumedKit()).has_value());
    EXPECT_TRUE(assumedKit().isAssumed);
}

TEST(KitTest, APieceThatStandsTwiceIsRefusedAlsoWhenTypedOtherwise)
{
    Kit kit = assumedKit();
    kit.plates = {{kg(0.5), 2}, {Mass::ofThousandths(500, MassUnit::Kilogram), 4}};
    ASSERT_FALSE(checkKit(kit).has_value());
    EXPECT_EQ(sentence(checkKit(kit).error()), "'0.5 kg' stands there twice");
}

TEST(KitTest, ABarIsNeeded)
{
    Kit kit = assumedKit();
    kit.bars.clear();
    ASSERT_FALSE(checkKit(kit).has_value());
    EXPECT_EQ(sentence(checkKit(kit).error()), "at least one bar is needed");
}

TEST(BarLoadsTest, FewestPlatesThenTheHeaviestInside)
{
    const Kit kit = assumedKit();
    const BarLoads loads(kit, kit.bars.front());
    // The contract's example: 52.5 kg is 15 and 1.25 a side.
    const auto loaded = loads.exactly(kg(52.5));
    ASSERT_TRUE(loaded);
    EXPECT_EQ(kilogramsEach(loaded->eachSide), (std::vector<double>{15.0, 1.25}));
    // 30 a side: 25 + 5 and 20 + 10 and 15 + 15 are two plates each; the heaviest inside wins.
    EXPECT_EQ(kilogramsEach(loads.exactly(kg(80.0))->eachSide), (std::vector<double>{25.0, 5.0}));
}

TEST(BarLoadsTest, WhatCannotBeMadeHasItsNearestNeighbours)
{
    const Kit kit = assumedKit();
    const BarLoads loads(kit, kit.bars.front());
    EXPECT_FALSE(loads.exactly(kg(54.1)));
    EXPECT_DOUBLE_EQ(loads.atMost(54.1)->total.kilograms(), 52.5);
    EXPECT_DOUBLE_EQ(loads.atLeast(54.1)->total.kilograms(), 55.0);
    EXPECT_DOUBLE_EQ(loads.above(kg(52.5))->total.kilograms(), 55.0);
    EXPECT_DOUBLE_EQ(loads.below(kg(52.5))->total.kilograms(), 50.0);
    EXPECT_FALSE(loads.atMost(19.9)); // lighter than the bar
    EXPECT_FALSE(loads.below(kg(20.0)));
}

TEST(BarLoadsTest, AnOddPlateStaysOnTheTree)
{
    Kit kit = assumedKit();
    kit.plates = {{kg(10), 3}, {kg(5), 1}};
    const BarLoads loads(kit, kit.bars.front());
    EXPECT_EQ(loads.size(), 2U); // the bare bar, and one pair of tens
    EXPECT_FALSE(loads.exactly(kg(30)));
    EXPECT_TRUE(loads.exactly(kg(40)));
}

TEST(BarLoadsTest, CollarsAreLiftedToo)
{
    Kit kit = assumedKit();
    kit.collars = kg(5); // IPF technical rules: two of 2.5 kg
    const BarLoads loads(kit, kit.bars.front());
    EXPECT_DOUBLE_EQ(loads.at(0).total.kilograms(), 25.0);
    EXPECT_EQ(kilogramsEach(loads.exactly(kg(75))->eachSide), (std::vector<double>{25.0}));
}

TEST(BarLoadsTest, APoundBarIsTypedInPounds)
{
    Kit kit = assumedKit();
    kit.bars = {{"Bar", lb(45), 1}};
    kit.plates = {{lb(45), 4}, {lb(25), 2}, {lb(10), 2}, {lb(5), 2}};
    const BarLoads loads(kit, kit.bars.front());
    const auto loaded = loads.exactly(lb(135)); // common practice: a bar and one plate a side
    ASSERT_TRUE(loaded);
    EXPECT_EQ(loaded->total, lb(135));
    EXPECT_EQ(loaded->eachSide, (std::vector<Mass>{lb(45)}));
    EXPECT_FALSE(loads.exactly(kg(61.235))); // 135 lb is 61.23496995 kg
}

TEST(BarLoadsTest, KilogramsAndPoundsMixToTheLastDigit)
{
    Kit kit = assumedKit();
    kit.plates = {{kg(20), 2}, {lb(45), 2}};
    const BarLoads loads(kit, kit.bars.front());
    ASSERT_EQ(loads.size(), 4U);
    // 45 lb is heavier than 20 kg: it lies inside.
    EXPECT_EQ(loads.at(3).eachSide, (std::vector<Mass>{lb(45), kg(20)}));
    EXPECT_EQ(loads.at(3).exact, 2 * exactWeight(lb(45)) + exactWeight(kg(60)));
    EXPECT_NEAR(loads.at(3).total.kilograms(), 60.0 + 90.0 * 0.45359237, 0.0005);
}

// Every way of taking pairs, tried one by one.
std::map<std::int64_t, std::vector<Mass>> everyStack(const Kit& kit)
{
    std::vector<PlateKind> kinds = kit.plates;
    std::sort(kinds.begin(), kinds.end(), [](const PlateKind& a, const PlateKind& b) {
        return exactWeight(a.mass) > exactWeight(b.mass);
    });
    std::map<std::int64_t, std::vector<Mass>> best;
    const auto isBetter = [](const std::vector<Mass>& a, const std::vector<Mass>& b) {
        if (a.size() != b.size()) {
            return a.size() < b.size();
        }
        for (std::size_t i = 0; i < a.size(); ++i) {
            if (exactWeight(a[i]) != exactWeight(b[i])) {
                return exactWeight(a[i]) > exactWeight(b[i]);
            }
        }
        return false;
    };
    const std::function<void(std::size_t, std::int64_t, std::vector<Mass>)> go =
        [&](std::size_t kind, std::int64_t weight, std::vector<Mass> stack) {
            if (kind == kinds.size()) {
                const auto [at, isNew] = best.try_emplace(weight, stack);
                if (!isNew && isBetter(stack, at->second)) {
                    at->second = stack;
                }
                return;
            }
            for (int pairs = 0; pairs <= kinds[kind].count / 2; ++pairs) {
                go(kind + 1, weight + pairs * exactWeight(kinds[kind].mass), stack);
                stack.push_back(kinds[kind].mass);
            }
        };
    go(0, 0, {});
    return best;
}

TEST(BarLoadsTest, AreWhatTryingEverythingFinds)
{
    tests::Random random(2026);
    const std::vector<Mass> all = {
        kg(25), kg(20), kg(15), kg(10), kg(5), kg(2.5), kg(1.25), kg(0.5), lb(45), lb(25), lb(10)};
    for (int round = 0; round < 100; ++round) {
        Kit kit = assumedKit();
        kit.plates.clear();
        for (const Mass& mass : all) {
            if (random.chance(0.5)) {
                kit.plates.push_back({mass, random.below(7)});
            }
        }
        const BarLoads loads(kit, kit.bars.front(), 1000.0);
        const auto expected = everyStack(kit);
        ASSERT_EQ(loads.size(), expected.size()) << "round " << round;
        std::size_t place = 0;
        for (const auto& [weight, stack] : expected) {
            const LoadedBar loaded = loads.at(place++);
            EXPECT_EQ(loaded.exact, exactWeight(kg(20)) + 2 * weight);
            EXPECT_EQ(loaded.eachSide, stack) << "round " << round;
        }
    }
}

TEST(AvailableLoadsTest, ALighterBarServesBelowTheUsualOneOnly)
{
    Kit kit = assumedKit();
    kit.bars.push_back({"Light bar", kg(15), 1});
    const AvailableLoads loads(kit, exerciseWith(Implement::Barbell, Sidedness::TwoSided));
    EXPECT_DOUBLE_EQ(loads.lightest()->kilograms(), 15.0);
    EXPECT_DOUBLE_EQ(loads.atMost(19.0)->kilograms(), 17.5);
    EXPECT_TRUE(loads.atMost(20.0)->eachSide.empty()); // the usual bar, bare
}

TEST(AvailableLoadsTest, BothHandsNeedTwoDumbbellsOfAMass)
{
    Kit kit = assumedKit();
    kit.handWeights = {{Implement::Dumbbell, kg(8), 2}, {Implement::Dumbbell, kg(10), 1}};
    const AvailableLoads pair(kit, exerciseWith(Implement::Dumbbell, Sidedness::TwoSided));
    EXPECT_DOUBLE_EQ(pair.atMost(12.0)->kilograms(), 8.0);
    const AvailableLoads single(kit, exerciseWith(Implement::Dumbbell, Sidedness::SingleSided));
    EXPECT_DOUBLE_EQ(single.atMost(12.0)->kilograms(), 10.0);
    EXPECT_FALSE(single.above(kg(10)));
}

TEST(AvailableLoadsTest, AMachineGoesByItsStep)
{
    Kit kit = assumedKit();
    kit.stackStep = kg(5);
    const AvailableLoads loads(kit, exerciseWith(Implement::Machine, Sidedness::TwoSided));
    EXPECT_DOUBLE_EQ(loads.atMost(54.1)->kilograms(), 50.0);
    EXPECT_FALSE(loads.atMost(4.9));
}

} // namespace
} // namespace levelbar::gym_test
