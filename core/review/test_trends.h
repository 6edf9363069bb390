// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/review/history.h"
#include "core/trend/value_trend.h"

#include <map>
#include <span>
#include <vector>

namespace levelbar {

// One test (or body mass) and side of a person: how its results move.
struct TestReview {
    TestId test;
    Side side = Side::Both;
    DatedValue last; // in the test's own unit
    ValueTrend trend;
    TrendVerdict verdict = TrendVerdict::Neither; // by the test's direction
};

// A person's results of one test and side: one a day, by day.
struct TestResults {
    TestId test;
    Side side = Side::Both;
    std::vector<DatedValue> values; // never empty
};

// What a result is worth, by test. A test that is missing is judged by what is usual.
using TestNoise = std::map<TestId, TrendNoise>;

// Valid results up to `asOf`, by test, then side. On a ratio scale a result of nought has no
// place and is passed over (a plank of 0 s); reps count from nought.
[[nodiscard]] std::vector<TestResults>
testResults(const MemberHistory& history, const Library& library, Day asOf);

// Learnt from everybody's results, one entry of `all` a person; both sides of a test together.
[[nodiscard]] TestNoise poolTestNoise(std::span<const std::vector<TestResults>> all,
                                      const Library& library);

// In the order of `results`.
[[nodiscard]] std::vector<TestReview> testTrends(std::span<const TestResults> results,
                                                 const Library& library,
                                                 const TestNoise& noise,
                                                 Day today);

// The same from a history.
[[nodiscard]] std::vector<TestReview>
testTrends(const MemberHistory& history, const Library& library, const TestNoise& noise, Day today);

} // namespace levelbar
