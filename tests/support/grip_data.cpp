// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/grip_data.h"

#include "core/sides/side_pairs.h"

#include <cmath>
#include <cstdlib>
#include <fstream>
#include <sstream>

namespace levelbar::tests {

namespace {

constexpr std::size_t kDominant = 5;
constexpr std::size_t kRight = 7;
constexpr std::size_t kLeft = 13;

std::vector<std::string> cellsOf(const std::string& line)
{
    std::vector<std::string> cells;
    std::istringstream row(line);
    for (std::string cell; std::getline(row, cell, ',');) {
        cells.push_back(cell);
    }
    return cells;
}

// Kilograms of a maximal trial; 0 when it is not one.
double maximal(const std::vector<std::string>& cells, std::size_t at)
{
    return at + 1 < cells.size() && cells[at + 1].substr(0, 3) == "max"
               ? std::strtod(cells[at].c_str(), nullptr)
               : 0.0;
}

} // namespace

std::vector<GripPerson> readGripData(const std::string& path)
{
    std::vector<GripPerson> people;
    std::ifstream in(path);
    std::string line;
    std::getline(in, line);
    while (std::getline(in, line)) {
        const auto cells = cellsOf(line);
        GripPerson person;
        if (cells.size() > kDominant && cells[kDominant] != "neither") {
            person.dominant = cells[kDominant] == "right"  ? std::optional(Side::Right)
                              : cells[kDominant] == "left" ? std::optional(Side::Left)
                                                           : std::nullopt;
        }
        bool isWhole = true;
        for (std::size_t trial = 0; trial < 3; ++trial) {
            const double right = maximal(cells, kRight + 2 * trial);
            const double left = maximal(cells, kLeft + 2 * trial);
            const double d = right > 0.0 && left > 0.0 ? 100.0 * std::log(right / left) : 1e9;
            isWhole = isWhole && std::abs(d) <= kLargestLogPercent;
            person.logPercent.at(trial) = d;
        }
        if (isWhole) {
            people.push_back(person);
        }
    }
    return people;
}

} // namespace levelbar::tests
