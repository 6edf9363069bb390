// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later

#include "core/plan/target.h"
#include "core/strength/member_strength.h"
#include "core/strength/rep_curve_learner.h"
#include "core/strength/strength.h"
#include "tests/support/strength_worlds.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <map>

// How near the model comes to a truth that it does not share: simulated people whose rep curves,
// gains, days and ways of naming the reserve are not its own. The bounds are goals of the project.
namespace levelbar::strength_worlds_test {
namespace {

using tests::SimulatedMember;
using tests::World;

struct Tally {
    double squares = 0.0;
    double sum = 0.0;
    int inside = 0;
    int count = 0;

    void add(double error, double spread)
    {
        squares += error * error;
        sum += error;
        inside += std::abs(error) < kNormalQuantile * spread ? 1 : 0;
        ++count;
    }

    [[nodiscard]] double error() const { return std::sqrt(squares / count); }

    [[nodiscard]] double bias() const { return sum / count; }

    [[nodiscard]] double coverage() const { return static_cast<double>(inside) / count; }
};

// The classic ways: an equation on each set (reserve added; two where it is not told), the best
// set of each day, then the last day, the median of five days, or the best ever.
double classicEstimate(const std::vector<PerformedSet>& sets, int equation, int way)
{
    std::map<Day, double> best;
    for (const PerformedSet& set : sets) {
        const double reps = *set.reps + (set.reserve ? set.reserve->reps() : 2.0);
        double log = std::log(set.load.kilograms());
        if (reps > 1.0) {
            log += equation == 0   ? std::log(1.0 + reps / 30.0)
                   : equation == 1 ? std::log(36.0 / (37.0 - std::min(reps, 30.0)))
                                   : -std::log(0.837677 * std::exp(-0.0338 * reps) + 0.176846);
        }
        const auto [at, isNew] = best.emplace(set.day, log);
        at->second = std::max(at->second, log);
    }
    std::vector<double> days;
    for (const auto& [day, log] : best) {
        days.push_back(log);
    }
    if (way == 0) {
        return days.back();
    }
    if (way == 1) {
        return *std::max_element(days.begin(), days.end());
    }
    days.erase(days.begin(),
               days.end() - static_cast<std::ptrdiff_t>(std::min<std::size_t>(5, days.size())));
    std::nth_element(
        days.begin(), days.begin() + static_cast<std::ptrdiff_t>(days.size() / 2), days.end());
    return days[days.size() / 2];
}

std::vector<ExerciseHistory> exercisesOf(const SimulatedMember& member)
{
    std::vector<ExerciseHistory> exercises(2);
    exercises[0].both.sets = member.barbell;
    exercises[1].left.sets = member.left;
    exercises[1].right.sets = member.right;
    return exercises;
}

// As a gym's logbook learns it: from its first two hundred people.
RepCurveExpectation taughtBy(std::span<const SimulatedMember> people)
{
    RepCurveLearner learner;
    for (const SimulatedMember& member : people.first(std::min<std::size_t>(200, people.size()))) {
        learner.add(exercisesOf(member), member.experience, member.today);
    }
    return learner.learnt();
}

struct Result {
    Tally barbell;
    Tally arm;
    Tally slope;
    Tally load;
    double bestClassic = 1e9;
    double bestArmClassic = 1e9;
};

Result evaluate(World world, int weeks, int members, std::uint64_t seed)
{
    Result result;
    std::array<Tally, 9> classics{};
    std::array<Tally, 9> armClassics{};
    const std::vector<SimulatedMember> people = tests::simulate(world, weeks, members, seed);
    const RepCurveExpectation curve = taughtBy(people);
    for (const SimulatedMember& member : people) {
        const auto fits = fitMember(exercisesOf(member), {member.experience, curve}, member.today);
        if (fits[0]) {
            const StrengthFit& fit = fits[0]->fit;
            result.barbell.add(fit.level - member.barbellLevel, std::sqrt(fit.levelVariance));
            result.slope.add(fit.slope - member.slope, std::sqrt(fit.slopeVariance));
            const LoadForReps load = loadForReps(fit, 10.0, 0.0);
            result.load.add(load.logLoad - member.logLoadForTen,
                            kTargetSpreadScale * std::sqrt(load.variance));
            const LoadForReps heavier = loadForReps(fit, 7.0, 0.0);
            result.load.add(heavier.logLoad - member.logLoadForSeven,
                            kTargetSpreadScale * std::sqrt(heavier.variance));
        }
        if (fits[1]) {
            const StrengthFit& fit = fits[1]->fit;
            for (const double side : {-0.5, 0.5}) {
                const double truth = side < 0.0 ? member.leftLevel : member.rightLevel;
                const double variance = fit.levelVariance + 0.25 * fit.differenceVariance +
                                        2.0 * side * fit.levelDifferenceCovariance;
                result.arm.add(fit.level + side * fit.difference - truth, std::sqrt(variance));
            }
        }
        for (int k = 0; k < 9; ++k) {
            const auto at = static_cast<std::size_t>(k);
            if (!member.barbell.empty()) {
                classics.at(at).add(
                    classicEstimate(member.barbell, k / 3, k % 3) - member.barbellLevel, 1.0);
            }
            if (!member.left.empty()) {
                armClassics.at(at).add(
                    classicEstimate(member.left, k / 3, k % 3) - member.leftLevel, 1.0);
            }
        }
    }
    for (std::size_t k = 0; k < classics.size(); ++k) {
        result.bestClassic = std::min(result.bestClassic, classics.at(k).error());
        result.bestArmClassic = std::min(result.bestArmClassic, armClassics.at(k).error());
    }
    std::printf(
        "%-8s %2d weeks: error %.2f %% (best classic %.2f), bias %+.2f, coverage %.3f; arm %.2f "
        "(%.2f), %+.2f, %.3f; slope coverage %.3f; target coverage %.3f\n",
        std::string(worldName(world)).c_str(),
        weeks,
        100 * result.barbell.error(),
        100 * result.bestClassic,
        100 * result.barbell.bias(),
        result.barbell.coverage(),
        100 * result.arm.error(),
        100 * result.bestArmClassic,
        100 * result.arm.bias(),
        result.arm.coverage(),
        result.slope.coverage(),
        result.load.coverage());
    return result;
}

TEST(StrengthWorldsTest, BeatsTheBestClassicRuleInTheGym)
{
    // The best of nine classic rules is chosen with hindsight, the model is not.
    const Result early = evaluate(World::Gym, 3, 300, 101);
    EXPECT_LT(early.barbell.error(), 0.80 * early.bestClassic);
    EXPECT_LT(early.arm.error(), 0.85 * early.bestArmClassic);
    const Result late = evaluate(World::Gym, 26, 300, 101);
    EXPECT_LT(late.barbell.error(), 0.55 * late.bestClassic);
    EXPECT_LT(late.arm.error(), 0.75 * late.bestArmClassic);
    EXPECT_LT(std::abs(late.barbell.bias()), 0.010);
    // Their curves lie under the published one; six days have taught little of that.
    EXPECT_LT(std::abs(early.barbell.bias()), 0.013);
    for (const Result& result : {early, late}) {
        EXPECT_GT(result.barbell.coverage(), 0.86);
        EXPECT_GT(result.slope.coverage(), 0.85);
        EXPECT_GT(result.load.coverage(), 0.86);
        EXPECT_LT(result.load.coverage(), 0.98);
        EXPECT_LT(std::abs(result.arm.bias()), 0.015);
    }
}

TEST(StrengthWorldsTest, HoldsInEveryWorldSlow)
{
    double sum = 0.0;
    int cells = 0;
    for (const World world : tests::kWorlds) {
        for (const int weeks : {3, 8, 26, 52}) {
            const Result result = evaluate(world, weeks, 200, 101);
            sum += result.barbell.error();
            ++cells;
            EXPECT_GT(result.barbell.coverage(), 0.83) << worldName(world) << weeks;
        }
    }
    std::printf("mean error over worlds %.3f %%\n", 100 * sum / cells);
    EXPECT_LT(sum / cells, 0.0380); // the trial of the method, in worlds like these: 4.06 %
}

} // namespace
} // namespace levelbar::strength_worlds_test
