// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/gym/plate_stack.h"
#include "core/gym/rack_sharing.h"

#include <gtest/gtest.h>

namespace levelbar::plate_stack_test {
namespace {

Mass kg(double kilograms)
{
    return Mass::ofKilograms(kilograms);
}

std::string stackOf(const std::vector<Mass>& plates, double load, double bar = 20)
{
    const auto stacks = PlateStacks::make(kg(bar), plates);
    const auto stack = stacks.value().stackFor(kg(load));
    if (!stack) {
        return sentence(stack.error());
    }
    std::string text;
    for (const Mass plate : *stack) {
        text += (text.empty() ? "" : " ") + plate.number();
    }
    return text;
}

TEST(PlateStackTest, PutsTheHeaviestPlateInside)
{
    EXPECT_EQ(stackOf(commonPlates(), 20), "");
    EXPECT_EQ(stackOf(commonPlates(), 62.5), "20 1.25");
    EXPECT_EQ(stackOf(commonPlates(), 180), "25 25 25 5");
}

TEST(PlateStackTest, TakesFewerPlatesRatherThanTheHeaviestFirst)
{
    EXPECT_EQ(stackOf({kg(25), kg(20), kg(10), kg(5)}, 100), "20 20"); // not 25 10 5
}

TEST(PlateStackTest, TakesTheHeaviestInnermostAmongAsFewPlates)
{
    EXPECT_EQ(stackOf({kg(15), kg(20), kg(10)}, 80), "20 10");             // not 15 15
    EXPECT_EQ(stackOf({kg(10), kg(7), kg(6), kg(4), kg(3)}, 60), "10 10"); // 20 a side
    EXPECT_EQ(stackOf({kg(9), kg(8), kg(7), kg(5), kg(4)}, 62), "9 8 4");  // 21; not 9 7 5, 7 7 7
}

TEST(PlateStackTest, WorksInPoundsWithoutRounding)
{
    const auto lb = [](std::int64_t thousandths) {
        return Mass::ofThousandths(thousandths, MassUnit::Pound);
    };
    const auto stacks = PlateStacks::make(lb(45'000), {lb(45'000), lb(10'000), lb(2'500)});
    const auto stack = stacks.value().stackFor(lb(160'000));
    EXPECT_EQ(stack.value(), (PlateStack{lb(45'000), lb(10'000), lb(2'500)}));
    EXPECT_EQ(sentence(stacks->stackFor(kg(60)).error()), "'60' is not in lb, the unit of the bar");
}

TEST(PlateStackTest, NamesTheNearestLoadsWhenOneCannotBeMade)
{
    EXPECT_EQ(stackOf(commonPlates(), 61),
              "'61' cannot be made with these plates; the nearest loads are 60 and 62.5");
    EXPECT_EQ(stackOf({kg(25), kg(20)}, 30),
              "'30' cannot be made with these plates; the nearest loads are 20 and 60");
    EXPECT_EQ(stackOf({kg(700)}, 1000),
              "'1000' cannot be made with these plates; the nearest loads are 20 and 1420");
}

TEST(PlateStackTest, RefusesWhatIsLighterThanTheBar)
{
    EXPECT_EQ(stackOf(commonPlates(), 15), "'15' is lighter than the bar, 20");
    EXPECT_EQ(stackOf(commonPlates(), 15, 15), "");
}

TEST(PlateStackTest, RefusesPlatesThatAreNone)
{
    EXPECT_EQ(PlateStacks::make(kg(20), {}).error().code, FaultCode::Empty);
    EXPECT_EQ(PlateStacks::make(kg(20), {kg(0)}).error().code, FaultCode::OutOfRange);
    EXPECT_EQ(
        PlateStacks::make(kg(20), {Mass::ofThousandths(45'000, MassUnit::Pound)}).error().code,
        FaultCode::OtherUnit);
}

} // namespace
} // namespace levelbar::plate_stack_test
