// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/trend/regression.h"
#include "core/trend/value_trend.h"
#include "tests/support/random.h"

#include <chrono>
#include <cmath>
#include <cstdio>
#include <vector>

// Prints invented series of sixty weekly values with what is made of each, and how long that took,
// as CSV: what trend_in_r.R sets beside R.
namespace levelbar {
namespace {

constexpr int kSeries = 40;
constexpr int kValues = 60;
constexpr int kRepeats = 200;

std::vector<DatedValue> drawn(tests::Random& random)
{
    std::vector<DatedValue> series;
    double level = 0.0;
    double slope = random.normal(0.2, 0.3);
    for (int week = 0; week < kValues; ++week) {
        level += slope;
        slope += random.normal(0.0, 0.03);
        const double y = level + random.normal(0.0, 3.0);
        series.push_back({Day{20000 + 7 * week}, 60.0 * std::exp(y / 100.0)});
    }
    return series;
}

template <typename Work> double microseconds(const Work& work)
{
    const auto start = std::chrono::steady_clock::now();
    for (int repeat = 0; repeat < kRepeats; ++repeat) {
        work();
    }
    const std::chrono::duration<double, std::micro> passed =
        std::chrono::steady_clock::now() - start;
    return passed.count() / kRepeats;
}

void print(int number, const std::vector<DatedValue>& series)
{
    std::vector<double> weeks;
    std::vector<double> y;
    for (const DatedValue& value : series) {
        weeks.push_back((value.day - series.front().day) / 7.0);
        y.push_back(100.0 * std::log(value.value));
    }
    const TrendNoise noise = usualNoise(kMaximumMeasure);
    const Day today = series.back().day;
    const Estimate line = slopeOf(fitLine(weeks, y).value());
    const ValueTrend trend = valueTrend(series, kMaximumMeasure, noise, today).value();
    const Estimate change = trend.changePerWeek.value_or(Estimate{});
    volatile double kept = 0.0; // so that nothing is left out
    const double lineTime = microseconds([&] { kept = slopeOf(fitLine(weeks, y).value()).value; });
    const double trendTime = microseconds(
        [&] { kept = valueTrend(series, kMaximumMeasure, noise, today).value().level.value; });
    for (std::size_t i = 0; i < series.size(); ++i) {
        std::printf("%d,%g,%.17g,%.17g,%.17g,%.17g,%.17g,%.17g,%.17g,%.17g,%.3f,%.3f\n",
                    number,
                    weeks[i],
                    series[i].value,
                    line.value,
                    line.low,
                    line.high,
                    trend.level.value,
                    change.value,
                    change.low,
                    change.high,
                    lineTime,
                    trendTime);
    }
}

} // namespace
} // namespace levelbar

int main()
{
    using namespace levelbar;
    tests::Random random(1);
    std::printf("series,week,value,line,line_low,line_high,level,change,change_low,change_high,"
                "line_us,trend_us\n");
    for (int number = 1; number <= kSeries; ++number) {
        print(number, drawn(random));
    }
    return 0;
}
