// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later

#include "core/sides/side_difference.h"
#include "tests/support/random.h"

#include <benchmark/benchmark.h>

#include <cmath>
#include <vector>

namespace levelbar {
namespace {

constexpr std::size_t kPeople = 2000;
constexpr int kYears = 3;

// Ten measures of 2,000 people, a pair a week for three years: three million pairs. The argument
// is how many of a hundred people have a known reason, which looks at every pair since.
void sidesOfALargeRoster(benchmark::State& state)
{
    tests::Random random(7);
    const Day today{20000 + 365 * kYears};
    std::vector<MeasuredSides> measures(10);
    for (MeasuredSides& measure : measures) {
        measure.settings.isTest = false;
        for (std::size_t person = 0; person < kPeople; ++person) {
            const double truth = random.chance(0.1) ? random.normal(0, 13) : random.normal(1, 4.5);
            SideSeries series;
            for (Day day{20000}; day <= today; day = day + 7) {
                series.pairs.push_back({day, truth + random.normal(0.0, 6.0)});
            }
            if (static_cast<int>(person % 100) < state.range(0)) {
                series.reasons.push_back({{}, "known", today - 180, std::nullopt, truth});
            }
            measure.owners.push_back(person);
            measure.series.push_back(std::move(series));
        }
    }
    for (auto _ : state) {
        benchmark::DoNotOptimize(reviewSides(measures, today, 10.0));
    }
}

BENCHMARK(sidesOfALargeRoster)->Arg(0)->Arg(5)->Unit(benchmark::kMillisecond);

// Compared to: the plain rule, the last one over 10 %, over the same number of people.
void lastOneOverTen(benchmark::State& state)
{
    tests::Random random(7);
    std::vector<double> last(10 * kPeople);
    for (double& value : last) {
        value = random.normal(0.0, 8.0);
    }
    for (auto _ : state) {
        int count = 0;
        for (const double value : last) {
            count += std::abs(value) > logPercentOf(10.0) ? 1 : 0;
        }
        benchmark::DoNotOptimize(count);
    }
}

BENCHMARK(lastOneOverTen)->Unit(benchmark::kMillisecond);

} // namespace
} // namespace levelbar
