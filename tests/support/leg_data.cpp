// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/leg_data.h"

#include <algorithm>
#include <array>
#include <fstream>
#include <sstream>

namespace levelbar::tests {

LegTests readLegTests(const std::string& path)
{
    LegTests people;
    std::ifstream in(path);
    std::string line;
    std::getline(in, line);
    while (std::getline(in, line)) {
        std::istringstream row(line);
        std::array<std::string, 7> cell; // id, sex, week, exercise, side, sets, kilograms
        for (std::string& text : cell) {
            std::getline(row, text, ',');
        }
        if (!cell[6].empty()) {
            const std::string name =
                cell[3] == "leg press" ? "Single-leg press" : "Single-leg knee extension";
            people[cell[0]][name].push_back(
                {std::stod(cell[2]), std::stod(cell[6]), cell[4] == "left" ? -0.5 : 0.5});
        }
    }
    for (auto& [person, exercises] : people) {
        for (auto& [exercise, tests] : exercises) {
            std::stable_sort(tests.begin(), tests.end(), [](const auto& a, const auto& b) {
                return a.week < b.week;
            });
        }
    }
    return people;
}

} // namespace levelbar::tests
