// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later

#include "core/strength/member_strength.h"
#include "core/strength/rep_curve.h"
#include "core/strength/strength.h"
#include "core/trend/trend.h"
#include "tests/support/random.h"
#include "tests/support/sets.h"

#include <gtest/gtest.h>

#include <cmath>

namespace levelbar::strength_test {
namespace {

using tests::day;
using tests::set;

const Day kToday = day("2026-06-30");

ExerciseFit fitOf(const std::vector<PerformedSet>& sets, Day today = kToday)
{
    const std::vector<ExerciseHistory> one = {{{sets, {}}, {}, {}, std::nullopt}};
    return fitMember(one, {Experience::Intermediate, {}}, today).front().value();
}

std::vector<PerformedSet>
weeks(int count, double kilograms, double growth, HowKnown known = HowKnown::Counted)
{
    std::vector<PerformedSet> sets;
    for (int week = 0; week < count; ++week) {
        sets.push_back(
            set(kToday - 7 * (count - 1 - week), 1, kilograms * std::exp(growth * week), 8, 2));
        sets.back().known = known;
        if (known != HowKnown::Counted) {
            sets.back().reserve.reset();
        }
    }
    return sets;
}

TEST(StrengthTest, NothingToGoByIsNoEstimate)
{
    const std::vector<ExerciseHistory> none = {{}};
    EXPECT_FALSE(fitMember(none, {}, kToday).front());
    std::vector<PerformedSet> ramp = {set(kToday, 1, 40, 8, 2)};
    ramp.front().kind = SetKind::Ramp;
    const std::vector<ExerciseHistory> warm = {{{ramp, {}}, {}, {}, std::nullopt}};
    EXPECT_FALSE(fitMember(warm, {}, kToday).front());
}

TEST(StrengthTest, TestedMaximaSayNothingOfTheRepCurve)
{
    std::vector<TestedMaximum> tests;
    for (int week = 0; week < 8; ++week) {
        tests.push_back({kToday - 7 * (7 - week), week % 2 == 0 ? 60.0 : 72.0});
    }
    const std::vector<ExerciseHistory> one = {{{{}, tests}, {}, {}, std::nullopt}};
    const ExerciseFit fit = fitMember(one, {Experience::Intermediate, {}}, kToday).front().value();
    EXPECT_NEAR(fit.fit.factor, kPublishedLogFactor, 1e-9);
    EXPECT_NEAR(std::sqrt(fit.fit.factorVariance), 0.30, 1e-6); // the prior's spread
}

TEST(StrengthTest, LaterSetsDoNotCount)
{
    auto sets = weeks(6, 60, 0.0);
    const double before = fitOf(sets).fit.level;
    sets.push_back(set(kToday + 1, 1, 200, 8, 0));
    EXPECT_DOUBLE_EQ(fitOf(sets).fit.level, before);
}

TEST(StrengthTest, KilogramsAndPoundsGiveTheSame)
{
    auto kilograms = weeks(6, 61.23497, 0.0); // 135 lb
    auto pounds = kilograms;
    for (PerformedSet& one : pounds) {
        one.load = Mass::ofThousandths(135000, MassUnit::Pound);
    }
    for (PerformedSet& one : kilograms) {
        one.load = Mass::ofKilograms(135 * kKilogramsPerPound);
    }
    EXPECT_NEAR(fitOf(kilograms).fit.level, fitOf(pounds).fit.level, 1e-5);
}

TEST(StrengthTest, MoreLoadForTheSameRepsNeverLowersIt)
{
    tests::Random random(7);
    for (int trial = 0; trial < 200; ++trial) {
        std::vector<PerformedSet> sets;
        for (int i = 0; i < 12; ++i) {
            sets.push_back(set(kToday - 7 * (11 - i),
                               1,
                               60 + random.below(10),
                               6 + random.below(6),
                               random.below(4)));
        }
        const double before = fitOf(sets).fit.level;
        for (PerformedSet& one : sets) {
            one.load = Mass::ofKilograms(one.load.kilograms() * 1.05);
        }
        // Five percent on every load is five percent of strength: the model has no scale.
        EXPECT_NEAR(fitOf(sets).fit.level - before, std::log(1.05), 2e-3);
    }
}

TEST(StrengthTest, WhichSideWentFirstDoesNotMatter)
{
    const auto estimate = [](int leftOrder, int rightOrder) {
        auto left = weeks(8, 20, 0.0);
        auto right = weeks(8, 22, 0.0);
        for (PerformedSet& one : left) {
            one.order = leftOrder;
        }
        for (PerformedSet& one : right) {
            one.order = rightOrder;
        }
        const std::vector<ExerciseHistory> arm = {{{}, {left, {}}, {right, {}}, std::nullopt}};
        return fitMember(arm, {Experience::Intermediate, {}}, kToday).front().value().fit;
    };
    EXPECT_EQ(estimate(1, 2).level, estimate(2, 1).level);
    EXPECT_EQ(estimate(1, 2).difference, estimate(2, 1).difference);
}

TEST(StrengthTest, AnotherSetThatAgreesNarrowsIt)
{
    auto sets = weeks(8, 60, 0.0);
    const double before = fitOf(sets).fit.levelVariance;
    sets.push_back(set(kToday, 2, 60, 8, 2));
    EXPECT_LT(fitOf(sets).fit.levelVariance, before);
}

TEST(StrengthTest, EvidenceThatGetsOldWidensIt)
{
    const auto sets = weeks(10, 60, 0.0);
    const ExerciseFit now = fitOf(sets);
    const ExerciseFit later = fitOf(sets, kToday + 100);
    EXPECT_GT(later.fit.levelVariance, now.fit.levelVariance);
    EXPECT_LT(later.fit.level, now.fit.level) << "a lay-off costs strength";
    EXPECT_EQ(evidenceOf(kToday, kToday + 28), Evidence::Recent);
    EXPECT_EQ(evidenceOf(kToday, kToday + 29), Evidence::GettingOld);
    EXPECT_EQ(evidenceOf(kToday, kToday + 85), Evidence::TooOld);
}

TEST(StrengthTest, OneOffDayHardlyMoves)
{
    auto sets = weeks(12, 60, 0.0);
    const double before = fitOf(sets).fit.level;
    sets.back().reps = 1; // a slip of the pen
    EXPECT_LT(std::abs(fitOf(sets).fit.level - before), 0.04);
}

TEST(StrengthTest, WhoOnlyPressesEnterGetsAWideIntervalAndNeverRises)
{
    const auto accepted = weeks(26, 60, 0.02, HowKnown::Accepted); // the plan rises 2 % a week
    const ExerciseFit fit = fitOf(accepted);
    const StrengthEstimate strength = strengthOf(fit, Side::Both, kToday);
    EXPECT_EQ(strength.oneRepMax.count, 0);
    EXPECT_EQ(strength.bounds, 26);
    const Trend trend = trendOf(fit, kToday);
    EXPECT_EQ(trend.call, TrendCall::TooEarly);
    EXPECT_FALSE(trend.percentPerWeek);
    ASSERT_TRUE(trend.askAgainOn);
    EXPECT_GT(*trend.askAgainOn, kToday);
    const StrengthEstimate counted = strengthOf(fitOf(weeks(26, 60, 0.0)), Side::Both, kToday);
    EXPECT_GT(strength.logSpread, counted.logSpread);
}

TEST(StrengthTest, AnEasyDayIsALowerBoundWhateverReserveIsNamed)
{
    auto sets = weeks(8, 60, 0.0);
    const ExerciseFit before = fitOf(sets);
    sets.push_back(set(kToday, 2, 50, 8, 2)); // a sixth lighter, and two left: far under the rest
    sets.back().isAtLeast = true;
    const ExerciseFit after = fitOf(sets);
    EXPECT_EQ(after.evidence.measured, before.evidence.measured);
    EXPECT_EQ(after.evidence.bounds, before.evidence.bounds + 1);
    EXPECT_NEAR(after.fit.level, before.fit.level, 2e-3);
}

TEST(StrengthTest, AFailedSingleIsAnUpperBound)
{
    auto sets = weeks(4, 60, 0.0);
    const double before = fitOf(sets).fit.level;
    PerformedSet failed = set(kToday, 2, 70, 0);
    sets.push_back(failed);
    EXPECT_LT(fitOf(sets).fit.level, before) << "70 kg did not go up";
    sets.back().load = Mass::ofKilograms(150);
    EXPECT_NEAR(fitOf(sets).fit.level, before, 1e-3) << "nobody expected 150 kg to go up";
}

TEST(StrengthTest, ATestedMaximumIsTheStrongestEvidence)
{
    const auto sets = weeks(4, 60, 0.0);
    const std::vector<TestedMaximum> tests = {{kToday, 90.0}};
    const std::vector<ExerciseHistory> tested = {{{sets, tests}, {}, {}, std::nullopt}};
    const ExerciseFit with =
        fitMember(tested, {Experience::Intermediate, {}}, kToday).front().value();
    EXPECT_LT(std::abs(with.fit.level - std::log(90.0)),
              std::abs(fitOf(sets).fit.level - std::log(90.0)));
    EXPECT_EQ(with.evidence.measured, 5);
}

TEST(StrengthTest, ARelatedLiftGivesAFirstGuessWithAnHonestInterval)
{
    const auto bench = weeks(12, 60, 0.0);
    std::vector<ExerciseHistory> two = {{{bench, {}}, {}, {}, std::nullopt}, {}};
    two[1].related = RelatedLift{0, 0.83, 0.09};
    const auto fits = fitMember(two, {Experience::Intermediate, {}}, kToday);
    ASSERT_TRUE(fits[1]);
    EXPECT_TRUE(fits[1]->isFromRelated);
    EXPECT_NEAR(fits[1]->fit.level - fits[0]->fit.level, std::log(0.83), 1e-9);
    EXPECT_GT(fits[1]->fit.levelVariance, fits[0]->fit.levelVariance + 0.09 * 0.09 - 1e-12);
}

TEST(StrengthTest, SteadyGainsAreCalledRising)
{
    const Trend trend = trendOf(fitOf(weeks(26, 60, 0.01)), kToday);
    EXPECT_EQ(trend.call, TrendCall::Rising);
    EXPECT_NEAR(trend.percentPerWeek->value, 1.0, 0.3);
    const Trend falling = trendOf(fitOf(weeks(26, 60, -0.012)), kToday);
    EXPECT_EQ(falling.call, TrendCall::Falling);
}

TEST(StrengthTest, NeverSaysWhatIsNotANumber)
{
    tests::Random random(99);
    for (int trial = 0; trial < 400; ++trial) {
        std::vector<PerformedSet> sets;
        int at = kToday.sinceEpoch - 600;
        const int count = 1 + random.below(30);
        for (int i = 0; i < count; ++i) {
            at += random.below(20);
            PerformedSet one = set(Day{at}, 1, random.uniform(0.5, 300.0), random.below(41));
            if (random.chance(0.6)) {
                one.reserve = Reserve{10 * random.below(12)};
            }
            one.known = static_cast<HowKnown>(1 + random.below(4));
            sets.push_back(one);
        }
        const std::vector<ExerciseHistory> all = {{{sets, {}}, {}, {}, std::nullopt}};
        const auto fit = fitMember(all, {}, Day{at + random.below(200)}).front();
        if (fit) {
            EXPECT_TRUE(fit->fit.isFinite);
            EXPECT_TRUE(std::isfinite(fit->fit.level));
            EXPECT_GE(fit->fit.levelVariance, 0.0);
            EXPECT_GE(fit->fit.slopeVariance, -1e-12);
        }
    }
}

TEST(StrengthTest, ThePastAsSeenTodayEndsInToday)
{
    const auto sets = weeks(20, 60, 0.005);
    const std::vector<ExerciseHistory> one = {{{sets, {}}, {}, {}, std::nullopt}};
    const auto fit =
        fitMember(one, {Experience::Intermediate, {}}, kToday, {true, {}}).front().value();
    ASSERT_EQ(fit.fit.path.size(), 20U);
    EXPECT_NEAR(fit.fit.path.back().level, fit.fit.level, 1e-6);
    EXPECT_NEAR(fit.fit.path.back().levelVariance, fit.fit.levelVariance, 1e-8);
    // Looking back knows more than looking ahead: the middle is surer than either end.
    EXPECT_LT(fit.fit.path[10].levelVariance, fit.fit.path.front().levelVariance);
}

TEST(RepsAtFourFifthsTest, AreThePublishedOnesWithoutSets)
{
    // Nuzzo 2024: 8.8 reps with 80 % of the maximum, standard deviation 2.51.
    const std::vector<TestedMaximum> tests = {{kToday - 5, 60.0}};
    std::vector<ExerciseHistory> one(1);
    one.front().both.tests = tests;
    const ExerciseFit fit = fitMember(one, {}, kToday).front().value();
    const RepsAtFourFifths reps = repsAtFourFifths(fit, {});
    EXPECT_NEAR(reps.average, 8.8, 0.06);
    // In ln and of the reps beyond the first, so a little narrower than the normal's.
    EXPECT_NEAR(reps.own.high - reps.own.low, 2.0 * kNormalQuantile * 2.51, 0.8);
}

TEST(RepsAtFourFifthsTest, FollowThePersonsFactorAndTheGymsAverage)
{
    const std::vector<TestedMaximum> tests = {{kToday - 5, 60.0}};
    std::vector<ExerciseHistory> one(1);
    one.front().both.tests = tests;
    ExerciseFit fit = fitMember(one, {}, kToday).front().value();
    fit.fit.factor = std::log(1.5);
    fit.fit.factorVariance = 1e-8;
    fit.fit.shapeVariance = 0.0;
    RepCurveExpectation curve;
    curve.factor += std::log(1.2);
    curve.people = 12;
    const RepsAtFourFifths reps = repsAtFourFifths(fit, curve);
    EXPECT_NEAR(reps.own.value, 1.0 + 1.5 * (repsAtFraction(0.8) - 1.0), 1e-9);
    EXPECT_NEAR(reps.own.low, reps.own.high, 0.01);
    EXPECT_NEAR(reps.average, 1.0 + 1.2 * (repsAtFraction(0.8) - 1.0), 1e-9);
    EXPECT_EQ(reps.people, 12);
}

} // namespace
} // namespace levelbar::strength_test
