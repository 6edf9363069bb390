// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/base/square.h"
#include "core/strength/member_strength.h"
#include "core/strength/strength.h"
#include "core/trend/regression.h"

#include <gtest/gtest.h>

#include <cmath>
#include <cstdio>
#include <fstream>
#include <map>
#include <sstream>

// Open data of real people (see tests/data/README.md): each later tested maximum is predicted from
// the earlier ones only, beside what a spreadsheet would do: the last value, and a straight line.
namespace levelbar::next_maximum_test {
namespace {

struct Series {
    std::vector<TestedMaximum> tests; // by day
};

// By person, then exercise and side.
using People = std::map<std::string, std::map<std::string, Series>>;

std::vector<std::string> cellsOf(const std::string& line)
{
    std::vector<std::string> cells;
    std::istringstream in(line);
    for (std::string cell; std::getline(in, cell, ',');) {
        cells.push_back(cell);
    }
    return cells;
}

// `columns`: places of id, week, kilograms; the rest of the key is every column in `key`.
People read(const char* file,
            const std::array<std::size_t, 3>& columns,
            const std::vector<std::size_t>& key)
{
    std::ifstream in(std::string(LEVELBAR_TEST_DATA) + "/" + file);
    EXPECT_TRUE(in.good());
    std::string line;
    std::getline(in, line);
    People people;
    while (std::getline(in, line)) {
        const auto cells = cellsOf(line);
        std::string name;
        for (const std::size_t column : key) {
            name += cells.at(column) + " ";
        }
        const Day day{20000 + 7 * std::stoi(cells.at(columns[1]))};
        people[cells.at(columns[0])][name].tests.push_back({day, std::stod(cells.at(columns[2]))});
    }
    for (auto& [id, exercises] : people) {
        for (auto& [name, series] : exercises) {
            std::sort(series.tests.begin(), series.tests.end(), [](const auto& a, const auto& b) {
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

    void add(double error, double halfWidth)
    {
        squares += square(error);
        sum += error;
        inside += std::abs(error) <= halfWidth ? 1 : 0;
        ++count;
    }

    [[nodiscard]] double error() const { return std::sqrt(squares / count); }

    [[nodiscard]] double coverage() const { return static_cast<double>(inside) / count; }
};

struct Scores {
    Score model;
    Score lastValue;
    Score line; // where two earlier tests allow one
    Score modelWithLine;
};

// The straight line through ln of the earlier tests, read at the day; nothing with fewer than two.
std::optional<double> lineAt(const std::vector<TestedMaximum>& earlier, Day day)
{
    std::vector<double> x;
    std::vector<double> y;
    for (const TestedMaximum& test : earlier) {
        x.push_back(test.day.sinceEpoch);
        y.push_back(std::log(test.kilograms));
    }
    if (x.size() == 2) { // exactly through both
        return y[1] + (y[1] - y[0]) * (day.sinceEpoch - x[1]) / (x[1] - x[0]);
    }
    const auto fit = fitLine(x, y);
    return fit ? std::optional(fit->intercept + fit->slope * day.sinceEpoch) : std::nullopt;
}

void predict(const std::map<std::string, Series>& person, const std::string& name, Scores& scores)
{
    const StrengthParameters parameters = forExperience(std::nullopt);
    const std::vector<TestedMaximum>& own = person.at(name).tests;
    for (std::size_t k = 1; k < own.size(); ++k) {
        const Day day = own[k].day;
        std::vector<ExerciseHistory> exercises;
        std::size_t place = 0;
        for (const auto& [other, series] : person) {
            place = other == name ? exercises.size() : place;
            std::size_t before = 0;
            while (before < series.tests.size() && series.tests[before].day < day) {
                ++before;
            }
            const std::span<const TestedMaximum> all = series.tests;
            exercises.push_back({{{}, all.first(before)}, {}, {}, std::nullopt});
        }
        const auto fit = fitMember(exercises, {}, day)[place];
        ASSERT_TRUE(fit);
        const double truth = std::log(own[k].kilograms);
        // A test's error in ln: its reps at one rep's worth of load (rep_curve.h).
        const double test = parameters.testedSpread * 0.0402;
        const double spread =
            std::sqrt(fit->fit.levelVariance + square(parameters.daySpread) + square(test));
        scores.model.add(truth - fit->fit.level, kNormalQuantile * spread);
        scores.lastValue.add(truth - std::log(own[k - 1].kilograms), 0.0);
        const std::vector<TestedMaximum> earlier(own.begin(),
                                                 own.begin() + static_cast<std::ptrdiff_t>(k));
        if (k >= 2) {
            if (const auto line = lineAt(earlier, day)) {
                scores.line.add(truth - *line, 0.0);
                scores.modelWithLine.add(truth - fit->fit.level, kNormalQuantile * spread);
            }
        }
    }
}

Scores score(const People& people, const char* what)
{
    Scores scores;
    for (const auto& [id, exercises] : people) {
        for (const auto& [name, series] : exercises) {
            predict(exercises, name, scores);
        }
    }
    std::printf("%s: model %.1f %% (lean %+.1f, inside %.3f of %d), last value %.1f %%; with two "
                "earlier tests: model %.1f %% (inside %.3f of %d), straight line %.1f %%\n",
                what,
                100 * scores.model.error(),
                100 * scores.model.sum / scores.model.count,
                scores.model.coverage(),
                scores.model.count,
                100 * scores.lastValue.error(),
                100 * scores.modelWithLine.error(),
                scores.modelWithLine.coverage(),
                scores.modelWithLine.count,
                100 * scores.line.error());
    return scores;
}

TEST(NextMaximumTest, LegDataIsPredictedBetterThanByLastValueAndLine)
{
    const Scores scores = score(read("leg_one_rm_12wk.csv", {0, 2, 6}, {3, 4}), "leg");
    EXPECT_LT(scores.model.error(), scores.lastValue.error());
    EXPECT_LT(scores.modelWithLine.error(), scores.line.error());
    EXPECT_GT(scores.model.coverage(), 0.86);
}

TEST(NextMaximumTest, PressDataIsPredictedBetterThanByTheLastValue)
{
    const Scores scores = score(read("press_one_rm_14wk.csv", {0, 1, 4}, {3}), "press");
    EXPECT_LT(scores.model.error(), scores.lastValue.error());
    EXPECT_GT(scores.model.coverage(), 0.86);
}

} // namespace
} // namespace levelbar::next_maximum_test
