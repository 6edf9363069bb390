// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/review/figures.h"
#include "core/review/test_trends.h"

#include <string>
#include <vector>

namespace levelbar {

// What the chart of one test and side shows, in the test's unit.
struct TestFigure {
    std::string name;
    std::string unit;
    std::vector<DatedValue> values;  // by day
    std::vector<BandPoint> band;     // from the first value to the last
    std::vector<BandPoint> forecast; // the last value's day first, then up to six weeks after it
};

// Empty when the person has no result up to `today`. `noise`: Review::testNoise.
[[nodiscard]] TestFigure testFigure(const std::vector<TestResults>& results,
                                    const Library& library,
                                    const TestNoise& noise,
                                    TestId test,
                                    Side side);

} // namespace levelbar
