// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/review/test_figure.h"

#include <algorithm>
#include <set>

namespace levelbar {

namespace {

constexpr int kDaysPerWeek = 7;

// Every day with a value, a day a week between them, and the weeks of the forecast.
std::vector<Day> daysToDraw(const std::vector<DatedValue>& values)
{
    std::set<Day> days;
    for (const DatedValue& value : values) {
        days.insert(value.day);
    }
    for (Day day = values.front().day; day < values.back().day; day = day + kDaysPerWeek) {
        days.insert(day);
    }
    for (int ahead = kDaysPerWeek; ahead <= kForecastDays; ahead += kDaysPerWeek) {
        days.insert(values.back().day + ahead);
    }
    return {days.begin(), days.end()};
}

} // namespace

TestFigure testFigure(const std::vector<TestResults>& results,
                      const Library& library,
                      const TestNoise& noise,
                      TestId test,
                      Side side)
{
    TestFigure figure;
    const TestKind* kind = library.test(test);
    const auto found = std::find_if(results.begin(), results.end(), [&](const TestResults& entry) {
        return entry.test == test && entry.side == side;
    });
    if (kind == nullptr || found == results.end()) {
        return figure;
    }
    figure.name = kind->name;
    figure.unit = kind->unit;
    figure.values = found->values;
    const TrendMeasure measure = measureOf(*kind);
    const auto known = noise.find(test);
    const auto band = trendBand(found->values,
                                measure,
                                known == noise.end() ? usualNoise(measure) : known->second,
                                daysToDraw(found->values));
    if (!band) {
        return figure;
    }
    const Day last = found->values.back().day;
    for (const TrendBandDay& day : *band) {
        const BandPoint point{day.day, day.level.value, day.level.low, day.level.high};
        if (day.day <= last) {
            figure.band.push_back(point);
        }
        if (day.day >= last) {
            figure.forecast.push_back(point);
        }
    }
    return figure;
}

} // namespace levelbar
