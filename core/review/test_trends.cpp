// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/review/test_trends.h"

#include <algorithm>

namespace levelbar {

std::vector<TestResults> testResults(const MemberHistory& history, const Library& library, Day asOf)
{
    std::vector<TestResults> all;
    for (const TrialSeries& series : history.trials) {
        const TestKind* test = library.test(series.test);
        if (test == nullptr) {
            continue;
        }
        TestResults results{
            series.test, series.side, resultsOf(series.trials, test->direction, asOf)};
        if (measureOf(*test).scale == TrendScale::Ratio) {
            std::erase_if(results.values, [](const DatedValue& v) { return !(v.value > 0.0); });
        }
        if (!results.values.empty()) {
            all.push_back(std::move(results));
        }
    }
    return all;
}

TestNoise poolTestNoise(std::span<const std::vector<TestResults>> all, const Library& library)
{
    std::map<TestId, std::vector<std::vector<DatedValue>>> byTest;
    for (const auto& person : all) {
        for (const TestResults& results : person) {
            if (results.values.size() > 1) {
                byTest[results.test].push_back(results.values);
            }
        }
    }
    TestNoise noise;
    for (const auto& [id, series] : byTest) {
        const TestKind* test = library.test(id);
        if (test == nullptr) {
            continue;
        }
        if (const auto pooled = poolTrendNoise(series, measureOf(*test))) {
            noise.emplace(id, *pooled);
        }
    }
    return noise;
}

std::vector<TestReview> testTrends(std::span<const TestResults> all,
                                   const Library& library,
                                   const TestNoise& noise,
                                   Day today)
{
    std::vector<TestReview> reviews;
    for (const TestResults& results : all) {
        const TestKind* test = library.test(results.test);
        if (test == nullptr) {
            continue;
        }
        const TrendMeasure measure = measureOf(*test);
        const auto known = noise.find(results.test);
        const auto trend = valueTrend(results.values,
                                      measure,
                                      known == noise.end() ? usualNoise(measure) : known->second,
                                      today);
        if (trend) {
            reviews.push_back({results.test,
                               results.side,
                               results.values.back(),
                               *trend,
                               verdictOf(trend->call, test->direction)});
        }
    }
    return reviews;
}

std::vector<TestReview>
testTrends(const MemberHistory& history, const Library& library, const TestNoise& noise, Day today)
{
    return testTrends(testResults(history, library, today), library, noise, today);
}

} // namespace levelbar
