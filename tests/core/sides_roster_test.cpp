// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later

#include "core/sides/side_difference.h"
#include "core/sides/side_pairs.h"
#include "core/strength/rep_curve.h"
#include "tests/support/benjamini_hochberg.h"
#include "tests/support/random.h"
#include "tests/support/sets.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <functional>

// An invented roster whose true differences are known: 200 people, six exercises.
namespace levelbar::sides_roster_test {
namespace {

using tests::Random;

const Day kToday = tests::day("2026-06-30");
constexpr int kPeople = 200;
constexpr int kExercises = 6;

struct World {
    std::vector<MeasuredSides> measures;
    std::vector<std::vector<double>> truth; // by measure, then person; ln-percent
};

double trueDifference(Random& random)
{
    // Most people differ a little, a few much: shape after the reference figures of grip.
    return random.chance(0.1) ? random.normal(0.0, 13.0) : random.normal(1.0, 4.5);
}

// People differ in steadiness: standard deviations from about 3.5 to 8.
double daySpread(Random& random)
{
    return 5.3 * std::exp(random.normal(0.0, 0.25));
}

// One to eight days of tests over four months.
World testedWorld(std::uint64_t seed)
{
    Random random(seed);
    std::vector<double> spreads;
    for (int person = 0; person < kPeople; ++person) {
        spreads.push_back(daySpread(random));
    }
    World world;
    for (int exercise = 0; exercise < kExercises; ++exercise) {
        MeasuredSides measure;
        measure.measure.name = "Test " + std::to_string(exercise);
        world.truth.emplace_back();
        for (int person = 0; person < kPeople; ++person) {
            const double truth = trueDifference(random);
            const int days = 1 + random.below(8);
            SideSeries series;
            for (int i = days; i-- > 0;) {
                const double noise = random.normal(0.0, spreads[static_cast<std::size_t>(person)]);
                series.pairs.push_back({kToday - 15 * i - random.below(10), truth + noise});
            }
            measure.owners.push_back(static_cast<std::size_t>(person));
            measure.series.push_back(std::move(series));
            world.truth.back().push_back(truth);
        }
        world.measures.push_back(std::move(measure));
    }
    return world;
}

// Reps at `kilograms` of someone with that 1RM, `reserve` short of the end, with the day's luck.
int repsOf(double oneRepMax, double kilograms, double reserve, double luckPercent)
{
    const double fraction = kilograms / (oneRepMax * std::exp(luckPercent / 100.0));
    return std::max(1, static_cast<int>(std::lround(repsAtFraction(fraction) - reserve)));
}

// One person's weeks: two sessions that found a difference, then twelve weeks of our own
// prescription: twice a week the side that was found weaker first, the other stopped at its reps;
// every two weeks an open pair, both sides to one in reserve. The gap does not change.
SideSeries cappedSeries(double truth, double spread, bool isCapMarked, Random& random)
{
    const double left = 30.0 * std::exp(-truth / 200.0);
    const double right = 30.0 * std::exp(truth / 200.0);
    const double load = std::round(0.72 * std::min(left, right));
    const double half = spread / std::sqrt(2.0); // of either side
    constexpr int kSessions = 26;
    std::vector<PerformedSet> lefts;
    std::vector<PerformedSet> rights;
    int found = 0; // reps by which the right was ahead in the first two sessions
    for (int session = kSessions; session-- > 0;) {
        const Day day = kToday - 7 * (session / 2) - (session % 2) * 3;
        const bool isFirst = session >= kSessions - 2;
        const bool isOpen = !isFirst && session % 4 == 0;
        const int reserve = isOpen ? 1 : 2;
        auto l = tests::set(
            day, 1, load, repsOf(left, load, reserve, random.normal(0.0, half)), reserve);
        auto r = tests::set(
            day, 1, load, repsOf(right, load, reserve, random.normal(0.0, half)), reserve);
        l.kind = r.kind = isOpen ? SetKind::Open : SetKind::Work;
        found += isFirst ? *r.reps - *l.reps : 0;
        PerformedSet& stronger = found >= 0 ? r : l;
        const int cap = std::min(*l.reps, *r.reps);
        if (!isFirst && !isOpen && *stronger.reps > cap) {
            stronger.reps = cap;
            if (isCapMarked) {
                stronger.stopped = StopReason::Capped;
                stronger.reserve.reset();
            }
        }
        lefts.push_back(l);
        rights.push_back(r);
    }
    SideSeries series;
    series.pairs = pairsFromSets(lefts, rights, nullptr);
    return series;
}

World cappedWorld(std::uint64_t seed, bool isCapMarked)
{
    Random random(seed);
    World world;
    std::vector<double> spreads;
    for (int person = 0; person < kPeople; ++person) {
        spreads.push_back(daySpread(random));
    }
    for (int exercise = 0; exercise < kExercises; ++exercise) {
        MeasuredSides measure;
        measure.measure.name = "Press " + std::to_string(exercise);
        measure.settings.isTest = false;
        world.truth.emplace_back();
        for (int person = 0; person < kPeople; ++person) {
            const double truth = trueDifference(random);
            measure.owners.push_back(static_cast<std::size_t>(person));
            measure.series.push_back(cappedSeries(
                truth, spreads[static_cast<std::size_t>(person)], isCapMarked, random));
            world.truth.back().push_back(truth);
        }
        world.measures.push_back(std::move(measure));
    }
    return world;
}

// What a list holds, over many rosters.
struct ListTally {
    double percent = 5.0; // the claim: beyond this, on that side
    std::vector<double> falseShares;
    double listed = 0.0;
    double wrong = 0.0;
    double expected = 0.0;
    double found = 0.0; // of those truly over 10 %

    void add(double truth, bool isRightStronger, int& count, int& mistakes)
    {
        const double onSide = isRightStronger ? truth : -truth;
        const bool isFalse = onSide <= logPercentOf(percent);
        ++count;
        mistakes += isFalse ? 1 : 0;
        listed += 1.0;
        wrong += isFalse ? 1.0 : 0.0;
        found += onSide > logPercentOf(10) ? 1.0 : 0.0;
    }

    void close(int count, int mistakes)
    {
        falseShares.push_back(count == 0 ? 0.0 : mistakes / static_cast<double>(count));
    }

    double meanFalse() const
    {
        double sum = 0.0;
        for (const double share : falseShares) {
            sum += share / static_cast<double>(falseShares.size());
        }
        return sum;
    }

    double standardError() const
    {
        double sum = 0.0;
        for (const double share : falseShares) {
            sum += (share - meanFalse()) * (share - meanFalse());
        }
        const auto n = static_cast<double>(falseShares.size());
        return std::sqrt(sum / (n - 1.0) / n);
    }

    void print(const char* name, double trulyOver) const
    {
        const auto n = static_cast<double>(falseShares.size());
        std::printf("  %-22s %6.1f listed, false share %.3f (se %.3f), chance entries %.2f said "
                    "%.2f, of truly over 10 %% found %.2f\n",
                    name,
                    listed / n,
                    meanFalse(),
                    standardError(),
                    wrong / n,
                    expected / n,
                    found / trulyOver);
    }
};

struct Outcome {
    ListTally look{5.0, {}};
    ListTally act{10.0, {}};
    ListTally rule{10.0, {}};
    ListTally twin{10.0, {}}; // Benjamini and Hochberg on the claim "over 10 %"
    double trulyOver = 0.0;
    double seen = 0.0;     // sum of |estimate| of those truly over 10 %
    double intended = 0.0; // sum of their true sizes
};

void addLists(const World& world, Outcome& outcome)
{
    const RosterSides sides = reviewSides(world.measures, kToday, 10.0);
    int counts[2] = {0, 0};
    int mistakes[2] = {0, 0};
    for (const auto& entry : sides.entries) {
        const auto measure =
            static_cast<std::size_t>(entry.review.measure.name.back() - '0'); // 0 to 5
        const double truth = world.truth[measure][entry.owner];
        const bool isRight = entry.review.weaker == Side::Left;
        if (std::abs(truth) > logPercentOf(10)) {
            outcome.trulyOver += 1.0;
            outcome.intended += std::abs(percentOf(truth));
            outcome.seen += entry.review.differencePercent.value * (truth > 0 ? 1.0 : -1.0);
        }
        if (entry.review.tier == SideTier::Act) {
            outcome.act.add(truth, isRight, counts[1], mistakes[1]);
        }
        if (entry.review.tier == SideTier::Act || entry.review.tier == SideTier::Look) {
            outcome.look.add(truth, isRight, counts[0], mistakes[0]);
        }
    }
    outcome.look.close(counts[0], mistakes[0]);
    outcome.act.close(counts[1], mistakes[1]);
    outcome.look.expected += sides.expectedFalseLook;
    outcome.act.expected += sides.expectedFalseAct;
}

void addPlainRule(const World& world, Outcome& outcome)
{
    int count = 0;
    int mistakes = 0;
    for (std::size_t m = 0; m < world.measures.size(); ++m) {
        for (std::size_t s = 0; s < world.measures[m].series.size(); ++s) {
            const auto& pairs = world.measures[m].series[s].pairs;
            if (!pairs.empty() && std::abs(pairs.back().logPercent) > logPercentOf(10)) {
                outcome.rule.add(world.truth[m][s], pairs.back().logPercent > 0.0, count, mistakes);
            }
        }
    }
    outcome.rule.close(count, mistakes);
}

// The list to work on, made the other way: p values of the claim, no prior, step-up at a tenth.
void addTwin(const World& world, Outcome& outcome)
{
    std::vector<double> p;
    std::vector<std::pair<double, double>> cases; // truth, mean seen
    for (std::size_t m = 0; m < world.measures.size(); ++m) {
        const MeasuredSides& measure = world.measures[m];
        const SideNoise noise = poolNoise(measure.series, kToday, measure.settings);
        for (std::size_t s = 0; s < measure.series.size(); ++s) {
            const auto look = lookAt(measure.series[s], kToday, noise);
            if (look && look->days >= 2) {
                p.push_back(
                    tests::intervalNullP(look->mean, std::sqrt(look->variance), logPercentOf(10)));
                cases.emplace_back(world.truth[m][s], look->mean);
            }
        }
    }
    const auto isRejected = tests::benjaminiHochberg(p, kFalseShare);
    int count = 0;
    int mistakes = 0;
    for (std::size_t i = 0; i < cases.size(); ++i) {
        if (isRejected[i]) {
            outcome.twin.add(cases[i].first, cases[i].second > 0.0, count, mistakes);
        }
    }
    outcome.twin.close(count, mistakes);
}

Outcome over(std::uint64_t seeds, const char* name, const std::function<World(std::uint64_t)>& make)
{
    Outcome outcome;
    for (std::uint64_t seed = 1; seed <= seeds; ++seed) {
        const World world = make(seed);
        addLists(world, outcome);
        addPlainRule(world, outcome);
        addTwin(world, outcome);
    }
    std::printf("%s, %d rosters:\n", name, static_cast<int>(seeds));
    outcome.look.print("check again or work on", outcome.trulyOver);
    outcome.act.print("work on it", outcome.trulyOver);
    outcome.rule.print("last one over 10 %", outcome.trulyOver);
    outcome.twin.print("p values, step-up", outcome.trulyOver);
    std::printf("  truly over 10 %%: shown at %.2f of their size\n",
                outcome.seen / outcome.intended);
    return outcome;
}

void expectControlled(const ListTally& list)
{
    EXPECT_LE(list.meanFalse(), kFalseShare + 2.0 * list.standardError());
    EXPECT_NEAR(list.expected / list.wrong, 1.0, 0.25);
}

constexpr std::uint64_t kSeeds = 200;

TEST(SidesRosterSlow, AtMostOneInTenListedIsChance)
{
    const Outcome outcome = over(kSeeds, "tested", testedWorld);
    expectControlled(outcome.look);
    expectControlled(outcome.act);
    EXPECT_GT(outcome.rule.meanFalse(), 0.5) << "what the lists are there to beat";
    EXPECT_GT(outcome.look.found / outcome.trulyOver, 0.5);
    EXPECT_LE(outcome.twin.meanFalse(), kFalseShare) << "or the roster is no fair one";
    EXPECT_GE(outcome.act.found, outcome.twin.found) << "the prior must earn its keep";
}

TEST(SidesRosterSlow, TheCapHidesNoDifference)
{
    const Outcome capped = over(kSeeds, "trained under the cap", [](std::uint64_t seed) {
        return cappedWorld(seed, true);
    });
    expectControlled(capped.look);
    expectControlled(capped.act);
    EXPECT_GT(capped.seen / capped.intended, 0.75) << "true gaps are still shown";
    EXPECT_GT(capped.look.found / capped.trulyOver, 0.5);
}

TEST(SidesRoster, CapsThatWereNotMarkedWouldHideDifferences)
{
    // Why the mark matters: without it the same weeks show the gaps too small.
    Outcome marked;
    addLists(cappedWorld(2, true), marked);
    Outcome unmarked;
    addLists(cappedWorld(2, false), unmarked);
    EXPECT_LT(unmarked.seen / unmarked.intended, 0.7 * marked.seen / marked.intended);
}

} // namespace
} // namespace levelbar::sides_roster_test
