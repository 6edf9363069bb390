// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later

#include "core/review/review.h"
#include "core/strength/equations.h"
#include "core/strength/member_strength.h"
#include "tests/support/logbook_fixture.h"
#include "tests/support/rack_tasks.h"
#include "tests/support/random.h"
#include "tests/support/sets.h"

#include <SQLiteCpp/SQLiteCpp.h>
#include <benchmark/benchmark.h>

#include <algorithm>

// Each thing side by side with what it is compared to; the ratio of two lines is the result.
namespace levelbar {
namespace {

using tests::kNow;

std::vector<PerformedSet> sets(int count)
{
    tests::Random random(1);
    std::vector<PerformedSet> made;
    for (int i = 0; i < count; ++i) {
        made.push_back(tests::set(
            Day{20000 + 4 * (i / 3)}, 1 + i % 3, 60 + random.below(9), 8, random.below(4)));
    }
    return made;
}

void strengthOfOneExercise(benchmark::State& state)
{
    const auto history = sets(static_cast<int>(state.range(0)));
    const std::vector<ExerciseHistory> one = {{{history, {}}, {}, {}, std::nullopt}};
    const Day today = history.back().day;
    for (auto _ : state) {
        benchmark::DoNotOptimize(fitMember(one, {Experience::Intermediate, {}}, today));
    }
    state.SetComplexityN(state.range(0));
}

BENCHMARK(strengthOfOneExercise)
    ->Arg(10)
    ->Arg(150)
    ->Arg(1000)
    ->Arg(10000)
    ->Complexity(benchmark::oN);

// Compared to: the best of one published equation over all sets, what a spreadsheet would do.
void bestOfAnEquation(benchmark::State& state)
{
    const auto history = sets(static_cast<int>(state.range(0)));
    for (auto _ : state) {
        double best = 0.0;
        for (const PerformedSet& set : history) {
            best = std::max(
                best, oneRepMax(RepEquation::Epley, set.load.kilograms(), *set.reps).value_or(0.0));
        }
        benchmark::DoNotOptimize(best);
    }
}

BENCHMARK(bestOfAnEquation)->Arg(150)->Arg(10000);

// Differences of a large roster with one day each and, compared to it, with eight days.
void sidesOfARoster(benchmark::State& state)
{
    tests::Random random(2);
    MeasuredSides measure;
    for (std::size_t person = 0; person < 2747; ++person) {
        SideSeries series;
        for (int day = 0; day < state.range(0); ++day) {
            series.pairs.push_back({Day{20000 + 7 * day}, random.normal(0.0, 7.0)});
        }
        measure.owners.push_back(person);
        measure.series.push_back(std::move(series));
    }
    const std::vector<MeasuredSides> all = {measure};
    const Day today{20000 + 7 * static_cast<int>(state.range(0))};
    for (auto _ : state) {
        benchmark::DoNotOptimize(reviewSides(all, today, 10.0));
    }
}

BENCHMARK(sidesOfARoster)->Arg(1)->Arg(8)->Unit(benchmark::kMillisecond);

// One durable set through an action, recorded so that it can be taken back.
void logOneSet(benchmark::State& state)
{
    const tests::TemporaryFolder folder;
    storage::Logbook logbook = storage::Logbook::create(folder / "g.levelbar", kNow);
    const MemberId member = tests::addMember(logbook, "M1");
    DoneSet set = tests::benchSet(logbook, member, Day{20000}, 1, 8);
    int number = 0;
    for (auto _ : state) {
        set.performed.day = Day{20000 + number / 999};
        set.performed.number = 1 + number % 999;
        ++number;
        tests::logSet(logbook, set);
    }
}

BENCHMARK(logOneSet)->Unit(benchmark::kMicrosecond);

// Compared to: one durable row in a bare table.
void insertOneRow(benchmark::State& state)
{
    const tests::TemporaryFolder folder;
    SQLite::Database database((folder / "bare").string(),
                              SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
    database.exec("PRAGMA journal_mode = WAL");
    database.exec("PRAGMA synchronous = FULL");
    database.exec("CREATE TABLE t (id INTEGER PRIMARY KEY, reps INTEGER)");
    for (auto _ : state) {
        database.exec("INSERT INTO t (reps) VALUES (8)");
    }
}

BENCHMARK(insertOneRow)->Unit(benchmark::kMicrosecond);

// Lifters and racks; the counters say how far above the proved bound the answer lies.
void shareLiftersAmongRacks(benchmark::State& state)
{
    tests::Random random(24);
    const auto task = tests::drawnRackTask(
        random, static_cast<int>(state.range(0)), static_cast<int>(state.range(1)), 8);
    RackSharing sharing;
    for (auto _ : state) {
        sharing = shareRacks(task).value();
    }
    const int moves = sharing.plateMoves + sharing.hookMoves;
    state.counters["moves"] = moves;
    state.counters["gap_percent"] = 100.0 * (moves - sharing.lowerBound) / std::max(1, moves);
}

BENCHMARK(shareLiftersAmongRacks)
    ->Args({12, 1})
    ->Args({24, 6})
    ->Args({24, 3})
    ->Args({40, 10})
    ->Args({60, 6})
    ->Unit(benchmark::kMillisecond);

// Compared to: four by four as the loads go, no search and no bound.
void shareAsTheLoadsGo(benchmark::State& state)
{
    tests::Random random(24);
    auto task = tests::drawnRackTask(random, 24, 6, 8);
    for (auto _ : state) {
        std::sort(task.lifters.begin(), task.lifters.end(), [](const auto& a, const auto& b) {
            return a.load.thousandths() < b.load.thousandths();
        });
        benchmark::DoNotOptimize(task.lifters.data());
        benchmark::ClobberMemory();
    }
    int moves = 0;
    for (std::size_t from = 0; from < task.lifters.size(); from += 4) {
        RackSharingTask four = task;
        four.racks = 1;
        four.lifters.assign(task.lifters.begin() + static_cast<std::ptrdiff_t>(from),
                            task.lifters.begin() + static_cast<std::ptrdiff_t>(from + 4));
        const RackSharing best = shareRacks(four).value();
        moves += best.plateMoves + best.hookMoves;
    }
    state.counters["moves"] = moves;
}

BENCHMARK(shareAsTheLoadsGo)->Unit(benchmark::kMillisecond);

} // namespace
} // namespace levelbar

BENCHMARK_MAIN();
