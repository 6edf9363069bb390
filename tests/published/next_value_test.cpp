// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/base/square.h"
#include "core/trend/regression.h"
#include "core/trend/value_trend.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <fstream>
#include <map>
#include <sstream>

// Open data of real people (see tests/data/README.md): everybody's last tested value is forecast
// from the earlier ones only, beside the last value and a straight line. Two of the tests lie
// further ahead than the six weeks of a forecast; the level is carried on as the trend says.
namespace levelbar::next_value_test {
namespace {

// By exercise, then person and side.
using People = std::map<std::string, std::map<std::string, std::vector<DatedValue>>>;

std::vector<std::string> cellsOf(const std::string& line)
{
    std::vector<std::string> cells;
    std::istringstream in(line);
    for (std::string cell; std::getline(in, cell, ',');) {
        cells.push_back(cell);
    }
    return cells;
}

struct Columns {
    std::size_t week = 0;
    std::size_t kilograms = 0;
    std::size_t exercise = 0;
    std::vector<std::size_t> key; // what makes a series of one
};

People read(const char* file, const Columns& columns)
{
    std::ifstream in(std::string(LEVELBAR_TEST_DATA) + "/" + file);
    EXPECT_TRUE(in.good());
    std::string line;
    std::getline(in, line);
    People people;
    while (std::getline(in, line)) {
        const auto cells = cellsOf(line);
        std::string name;
        for (const std::size_t column : columns.key) {
            name += cells.at(column) + " ";
        }
        const Day day{20000 + 7 * std::stoi(cells.at(columns.week))};
        people[cells.at(columns.exercise)][name].push_back(
            {day, std::stod(cells.at(columns.kilograms))});
    }
    for (auto& [exercise, all] : people) {
        for (auto& [name, series] : all) {
            std::sort(series.begin(), series.end(), [](const auto& a, const auto& b) {
                return a.day < b.day;
            });
        }
    }
    return people;
}

struct Score {
    double squares = 0.0;
    double sum = 0.0;
    int inside = 0;
    int count = 0;

    void add(double error)
    {
        squares += square(error);
        sum += error;
        ++count;
    }

    [[nodiscard]] double error() const { return std::sqrt(squares / count); }

    [[nodiscard]] double coverage() const { return static_cast<double>(inside) / count; }
};

struct Scores {
    Score trend;
    Score lastValue;
    Score line; // through the earlier values; exactly through two
};

double lineAt(const std::vector<DatedValue>& earlier, Day day)
{
    std::vector<double> x;
    std::vector<double> y;
    for (const DatedValue& value : earlier) {
        x.push_back(value.day - earlier.front().day);
        y.push_back(100.0 * std::log(value.value));
    }
    const double at = day - earlier.front().day;
    if (x.size() == 2) {
        return y[0] + (y[1] - y[0]) * at / x[1];
    }
    const LineFit fit = fitLine(x, y).value();
    return fit.intercept + fit.slope * at;
}

// What one series adds, the roster's noise known.
void addForecast(Scores& scores,
                 const std::vector<DatedValue>& earlier,
                 const DatedValue& last,
                 const TrendNoise& noise)
{
    const double truth = 100.0 * std::log(last.value);
    const std::vector<Day> day = {std::min(last.day, earlier.back().day + kForecastDays)};
    const TrendBandDay band = trendBand(earlier, kMaximumMeasure, noise, day).value()[0];
    const Estimate& next = band.nextValue;
    scores.trend.add(truth - 100.0 * std::log(next.value));
    scores.trend.inside += next.low <= last.value && last.value <= next.high ? 1 : 0;
    scores.lastValue.add(truth - 100.0 * std::log(earlier.back().value));
    scores.line.add(truth - lineAt(earlier, last.day));
}

Scores score(const char* what, const People& people)
{
    Scores scores;
    for (const auto& [exercise, all] : people) {
        std::vector<std::vector<DatedValue>> earlier;
        std::vector<DatedValue> last;
        for (const auto& [name, series] : all) {
            if (series.size() >= 3) {
                earlier.emplace_back(series.begin(), series.end() - 1);
                last.push_back(series.back());
            }
        }
        // The roster has seen none of the tests to be forecast either.
        const TrendNoise noise = poolTrendNoise(earlier, kMaximumMeasure).value();
        for (std::size_t i = 0; i < last.size(); ++i) {
            addForecast(scores, earlier[i], last[i], noise);
        }
    }
    std::printf("%s: %d tests; trend %.1f %% (lean %+.1f, inside %.3f), last value %.1f %% (lean "
                "%+.1f), straight line %.1f %%\n",
                what,
                scores.trend.count,
                scores.trend.error(),
                scores.trend.sum / scores.trend.count,
                scores.trend.coverage(),
                scores.lastValue.error(),
                scores.lastValue.sum / scores.lastValue.count,
                scores.line.error());
    return scores;
}

People cutToWeek(People people, int week)
{
    for (auto& [exercise, all] : people) {
        for (auto& [name, series] : all) {
            std::erase_if(
                series, [&](const DatedValue& value) { return value.day > Day{20000 + 7 * week}; });
        }
    }
    return people;
}

TEST(NextValue, LegMaximaAreForecastBetterThanByLastValueAndLine)
{
    const People people = read("leg_one_rm_12wk.csv", {2, 6, 3, {0, 4}});
    for (const auto& [what, week] : {std::pair("leg, week 12", 12), std::pair("leg, week 9", 9)}) {
        const Scores scores = score(what, cutToWeek(people, week));
        EXPECT_LT(scores.trend.error(), scores.lastValue.error());
        EXPECT_LT(scores.trend.error(), scores.line.error());
        EXPECT_GT(scores.trend.coverage(), 0.85);
    }
}

// Two values, the first of them before the test was learnt, tell little of a slope: nobody does
// better than the last value by much, but the doubt is told rightly.
TEST(NextValue, TwoValuesAreNotMadeMuchOf)
{
    const Scores leg =
        score("leg, week 5", cutToWeek(read("leg_one_rm_12wk.csv", {2, 6, 3, {0, 4}}), 5));
    const Scores press = score("press, week 14", read("press_one_rm_14wk.csv", {1, 4, 3, {0}}));
    for (const Scores& scores : {leg, press}) {
        EXPECT_LT(scores.trend.error(), 1.1 * scores.lastValue.error());
        EXPECT_LT(scores.trend.error(), 0.7 * scores.line.error());
        EXPECT_GT(scores.trend.coverage(), 0.85);
        EXPECT_LT(scores.trend.coverage(), 0.96);
    }
}

} // namespace
} // namespace levelbar::next_value_test
