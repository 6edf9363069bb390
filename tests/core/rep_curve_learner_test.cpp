// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/strength/personal_curve.h"
#include "core/strength/rep_curve.h"
#include "core/strength/rep_curve_learner.h"
#include "tests/support/random.h"

#include <gtest/gtest.h>

#include <cmath>

namespace levelbar::rep_curve_learner_test {
namespace {

constexpr Day kToday{20200};

// Sets to the end on one curve: so many weeks of a heavy, a middling and a long set.
std::vector<PerformedSet> diary(double kilograms, double logFactor, double shape, int weeks)
{
    std::vector<PerformedSet> sets;
    for (int week = 0; week < weeks; ++week) {
        int number = 0;
        for (const double reps : {4.0, 8.0, 14.0}) {
            const CurveBend bend = bendCurve(reps, logFactor, shape, 7.0);
            PerformedSet set;
            set.day = kToday - 7 * (weeks - week);
            set.number = ++number;
            set.load = Mass::ofKilograms(kilograms * repFraction(reps));
            set.reps = static_cast<int>(std::lround(1.0 + (reps - 1.0) * bend.factor));
            set.reserve = Reserve{0};
            sets.push_back(set);
        }
    }
    return sets;
}

RepCurveExpectation taughtBy(int people, double logFactor, double shape, double spread, int weeks)
{
    tests::Random random(11);
    RepCurveLearner learner;
    for (int i = 0; i < people; ++i) {
        const double own = logFactor + spread * random.normal();
        const auto sets = diary(60.0 + i, own, shape, weeks);
        std::vector<ExerciseHistory> one(1);
        one.front().both.sets = sets;
        learner.add(one, Experience::Intermediate, kToday);
    }
    return learner.learnt();
}

TEST(RepCurveLearner, SaysWhatIsPublishedWhileNobodyTaughtAnything)
{
    RepCurveLearner learner;
    EXPECT_EQ(learner.learnt(), RepCurveExpectation());
    std::vector<ExerciseHistory> never(2);
    learner.add(never, std::nullopt, kToday);
    EXPECT_EQ(learner.learnt(), RepCurveExpectation());
}

TEST(RepCurveLearner, TestedMaximaTeachNothing)
{
    const std::vector<TestedMaximum> tests = {{kToday - 20, 60.0}, {kToday - 5, 62.0}};
    std::vector<ExerciseHistory> one(1);
    one.front().both.tests = tests;
    RepCurveLearner learner;
    learner.add(one, Experience::Novice, kToday);
    EXPECT_EQ(learner.learnt(), RepCurveExpectation());
}

TEST(RepCurveLearner, SetsThatSayOnlyAtLeastTeachNothing)
{
    auto sets = diary(60.0, 0.3, 0.0, 10);
    for (PerformedSet& set : sets) {
        set.known = HowKnown::Group;
    }
    std::vector<ExerciseHistory> one(1);
    one.front().both.sets = sets;
    RepCurveLearner learner;
    learner.add(one, Experience::Novice, kToday);
    EXPECT_EQ(learner.learnt(), RepCurveExpectation());
}

TEST(RepCurveLearner, NearsTheFactorOfItsPeopleAsMoreAreSeen)
{
    constexpr double kTruth = 0.20;
    double before = kPublishedLogFactor;
    for (const int people : {3, 12, 48, 192}) {
        const double now = taughtBy(people, kTruth, 0.0, 0.15, 12).factor;
        EXPECT_GT(now, before) << people;
        before = now;
    }
    EXPECT_NEAR(before, kTruth, 0.06);
}

TEST(RepCurveLearner, GetsSurerAndNeverSurerThanThePeopleAllow)
{
    const RepCurveExpectation few = taughtBy(5, 0.1, 0.0, 0.15, 12);
    const RepCurveExpectation many = taughtBy(50, 0.1, 0.0, 0.15, 12);
    EXPECT_EQ(few.people, 5);
    EXPECT_EQ(many.people, 50);
    EXPECT_LT(many.factorVariance, few.factorVariance);
    EXPECT_LT(few.factorVariance, RepCurveExpectation().factorVariance);
    // Fifty people count as fifteen, each with the spread between people as error.
    const double betweenPeople = 0.30 * 0.30 - RepCurveExpectation().factorVariance;
    EXPECT_GT(many.factorVariance, 1.0 / (15.0 / betweenPeople + 100.0));
}

TEST(RepCurveLearner, FindsOutThatEverybodyDoesManyRepsWithLightLoadsOnly)
{
    const RepCurveExpectation curve = taughtBy(100, 0.0, 0.30, 0.15, 20);
    EXPECT_GT(curve.shape, 0.15);
    EXPECT_NEAR(curve.factor, 0.0, 0.08);
}

TEST(RepCurveLearner, BringsANewcomerNearerToTheTruth)
{
    // A gym where everybody does a third more reps than is published: eight to the end with 60 kg
    // are less of a maximum here than elsewhere.
    constexpr double kTruth = 0.30;
    const RepCurveExpectation curve = taughtBy(100, kTruth, 0.0, 0.15, 20);
    const double truth = std::log(60.0);
    auto sets = diary(60.0, kTruth, 0.0, 1);
    sets.erase(sets.begin()); // no heavy set yet
    std::vector<ExerciseHistory> one(1);
    one.front().both.sets = sets;
    const auto published = fitMember(one, {Experience::Novice, {}}, kToday).front().value().fit;
    const auto here = fitMember(one, {Experience::Novice, curve}, kToday).front().value().fit;
    EXPECT_LT(std::abs(here.level - truth), 0.5 * std::abs(published.level - truth));
    EXPECT_LE(here.levelVariance, published.levelVariance);
}

} // namespace
} // namespace levelbar::rep_curve_learner_test
