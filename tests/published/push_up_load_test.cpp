// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later

#include "core/bodyweight/push_up_load.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <cstdio>
#include <string>

// Published shares of body weight on the hands, in percent:
// Mier 2014, Int J Exerc Sci 7(2):161-168, 37 men and women, static holds, with SD;
// Suprak 2011, J Strength Cond Res 25(2):497-503, 28 men, static holds (from memory, no SD);
// Gouvali and Boudolos 2005, J Strength Cond Res 19(1):146-151, 8 men, start of the rep, no SD;
// Ebben 2011, J Strength Cond Res 25(10):2891-2894, 14 men and 9 women, peaks of reps (order and
// 64/74/41/49 seen, 55 and 70 from memory). Its floor, 64, lies under every static hold at the
// bottom, which no peak can do; so it is used for ratios between kinds, not for the level.
// Where no stature is published: 1.78 m men, 1.65 m women, 1.72 m both.

namespace levelbar::push_up_load_test {
namespace {

constexpr Length kMan = Length::ofMillimetres(1780);
constexpr Length kWoman = Length::ofMillimetres(1650);
constexpr Length kBoth = Length::ofMillimetres(1720);
constexpr Length kLowBox{3048}; // 30.48 cm, 12 in
constexpr Length kHighBox{6096};

Presser hundred(std::optional<Sex> sex, Length stature)
{
    return {sex, stature, Mass::ofKilograms(100.0)}; // so that kilograms are percent
}

FormulaLoad formula(std::optional<Sex> sex, Length stature, PushUpKind kind, Length height = {})
{
    return formulaLoad(hundred(sex, stature), {kind, height, {}}).value();
}

double repShare(Length stature, PushUpKind kind, Length height = {})
{
    return formula(std::nullopt, stature, kind, height).repLoad();
}

Estimate estimate(std::optional<Sex> sex, Length stature, PushUpKind kind, Length height = {})
{
    return pushUpLoad(hundred(sex, stature), PersonalLever(), {kind, height, {}}).value().load;
}

void print(const char* what, double published, double ours, double tolerance)
{
    std::printf("%-40s published %6.2f   ours %6.2f   error %+6.2f   allowed %5.2f\n",
                what,
                published,
                ours,
                ours - published,
                tolerance);
}

struct Hold {
    const char* what;
    Sex sex;
    PushUpKind kind;
    double up;   // percent of body weight, arms straight
    double down; // at the chest; 0 = not published
    double spread;
};

// The greatest spread between people published, for studies that give none.
constexpr double kPublishedSpread = 3.8;

constexpr std::array<Hold, 7> kHolds = {{
    {"Mier, men, toes", Sex::Male, PushUpKind::Floor, 67.0, 74.6, 3.8},
    {"Mier, women, toes", Sex::Female, PushUpKind::Floor, 65.1, 70.3, 3.1},
    {"Suprak, men, toes", Sex::Male, PushUpKind::Floor, 69.16, 75.04, kPublishedSpread},
    {"Gouvali, men, toes", Sex::Male, PushUpKind::Floor, 66.4, 0.0, kPublishedSpread},
    {"Mier, men, knees", Sex::Male, PushUpKind::Knees, 52.5, 60.1, kPublishedSpread},
    {"Mier, women, knees", Sex::Female, PushUpKind::Knees, 51.5, 56.6, kPublishedSpread},
    {"Suprak, men, knees", Sex::Male, PushUpKind::Knees, 53.56, 61.80, kPublishedSpread},
}};

// A mean of people must lie within one SD of people of ours for the rep, within two for either
// end: women of Mier went less deep than men (50 against 68 % of their range), and the formula
// takes the chest to the hands.
TEST(PublishedPushUps, StaticHoldsLieWithinThePublishedSpread)
{
    for (const Hold& hold : kHolds) {
        const Length stature = hold.sex == Sex::Male ? kMan : kWoman;
        const FormulaLoad ours = formula(hold.sex, stature, hold.kind);
        const std::string what = hold.what;
        print((what + ", up").c_str(), hold.up, ours.lockedOut, 2.0 * hold.spread);
        EXPECT_NEAR(ours.lockedOut, hold.up, 2.0 * hold.spread) << what;
        if (hold.down > 0.0) {
            const double rep = (hold.up + hold.down) / 2.0;
            print((what + ", down").c_str(), hold.down, ours.atChest, 2.0 * hold.spread);
            print((what + ", rep").c_str(), rep, ours.repLoad(), hold.spread);
            EXPECT_NEAR(ours.atChest, hold.down, 2.0 * hold.spread) << what;
            EXPECT_NEAR(ours.repLoad(), rep, hold.spread) << what;
        }
    }
}

TEST(PublishedPushUps, EveryPublishedRepLiesInTheInterval)
{
    for (const Hold& hold : kHolds) {
        if (hold.down == 0.0) {
            continue;
        }
        const Length stature = hold.sex == Sex::Male ? kMan : kWoman;
        const Estimate ours = estimate(hold.sex, stature, hold.kind);
        EXPECT_GE((hold.up + hold.down) / 2.0, ours.low) << hold.what;
        EXPECT_LE((hold.up + hold.down) / 2.0, ours.high) << hold.what;
    }
}

// On the floor nine people in ten must lie in the interval: for a normal, 1.645 SD on either side.
// Narrower would deny what Mier measured; twice as wide would say nothing.
TEST(PublishedPushUps, TheFloorsIntervalHoldsPeopleAsMeasured)
{
    const Estimate ours = estimate(Sex::Male, kMan, PushUpKind::Floor);
    EXPECT_GT(ours.high - ours.value, 1.645 * 3.1);
    EXPECT_LT(ours.high - ours.value, 2.0 * 1.645 * 3.8);
}

// Ebben's ratios to the floor. Feet raised and knees: feet are built from them, so only the
// knees, which come from the static holds, can err: 57 against 49/64 of the floor, 54.0.
TEST(PublishedPushUps, RatiosOfRaisedFeetAndKnees)
{
    const double floor = repShare(kBoth, PushUpKind::Floor);
    const double low = repShare(kBoth, PushUpKind::FeetRaised, kLowBox) / floor;
    const double high = repShare(kBoth, PushUpKind::FeetRaised, kHighBox) / floor;
    const double knees = repShare(kBoth, PushUpKind::Knees) / floor;
    print("Ebben, feet +30 cm over floor, %", 100.0 * 70.0 / 64.0, 100.0 * low, 0.01);
    print("Ebben, feet +61 cm over floor, %", 100.0 * 74.0 / 64.0, 100.0 * high, 0.05);
    print("Ebben, knees over floor, %",
          100.0 * 49.0 / 64.0,
          100.0 * knees,
          100.0 * kPublishedSpread / 70.0);
    EXPECT_NEAR(low, 70.0 / 64.0, 1e-4);
    EXPECT_NEAR(high, 74.0 / 64.0, 5e-4);
    EXPECT_NEAR(knees, 49.0 / 64.0, kPublishedSpread / 70.0); // one SD of the floor's share
}

// The formula falls less with the hands' height than Ebben's ratios do: by 6 points of the floor
// at 30 cm, 14 at 61. Ebben has the upright part of a force that leans; so have both here. The
// spread of the slope is TUNED so that the interval holds his ratio at 61 cm; at 30 cm it holds it
// untuned.
TEST(PublishedPushUps, RaisedHandsHoldEbbenInTheirInterval)
{
    const double floor = repShare(kBoth, PushUpKind::Floor);
    for (const auto& [height, percent] : {std::pair{kLowBox, 55.0}, std::pair{kHighBox, 41.0}}) {
        const Estimate ours = estimate(std::nullopt, kBoth, PushUpKind::HandsRaised, height);
        const double published = percent / 64.0 * floor;
        const std::string what =
            "Ebben's ratio, hands at " + std::to_string(height.tenthMillimetres / 10) + " mm";
        print(what.c_str(), published, ours.value, ours.value - ours.low);
        EXPECT_LT(published, ours.value);
        EXPECT_GT(published, ours.low);
        // Not by being wide without end: a fifth less than his ratio is shut out.
        EXPECT_LT(0.8 * published, ours.low);
    }
}

// The upright part of the force, arms straight: between the leaning force's own and what arms
// square to the body need when it goes straight down. Ebben's three heights, untuned, within half
// an SD of Mier.
TEST(PublishedPushUps, EbbensUprightForcesLieInTheBracketOfStatics)
{
    constexpr double kAlong =
        (0.8003 * 14.0 + 0.7998 * 9.0) / 23.0; // hands from the foot, of stature
    constexpr double kFront = (0.2622 * 14.0 + 0.2640 * 9.0) / 23.0;
    for (const auto& [height, percent] :
         {std::pair{Length{}, 64.0}, std::pair{kLowBox, 55.0}, std::pair{kHighBox, 41.0}}) {
        const double square =
            formula(std::nullopt, kBoth, PushUpKind::HandsRaised, height).lockedOut;
        const double rise = height.metres() / kBoth.metres();
        const double lift = std::asin(rise / std::hypot(kAlong, kFront));
        const double angle = lift + std::atan2(kFront, kAlong);
        const double least = square * std::cos(angle);
        const double most = square * kAlong / (std::hypot(kAlong, kFront) * std::cos(lift));
        std::printf("Ebben, hands at %.2f m: published %.0f   ours %.1f to %.1f\n",
                    height.metres(),
                    percent,
                    least,
                    most);
        EXPECT_GT(percent, least - kPublishedSpread / 2.0);
        EXPECT_LT(percent, most + kPublishedSpread / 2.0);
    }
}

// Ebben: taller people carried more with the hands on 60.96 cm (r = 0.63, n = 23); no relation
// was found on the floor.
TEST(PublishedPushUps, TallPeopleCarryMoreOnOneBox)
{
    const Length shorter = Length::ofMillimetres(1550);
    const Length taller = Length::ofMillimetres(1850);
    const double gain = repShare(taller, PushUpKind::HandsRaised, kHighBox) -
                        repShare(shorter, PushUpKind::HandsRaised, kHighBox);
    EXPECT_GT(gain, 2.0);
    EXPECT_DOUBLE_EQ(repShare(taller, PushUpKind::Floor), repShare(shorter, PushUpKind::Floor));
}

// The same statics worked by hand from the segment tables (de Leva 1996; ANSUR II), to the digits
// given there.
struct Worked {
    Sex sex;
    int stature; // mm
    int height;
    double lockedOut;
    double atChest;
};

constexpr std::array<Worked, 6> kWorked = {{{Sex::Male, 1750, 0, 65.9, 75.8},
                                            {Sex::Male, 1750, 500, 52.1, 67.6},
                                            {Sex::Male, 1750, 800, 39.6, 56.2},
                                            {Sex::Male, 1750, 1000, 28.7, 44.4},
                                            {Sex::Female, 1650, 500, 50.7, 65.8},
                                            {Sex::Female, 1650, 800, 36.9, 53.0}}};

TEST(PublishedPushUps, StaticsGiveTheirWorkedValues)
{
    for (const Worked& worked : kWorked) {
        const FormulaLoad ours = formula(worked.sex,
                                         Length::ofMillimetres(worked.stature),
                                         PushUpKind::HandsRaised,
                                         Length::ofMillimetres(worked.height));
        EXPECT_NEAR(ours.lockedOut, worked.lockedOut, 0.06) << worked.height;
        EXPECT_NEAR(ours.atChest, worked.atChest, 0.06) << worked.height;
    }
}

} // namespace
} // namespace levelbar::push_up_load_test
