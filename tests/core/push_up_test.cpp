// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later

#include "core/base/square.h"
#include "core/bodyweight/push_up_load.h"
#include "tests/support/random.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <cstdio>
#include <limits>

namespace levelbar::push_up_test {
namespace {

constexpr std::array<std::optional<Sex>, 3> kSexes = {std::nullopt, Sex::Female, Sex::Male};

Presser person(double kilograms = 80.0, int statureMillimetres = 1750)
{
    return {Sex::Male, Length::ofMillimetres(statureMillimetres), Mass::ofKilograms(kilograms)};
}

PushUp bar(int millimetres)
{
    return {PushUpKind::HandsRaised, Length::ofMillimetres(millimetres), {}};
}

double load(const Presser& presser, const PushUp& pushUp)
{
    return pushUpLoad(presser, PersonalLever(), pushUp).value().load.value;
}

void expectWhole(const Estimate& estimate)
{
    EXPECT_TRUE(std::isfinite(estimate.low) && std::isfinite(estimate.high));
    EXPECT_GT(estimate.low, 0.0);
    EXPECT_LE(estimate.low, estimate.value);
    EXPECT_LE(estimate.value, estimate.high);
}

TEST(PushUpLoad, HigherHandsAreLighterAllTheWayToTheWall)
{
    for (const auto sex : kSexes) {
        for (const int stature : {1200, 1550, 1750, 2000, 2300}) {
            Presser presser = person(80.0, stature);
            presser.sex = sex;
            double before = load(presser, {PushUpKind::Floor, {}, {}});
            EXPECT_DOUBLE_EQ(load(presser, bar(0)), before);
            for (int height = 10; height <= stature * 68 / 100; height += 10) {
                const double now = load(presser, bar(height));
                EXPECT_LT(now, before) << stature << ' ' << height;
                before = now;
            }
            EXPECT_LT(load(presser, {PushUpKind::Wall, {}, {}}), before);
        }
    }
}

TEST(PushUpLoad, HigherFeetAreHeavier)
{
    double before = load(person(), {PushUpKind::Floor, {}, {}});
    for (int height = 10; height <= 610; height += 10) {
        const double now =
            load(person(), {PushUpKind::FeetRaised, Length::ofMillimetres(height), {}});
        EXPECT_GT(now, before) << height;
        before = now;
    }
}

TEST(PushUpLoad, GrowsInStepWithBodyMass)
{
    for (const PushUpKind kind :
         {PushUpKind::Floor, PushUpKind::HandRelease, PushUpKind::Wall, PushUpKind::Knees}) {
        const double light = load(person(60.0), {kind, {}, {}});
        EXPECT_NEAR(load(person(120.0), {kind, {}, {}}), 2.0 * light, 1e-9);
    }
    EXPECT_GT(load(person(81.0), bar(500)), load(person(80.0), bar(500)));
}

TEST(PushUpLoad, IsTheSameInKilogramsAndPounds)
{
    const Mass pounds = parseMass("180", MassUnit::Pound).value();
    const Mass vest = parseMass("22.5", MassUnit::Pound).value();
    Presser inPounds = person();
    inPounds.bodyMass = pounds;
    const double typed = load(inPounds, {PushUpKind::Floor, {}, vest});
    const double same = load(person(pounds.kilograms()),
                             {PushUpKind::Floor, {}, Mass::ofKilograms(vest.kilograms())});
    EXPECT_NEAR(typed, same, 0.001); // grams lost in ofKilograms
}

TEST(PushUpLoad, PutsNineTenthsOfAVestOnTheHands)
{
    // 0.83 locked out, 0.95 at the chest, worked by hand from the same statics.
    const Mass ten = Mass::ofKilograms(10.0);
    const auto bare = pushUpLoad(person(), {}, {PushUpKind::Floor, {}, {}}).value();
    const auto worn = pushUpLoad(person(), {}, {PushUpKind::Floor, {}, ten}).value();
    EXPECT_NEAR(worn.lockedOut - bare.lockedOut, 8.3, 0.05);
    EXPECT_NEAR(worn.atChest - bare.atChest, 9.5, 0.05);
    for (const PushUpKind kind : {PushUpKind::Knees, PushUpKind::Wall}) {
        const double gain = load(person(), {kind, {}, ten}) - load(person(), {kind, {}, {}});
        EXPECT_GT(gain, 0.0);
        EXPECT_LT(gain, 10.0);
    }
}

TEST(PushUpLoad, LiesMidwayWhenTheSexIsNotKnown)
{
    Presser presser = person();
    const double male = load(presser, bar(500));
    presser.sex = Sex::Female;
    const double female = load(presser, bar(500));
    presser.sex = std::nullopt;
    EXPECT_NEAR(load(presser, bar(500)), (male + female) / 2.0, 1e-9);
    EXPECT_NE(male, female);
}

TEST(PushUpLoad, DoubtsMoreTheHigherTheHands)
{
    double before = 0.0;
    for (const int height : {0, 200, 500, 800, 1100}) {
        const Estimate at = pushUpLoad(person(), {}, bar(height)).value().load;
        expectWhole(at);
        EXPECT_GT(at.high / at.low, before);
        before = at.high / at.low;
    }
    const Estimate wall = pushUpLoad(person(), {}, {PushUpKind::Wall, {}, {}}).value().load;
    EXPECT_NEAR(wall.low, 0.05 * 80.0, 0.1); // 5 to 20 % of body weight
    EXPECT_NEAR(wall.high, 0.20 * 80.0, 0.2);
}

TEST(PushUpLoad, RefusesWhatItCannotReckon)
{
    const PushUp floor = {PushUpKind::Floor, {}, {}};
    const PersonalLever lever;
    EXPECT_FALSE(pushUpLoad(person(80.0, 1199), lever, floor));
    EXPECT_FALSE(pushUpLoad(person(80.0, 2301), lever, floor));
    EXPECT_FALSE(pushUpLoad(person(19.9), lever, floor));
    EXPECT_FALSE(pushUpLoad(person(400.1), lever, floor));
    EXPECT_FALSE(pushUpLoad(person(), lever, bar(-1)));
    EXPECT_FALSE(pushUpLoad(person(), lever, bar(1191)));
    EXPECT_TRUE(pushUpLoad(person(), lever, bar(1190)));
    EXPECT_FALSE(pushUpLoad(person(), lever, {PushUpKind::Floor, Length{1}, {}}));
    EXPECT_FALSE(
        pushUpLoad(person(), lever, {PushUpKind::FeetRaised, Length::ofMillimetres(611), {}}));
    EXPECT_FALSE(pushUpLoad(person(), lever, {PushUpKind::Floor, {}, Mass::ofKilograms(-1.0)}));
    const auto heavy =
        pushUpLoad(person(), lever, {PushUpKind::Floor, {}, Mass::ofKilograms(100.5)});
    ASSERT_FALSE(heavy);
    EXPECT_EQ(sentence(heavy.error()), "'100.5' lies outside 0 to 100");
}

TEST(PushUpLoad, HandHeightIsItsInverse)
{
    PersonalLever lever;
    lever.mean[PersonalLever::Level] = 0.04;
    lever.mean[PersonalLever::Slope] = -0.2;
    const Mass vest = Mass::ofKilograms(5.0);
    for (int height = 0; height <= 1190; height += 7) {
        PushUp pushUp = bar(height);
        pushUp.added = vest;
        const double kilograms = pushUpLoad(person(), lever, pushUp).value().load.value;
        const Length back = handHeightFor(person(), lever, kilograms, vest).value();
        EXPECT_NEAR(back.tenthMillimetres, height * 10, 1) << height;
    }
}

TEST(PushUpLoad, HandHeightIsTheGreatestWhereASteepSlopeGivesTwo)
{
    PersonalLever lever;
    lever.mean[PersonalLever::Slope] = 0.8; // heavier off the floor at first
    const double floor = pushUpLoad(person(), lever, bar(0)).value().load.value;
    ASSERT_GT(pushUpLoad(person(), lever, bar(200)).value().load.value, floor);
    const Length height = handHeightFor(person(), lever, 0.99 * floor).value();
    EXPECT_GT(height.metres(), 0.2);
    const PushUp at = {PushUpKind::HandsRaised, height, {}};
    EXPECT_NEAR(pushUpLoad(person(), lever, at).value().load.value, 0.99 * floor, 0.01);
}

TEST(PushUpLoad, RefusesALoadThatNoHeightGives)
{
    for (const double kilograms : {-1.0,
                                   0.0,
                                   5.0,
                                   79.0,
                                   1e300,
                                   std::numeric_limits<double>::infinity(),
                                   std::numeric_limits<double>::quiet_NaN()}) {
        EXPECT_FALSE(handHeightFor(person(), {}, kilograms)) << kilograms;
    }
}

ScaleReading reading(const PushUp& pushUp, double factor)
{
    const FormulaLoad formula = formulaLoad(person(), pushUp).value();
    return {pushUp,
            Mass::ofKilograms(formula.lockedOut * factor),
            Mass::ofKilograms(formula.atChest * factor)};
}

TEST(ScaleReadingTest, OnTheFloorIsAPrecisionWeightedMean)
{
    const PersonalLever lever = calibrated({}, person(), reading(bar(0), 1.08)).value();
    const double ofPeople = 1.0 / square(0.055);
    const double ofReading = 1.0 / square(0.03);
    EXPECT_NEAR(lever.mean[PersonalLever::Level],
                std::log(1.08) * ofReading / (ofPeople + ofReading),
                1e-5);
    EXPECT_NEAR(lever.logVariance(0.0), 1.0 / (ofPeople + ofReading), 1e-12);
    EXPECT_EQ(lever.readings, 1);
}

TEST(ScaleReadingTest, PullsTheLoadTowardsItAndNarrowsTheDoubt)
{
    const Estimate before = pushUpLoad(person(), {}, bar(400)).value().load;
    const PersonalLever lever = calibrated({}, person(), reading(bar(400), 0.9)).value();
    const Estimate after = pushUpLoad(person(), lever, bar(400)).value().load;
    EXPECT_LT(after.value, before.value);
    EXPECT_GT(after.value, 0.9 * before.value);
    EXPECT_LT(after.high / after.low, before.high / before.low);
    EXPECT_EQ(after.count, 1);
}

TEST(ScaleReadingTest, DoesNotMindTheOrder)
{
    const ScaleReading floor = reading(bar(0), 1.05);
    const ScaleReading box = reading(bar(600), 0.9);
    const auto one = calibrated(calibrated({}, person(), floor).value(), person(), box).value();
    const auto other = calibrated(calibrated({}, person(), box).value(), person(), floor).value();
    for (const double rise : {0.0, 0.2, 0.5}) {
        EXPECT_NEAR(one.logFactor(rise), other.logFactor(rise), 1e-12);
        EXPECT_NEAR(one.logVariance(rise), other.logVariance(rise), 1e-12);
    }
}

TEST(ScaleReadingTest, NeverLearnsThePushFromAnInclineHoweverOften)
{
    // A scale cannot tell a lighter load from a push that leans more.
    PersonalLever lever;
    for (int i = 0; i < 200; ++i) {
        lever = calibrated(lever, person(), reading(bar(700), 0.95)).value();
    }
    const double rise = 0.7 / 1.75;
    const double left = square(0.32) * square(0.25) / (square(0.32) + square(0.25));
    EXPECT_GT(std::sqrt(lever.logVariance(rise)), 0.8 * std::sqrt(left) * rise);
    EXPECT_LT(lever.logFactor(rise), 0.0);
    EXPECT_GT(lever.logFactor(rise), std::log(0.95));
}

struct Errors {
    double sum = 0.0; // of |ln|
    int held = 0;

    void take(const Estimate& ours, double truth)
    {
        sum += std::abs(std::log(ours.value / truth));
        held += truth >= ours.low && truth <= ours.high ? 1 : 0;
    }
};

// People as the model assumes them to differ, a scale on the floor and one on a box, the load on
// a bar 0.45 m up.
TEST(ScaleReadingTest, HelpsAThousandPeopleAndKeepsItsWord)
{
    constexpr int kPeople = 1000;
    tests::Random random(42);
    const PushUp asked = bar(450);
    const double rise = 0.45 / 1.75;
    Errors before;
    Errors after;
    for (int i = 0; i < kPeople; ++i) {
        const double level = random.normal(0.0, 0.055);
        const double slope = random.normal(0.0, 0.32);
        const double push = random.normal(0.0, 0.25);
        PersonalLever lever;
        for (const int height : {0, 600}) {
            const double at = height / 1750.0;
            const double noise = random.normal(0.0, 0.03);
            const double factor = std::exp(level + (slope + push) * at + noise);
            lever = calibrated(lever, person(), reading(bar(height), factor)).value_or(lever);
        }
        const double truth =
            formulaLoad(person(), asked).value().repLoad() * std::exp(level + slope * rise);
        before.take(pushUpLoad(person(), {}, asked).value().load, truth);
        after.take(pushUpLoad(person(), lever, asked).value().load, truth);
    }
    std::printf(
        "load at 0.45 m: mean error %.1f %%, in interval %.3f; two readings %.1f %%, %.3f\n",
        100.0 * before.sum / kPeople,
        double(before.held) / kPeople,
        100.0 * after.sum / kPeople,
        double(after.held) / kPeople);
    EXPECT_LT(after.sum, 0.75 * before.sum);
    for (const Errors& errors : {before, after}) {
        EXPECT_NEAR(double(errors.held) / kPeople, kLevel, 0.028); // three standard errors
    }
}

TEST(ScaleReadingTest, RefusesWhatCannotBeARightReading)
{
    EXPECT_FALSE(calibrated({}, person(), reading(bar(0), 1.0 / kKilogramsPerPound)));
    EXPECT_FALSE(calibrated({}, person(), reading(bar(0), 0.6)));
    EXPECT_FALSE(calibrated({}, person(), {bar(0), {}, {}}));
    EXPECT_FALSE(calibrated({}, person(), reading({PushUpKind::Wall, {}, {}}, 1.0)));
    EXPECT_FALSE(calibrated({}, person(), reading({PushUpKind::Knees, {}, {}}, 1.0)));
    EXPECT_TRUE(calibrated({}, person(), reading(bar(0), 1.1)));
}

} // namespace
} // namespace levelbar::push_up_test
