// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/report/report_tests.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <map>

namespace levelbar {

namespace {

// The best valid values of one day, by side.
struct TestDay {
    std::array<std::optional<double>, 3> best;
};

using TestDays = std::map<Day, TestDay>;

TestDays daysOf(const MemberHistory& history, const TestKind& test, Day asOf)
{
    TestDays days;
    for (const TrialSeries& series : history.trials) {
        if (series.test != test.id) {
            continue;
        }
        for (const Trial& trial : series.trials) {
            if (!trial.isValid || trial.day > asOf) {
                continue;
            }
            auto& best = days[trial.day].best.at(static_cast<std::size_t>(trial.side));
            const double value = trial.value();
            const bool isBetter =
                !best ||
                (test.direction == Direction::LessIsBetter ? value < *best : value > *best);
            best = isBetter ? value : *best;
        }
    }
    return days;
}

// At most one decimal: what people read off a scale, a watch or a tape.
std::string valueText(double value, const std::string& unit)
{
    const double tenths = std::round(value * 10.0) / 10.0 + 0.0;
    const bool isWhole = tenths == std::round(tenths);
    const std::string number =
        isWhole ? fmt::format("{:.0f}", tenths) : fmt::format("{:.1f}", tenths);
    return unit.empty() ? number : number + " " + unit;
}

Phrase dayPhrase(const TestDay& values, const TestKind& test, const std::string& day, bool isFirst)
{
    const auto& [both, left, right] = values.best;
    if (left && right) {
        return {isFirst ? "First, %3: left %1, right %2." : "Left %1, right %2 on %3.",
                {valueText(*left, test.unit), valueText(*right, test.unit), day}};
    }
    if (left || right) {
        const std::string value = valueText(left ? *left : *right, test.unit);
        if (left) {
            return {isFirst ? "First, %2: left %1." : "Left %1 on %2.", {value, day}};
        }
        return {isFirst ? "First, %2: right %1." : "Right %1 on %2.", {value, day}};
    }
    return {isFirst ? "First, %2: %1." : "%1 on %2.", {valueText(*both, test.unit), day}};
}

} // namespace

std::vector<ReportTest> testLines(const MemberHistory& history, const Library& library, Day asOf)
{
    std::vector<ReportTest> lines;
    for (const TestKind& test : library.tests) {
        if (test.direction == Direction::None) {
            continue;
        }
        const TestDays days = daysOf(history, test, asOf);
        if (days.empty()) {
            continue;
        }
        ReportTest line{test.name, {}, {}};
        line.words.push_back(
            dayPhrase(days.rbegin()->second, test, reportDay(days.rbegin()->first, asOf), false));
        if (days.size() > 1) {
            line.words.push_back(
                dayPhrase(days.begin()->second, test, reportDay(days.begin()->first, asOf), true));
        }
        if (test.direction == Direction::LessIsBetter) {
            line.words.push_back({"Less is better.", {}});
        }
        line.norm = {{"No norm: set beside your own earlier tests only.", {}}};
        lines.push_back(std::move(line));
    }
    return lines;
}

} // namespace levelbar
