// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later

#include "core/sides/side_difference.h"
#include "core/sides/side_pairs.h"
#include "tests/support/random.h"
#include "tests/support/sets.h"

#include <gtest/gtest.h>

#include <cmath>
#include <cstdio>

namespace levelbar::sides_test {
namespace {

using tests::day;
using tests::set;

const Day kToday = day("2026-06-30");

SideSeries seriesOf(double true_, int days, double noise, tests::Random& random)
{
    SideSeries series;
    for (int i = days; i-- > 0;) {
        series.pairs.push_back({kToday - 10 * i, true_ + random.normal(0.0, noise)});
    }
    return series;
}

MeasuredSides roster(int people, tests::Random& random, std::vector<double>& truth)
{
    MeasuredSides measure;
    measure.measure.name = "Grip strength";
    for (int i = 0; i < people; ++i) {
        truth.push_back(random.chance(0.1) ? random.normal(0.0, 14.0) : random.normal(0.0, 4.0));
        measure.owners.push_back(static_cast<std::size_t>(i));
        measure.series.push_back(seriesOf(truth.back(), 2 + random.below(6), 6.0, random));
    }
    return measure;
}

TEST(SidePairsTest, TestsPairTheBestValidTrialOfEachSide)
{
    const auto trial = [](Side side, int number, double value, bool isValid = true) {
        Trial made;
        made.day = kToday;
        made.side = side;
        made.number = number;
        made.valueThousandths = std::llround(value * 1000);
        made.unit = "kg";
        made.isValid = isValid;
        return made;
    };
    const std::vector<Trial> left = {
        trial(Side::Left, 1, 40), trial(Side::Left, 2, 38), trial(Side::Left, 3, 60, false)};
    const std::vector<Trial> right = {trial(Side::Right, 1, 50)};
    const auto pairs = pairsFromTrials(left, right, Direction::MoreIsBetter);
    ASSERT_EQ(pairs.size(), 1U);
    EXPECT_NEAR(pairs[0].logPercent, 100 * std::log(50.0 / 40.0), 1e-12);
    const auto less = pairsFromTrials(left, right, Direction::LessIsBetter);
    EXPECT_NEAR(less[0].logPercent, 100 * std::log(38.0 / 50.0), 1e-12)
        << "fewer seconds are stronger";
}

TEST(SidePairsTest, OnlyComparableSetsSizeADifference)
{
    std::vector<PerformedSet> left = {set(kToday, 1, 20, 8, 1)};
    std::vector<PerformedSet> right = {set(kToday, 1, 20, 10, 1)};
    EXPECT_EQ(pairsFromSets(left, right, nullptr).size(), 1U);
    EXPECT_GT(pairsFromSets(left, right, nullptr)[0].logPercent, 0.0);
    const auto gone = [&](auto change) {
        auto other = right;
        change(other[0]);
        return pairsFromSets(left, other, nullptr).empty();
    };
    EXPECT_TRUE(gone([](PerformedSet& s) { s.stopped = StopReason::Capped; }));
    EXPECT_TRUE(gone([](PerformedSet& s) { s.stopped = StopReason::Pain; }));
    EXPECT_TRUE(gone([](PerformedSet& s) { s.known = HowKnown::Accepted; }));
    EXPECT_TRUE(gone([](PerformedSet& s) { s.known = HowKnown::Group; }));
    EXPECT_TRUE(gone([](PerformedSet& s) { s.reserve.reset(); }));
    EXPECT_TRUE(gone([](PerformedSet& s) { s.reserve = Reserve{30}; }));
    EXPECT_TRUE(gone([](PerformedSet& s) { s.day = kToday - 1; }));
    EXPECT_TRUE(gone([](PerformedSet& s) { s.load = Mass::ofKilograms(200); })) << "an entry slip";
}

TEST(SidePairsTest, SwappingTheSidesTurnsTheSign)
{
    tests::Random random(5);
    for (int trial = 0; trial < 100; ++trial) {
        const std::vector<PerformedSet> a = {
            set(kToday, 1, 20 + random.below(10), 5 + random.below(8), random.below(3))};
        auto b = a;
        b[0].reps = 5 + random.below(8);
        const auto forth = pairsFromSets(a, b, nullptr);
        const auto back = pairsFromSets(b, a, nullptr);
        ASSERT_EQ(forth.size(), back.size());
        if (!forth.empty()) {
            EXPECT_NEAR(forth[0].logPercent, -back[0].logPercent, 1e-9);
        }
    }
}

TEST(SidePairsTest, UnderTheCapOnlyGoingPastAndOpenPairsCount)
{
    auto capped = set(kToday, 1, 20, 9);
    capped.stopped = StopReason::Capped;
    const auto pairsAfter = [&](int days, int leftReps, int rightReps, SetKind kind) {
        std::vector<PerformedSet> left = {set(kToday, 1, 20, 9, 2),
                                          set(kToday + days, 1, 20, leftReps, 2)};
        std::vector<PerformedSet> right = {capped, set(kToday + days, 1, 20, rightReps, 2)};
        left[1].kind = right[1].kind = kind;
        return pairsFromSets(left, right, nullptr).size();
    };
    EXPECT_EQ(pairsAfter(7, 9, 9, SetKind::Work), 0U) << "its better days are cut off";
    EXPECT_EQ(pairsAfter(7, 9, 7, SetKind::Work), 0U);
    EXPECT_EQ(pairsAfter(7, 9, 11, SetKind::Work), 1U) << "went past the cap";
    EXPECT_EQ(pairsAfter(7, 9, 7, SetKind::Open), 1U);
    EXPECT_EQ(pairsAfter(27, 9, 9, SetKind::Work), 0U);
    EXPECT_EQ(pairsAfter(28, 9, 9, SetKind::Work), 1U) << "four weeks without a cap";
}

TEST(SideListsTest, TheWholeListIsControlledThoseWhoStayIncluded)
{
    tests::Random random(23);
    std::vector<double> truth;
    const std::vector<MeasuredSides> all = {roster(200, random, truth), roster(200, random, truth)};
    int listed = 0;
    for (int week = 12; week >= 0; --week) {
        const RosterSides sides = reviewSides(all, kToday - 7 * week, 10.0);
        EXPECT_LE(sides.expectedFalseLook, kFalseShare * sides.look + 1e-9);
        listed += sides.look;
    }
    EXPECT_GT(listed, 100);
}

TEST(SideModelTest, SteadyPeopleAreJudgedBySharperEyes)
{
    tests::Random random(29);
    std::vector<SideSeries> many;
    for (int i = 0; i < 200; ++i) {
        many.push_back(seriesOf(random.normal(0, 4), 8, i % 2 == 0 ? 2.5 : 9.0, random));
    }
    many[0].pairs.clear();
    many[1].pairs.clear();
    for (int i = 8; i-- > 0;) {
        const double swing = i % 2 == 0 ? 1.0 : -1.0;
        many[0].pairs.push_back({kToday - 10 * i, 8.0 + 2.0 * swing});
        many[1].pairs.push_back({kToday - 10 * i, 8.0 + 10.0 * swing});
    }
    const SideNoise noise = poolNoise(many, kToday, {});
    const SidePrior prior = learnPrior(many, kToday, noise, {});
    const auto width = [&](const SideSeries& series) {
        const SidePosterior posterior =
            posteriorOf(lookAt(series, kToday, noise).value(), prior, 0.0);
        return posterior.quantile(0.95) - posterior.quantile(0.05);
    };
    EXPECT_LT(width(many[0]), 0.6 * width(many[1]));
    EXPECT_LT(noise.tail, 8.0);
}

TEST(SideModelTest, SteadinessIsNotFoundWhereEveryoneIsAlike)
{
    tests::Random random(31);
    std::vector<SideSeries> many;
    for (int i = 0; i < 300; ++i) {
        many.push_back(seriesOf(random.normal(0, 5), 6, 5.0, random));
    }
    EXPECT_GT(poolNoise(many, kToday, {}).tail, 25.0);
}

TEST(SideModelTest, QuantileTurnsBelowRound)
{
    SidePosterior posterior;
    posterior.add({-20.0, 1.0, 0.5, 4.0});
    posterior.add({15.0, 0.5, 0.4, 4.0});
    posterior.add({0.0, 30.0, 0.1, 9.0});
    for (double p = 0.001; p < 1.0; p += 0.0117) {
        EXPECT_NEAR(posterior.below(posterior.quantile(p)), p, 1e-7);
    }
    EXPECT_LT(posterior.nextDay().quantile(0.05), posterior.quantile(0.05));
    EXPECT_NEAR(posterior.nextDay().mean(), posterior.mean(), 1e-12);
}

TEST(SideModelTest, NoiseIsPooledAndHeldNearWhatIsUsual)
{
    std::vector<SideSeries> none(3);
    EXPECT_NEAR(poolNoise(none, kToday, {}).spread, 6.0, 1e-12);
    tests::Random random(11);
    std::vector<SideSeries> many;
    for (int i = 0; i < 300; ++i) {
        many.push_back(seriesOf(random.normal(0, 5), 6, 4.0, random));
    }
    EXPECT_NEAR(poolNoise(many, kToday, {}).spread, 4.0, 0.25);
}

TEST(SideModelTest, LearnsTheRostersSpread)
{
    tests::Random random(13);
    std::vector<SideSeries> many;
    for (int i = 0; i < 600; ++i) {
        const double truth = random.chance(0.1) ? random.normal(0, 15) : random.normal(0, 3);
        many.push_back(seriesOf(truth, 6, 4.0, random));
    }
    const SideNoise noise = poolNoise(many, kToday, {});
    const SidePrior prior = learnPrior(many, kToday, noise, {});
    EXPECT_NEAR(prior.narrow, 3.0, 0.8);
    EXPECT_NEAR(prior.wide, 15.0, 4.0);
    EXPECT_NEAR(prior.wideShare, 0.1, 0.05);
}

TEST(SideModelTest, LaterPairsDoNotCount)
{
    SideSeries series;
    series.pairs = {{kToday, 10.0}, {kToday + 1, 50.0}};
    EXPECT_DOUBLE_EQ(lookAt(series, kToday, {})->mean, 10.0);
    EXPECT_FALSE(lookAt(series, kToday - 1, {}));
    EXPECT_FALSE(lookAt(series, kToday + 200, {})) << "120 days on, it says nothing";
}

TEST(SideListsTest, ASingleLookIsNeverListed)
{
    tests::Random random(3);
    MeasuredSides measure;
    for (std::size_t i = 0; i < 40; ++i) {
        measure.owners.push_back(i);
        measure.series.emplace_back().pairs = {{kToday, i == 0 ? 60.0 : random.normal(0, 4)}};
    }
    const std::vector<MeasuredSides> all = {measure};
    const RosterSides sides = reviewSides(all, kToday, 10.0);
    EXPECT_EQ(sides.look, 0);
    EXPECT_EQ(sides.act, 0);
    EXPECT_EQ(sides.entries.size(), 40U);
}

TEST(SideListsTest, AtMostOneInTenIsChanceOnAverage)
{
    int look = 0;
    int falseLook = 0;
    int act = 0;
    int falseAct = 0;
    double expectedLook = 0.0;
    for (std::uint64_t seed = 1; seed <= 12; ++seed) {
        tests::Random random(seed);
        std::vector<double> truth;
        const std::vector<MeasuredSides> all = {roster(150, random, truth)};
        const RosterSides sides = reviewSides(all, kToday, 10.0);
        expectedLook += sides.expectedFalseLook;
        for (const auto& entry : sides.entries) {
            const double d = truth[entry.owner];
            const bool isWrongSide = entry.review.weaker == Side::Left ? d < 0 : d > 0;
            if (entry.review.tier == SideTier::Look || entry.review.tier == SideTier::Act) {
                ++look;
                falseLook += isWrongSide || std::abs(d) <= logPercentOf(5) ? 1 : 0;
            }
            if (entry.review.tier == SideTier::Act) {
                ++act;
                falseAct += isWrongSide || std::abs(d) <= logPercentOf(10) ? 1 : 0;
            }
        }
    }
    std::printf("look %d, false %d (said %.1f); act %d, false %d\n",
                look,
                falseLook,
                expectedLook,
                act,
                falseAct);
    EXPECT_GT(look, 100);
    EXPECT_GT(act, 25);
    // Sampling and the names that stay for a while allow a little more than a tenth.
    EXPECT_LT(falseLook, 0.15 * look);
    EXPECT_LT(falseAct, 0.18 * act);
}

TEST(SideListsTest, TheIntervalHoldsTheTruthNineTimesInTen)
{
    int inside = 0;
    int count = 0;
    for (std::uint64_t seed = 21; seed <= 28; ++seed) {
        tests::Random random(seed);
        std::vector<double> truth;
        const std::vector<MeasuredSides> all = {roster(150, random, truth)};
        for (const auto& entry : reviewSides(all, kToday, 10.0).entries) {
            const double d = percentOf(truth[entry.owner]);
            inside +=
                entry.review.differencePercent.low <= d && d <= entry.review.differencePercent.high
                    ? 1
                    : 0;
            ++count;
        }
    }
    EXPECT_NEAR(static_cast<double>(inside) / count, 0.90, 0.03);
}

TEST(SideListsTest, PainSendsOnInsteadOfListing)
{
    tests::Random random(17);
    std::vector<double> truth;
    MeasuredSides measure = roster(60, random, truth);
    measure.series[0] = seriesOf(30.0, 8, 2.0, random);
    measure.series[0].pains = {{kToday - 3, "Press", ""}};
    const std::vector<MeasuredSides> all = {measure};
    const RosterSides sides = reviewSides(all, kToday, 10.0);
    EXPECT_EQ(sides.entries[0].review.tier, SideTier::SendOn);
}

TEST(SideListsTest, NamesDoNotFlickerAtTheCut)
{
    // Listed a week ago, just below the cut today: stays.
    tests::Random random(19);
    std::vector<double> truth;
    const std::vector<MeasuredSides> all = {roster(150, random, truth)};
    int changes = 0;
    std::vector<SideTier> before;
    for (int week = 8; week >= 0; --week) {
        const RosterSides sides = reviewSides(all, kToday - 7 * week, 10.0);
        std::vector<SideTier> tiers(150, SideTier::None);
        for (const auto& entry : sides.entries) {
            tiers[entry.owner] = entry.review.tier;
        }
        for (std::size_t i = 0; i < before.size(); ++i) {
            changes += before[i] != SideTier::None && tiers[i] == SideTier::None ? 1 : 0;
        }
        before = tiers;
    }
    EXPECT_LT(changes, 12);
}

} // namespace
} // namespace levelbar::sides_test
