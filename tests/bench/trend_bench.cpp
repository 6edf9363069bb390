// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/trend/kink.h"
#include "core/trend/local_trend.h"
#include "core/trend/regression.h"
#include "core/trend/value_trend.h"
#include "tests/support/random.h"

#include <benchmark/benchmark.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>
#include <limits>

// A trend of sixty values side by side with what else could be asked of them.
namespace levelbar {
namespace {

std::vector<DatedValue> sixtyValues()
{
    tests::Random random(1);
    std::vector<DatedValue> series;
    int day = 0;
    for (int i = 0; i < 60; ++i) {
        const double y = 0.3 * day / 7.0 + random.normal(0.0, 4.0);
        series.push_back({Day{20000 + day}, 60.0 * std::exp(y / 100.0)});
        day += 2 + random.below(4);
    }
    return series;
}

void trendWithProbabilities(benchmark::State& state)
{
    const auto series = sixtyValues();
    const TrendNoise noise = usualNoise(kMaximumMeasure);
    for (auto _ : state) {
        benchmark::DoNotOptimize(
            valueTrend(series, kMaximumMeasure, noise, series.back().day).value());
    }
}

BENCHMARK(trendWithProbabilities)->Unit(benchmark::kMicrosecond);

void trendWithSixForecasts(benchmark::State& state)
{
    const auto series = sixtyValues();
    const TrendNoise noise = usualNoise(kMaximumMeasure);
    std::vector<Day> days;
    for (int week = 1; week <= 6; ++week) {
        days.push_back(series.back().day + 7 * week);
    }
    for (auto _ : state) {
        benchmark::DoNotOptimize(trendBand(series, kMaximumMeasure, noise, days).value());
    }
}

BENCHMARK(trendWithSixForecasts)->Unit(benchmark::kMicrosecond);

void kinkOfSixtyValues(benchmark::State& state)
{
    const auto series = sixtyValues();
    const TrendNoise noise = usualNoise(kMaximumMeasure);
    for (auto _ : state) {
        benchmark::DoNotOptimize(findKink(series, kMaximumMeasure, noise).value());
    }
}

BENCHMARK(kinkOfSixtyValues)->Unit(benchmark::kMicrosecond);

// Compared to: a straight line with its interval.
void straightLine(benchmark::State& state)
{
    const auto series = sixtyValues();
    for (auto _ : state) {
        std::vector<double> weeks;
        std::vector<double> y;
        for (const DatedValue& value : series) {
            weeks.push_back((value.day - series.front().day) / 7.0);
            y.push_back(100.0 * std::log(value.value));
        }
        benchmark::DoNotOptimize(slopeOf(fitLine(weeks, y).value()));
    }
}

BENCHMARK(straightLine)->Unit(benchmark::kMicrosecond);

// Downhill simplex in three dimensions (Nelder and Mead 1965, Computer J 7:308-313), the usual
// general optimiser.
using Point = std::array<double, 3>;

Point along(const Point& from, const Point& to, double way)
{
    Point point{};
    for (std::size_t i = 0; i < point.size(); ++i) {
        point.at(i) = from.at(i) + way * (to.at(i) - from.at(i));
    }
    return point;
}

Point lowest(const std::function<double(const Point&)>& height, const Point& start)
{
    constexpr double kTolerance = 1e-8; // relative, as R's optim()
    std::array<std::pair<double, Point>, 4> corners;
    for (std::size_t i = 0; i < corners.size(); ++i) {
        Point point = start;
        if (i > 0) {
            point.at(i - 1) += 1.0;
        }
        corners.at(i) = {height(point), point};
    }
    for (int round = 0; round < 500; ++round) {
        std::sort(corners.begin(), corners.end());
        auto& [worst, worstPoint] = corners.back();
        if (worst - corners[0].first <= kTolerance * (std::abs(worst) + kTolerance)) {
            break;
        }
        Point middle{};
        for (std::size_t i = 0; i < middle.size(); ++i) {
            for (std::size_t c = 0; c + 1 < corners.size(); ++c) {
                middle.at(i) += corners.at(c).second.at(i) / 3.0;
            }
        }
        Point next = along(worstPoint, middle, 2.0);
        double at = height(next);
        if (at < corners[0].first) {
            const Point further = along(worstPoint, middle, 3.0);
            const double there = height(further);
            if (there < at) {
                next = further;
                at = there;
            }
        } else if (at >= corners[2].first) {
            next = along(worstPoint, middle, 0.5);
            at = height(next);
            if (at >= worst) {
                for (std::size_t c = 1; c < corners.size(); ++c) {
                    corners.at(c).second = along(corners[0].second, corners.at(c).second, 0.5);
                    corners.at(c).first = height(corners.at(c).second);
                }
                continue;
            }
        }
        corners.back() = {at, next};
    }
    std::sort(corners.begin(), corners.end());
    return corners[0].second;
}

// Compared to: the same model's three variances by maximum likelihood, the usual way to fit it;
// then one pass for the slope. One pass without anything else is the line below.
void maximumLikelihood(benchmark::State& state)
{
    const auto series = sixtyValues();
    std::vector<TrendNode> nodes;
    for (std::size_t i = 0; i < series.size(); ++i) {
        const double weeks = i == 0 ? 0.0 : (series[i].day - series[i - 1].day) / 7.0;
        nodes.push_back({weeks, 100.0 * std::log(series[i].value), 1.0, 0.0, 0.0});
    }
    const auto height = [&](const Point& logs) {
        const double variance = std::exp(logs[0]);
        for (TrendNode& node : nodes) {
            node.variance = variance;
        }
        const auto run =
            filterTrend(nodes, {std::exp(logs[1]), std::exp(logs[2])}, std::nullopt, 100.0);
        return run ? -run->logLikelihood : std::numeric_limits<double>::infinity();
    };
    for (auto _ : state) {
        benchmark::DoNotOptimize(lowest(height, {2.0, -2.0, -4.0}));
    }
}

BENCHMARK(maximumLikelihood)->Unit(benchmark::kMicrosecond);

void oneFilterPass(benchmark::State& state)
{
    std::vector<TrendNode> nodes;
    for (const DatedValue& value : sixtyValues()) {
        nodes.push_back({0.5, 100.0 * std::log(value.value), 16.0, 0.0, 0.0});
    }
    for (auto _ : state) {
        benchmark::DoNotOptimize(filterTrend(nodes, {0.0, 0.002}, std::nullopt, 2.0));
    }
}

BENCHMARK(oneFilterPass)->Unit(benchmark::kMicrosecond);

} // namespace
} // namespace levelbar
