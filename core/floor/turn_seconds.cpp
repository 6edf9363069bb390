// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/floor/turn_seconds.h"

#include "core/base/square.h"
#include "core/strength/strength.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace levelbar {

namespace {

const double kPriorSpread = std::log(1.5);
constexpr double kShortest = 10.0; // seconds
constexpr double kLongest = 600.0;
constexpr double kMedianError = 1.2533;    // of the median of normals, over the mean's
constexpr double kDeviationScale = 1.4826; // of the median absolute deviation
constexpr double kLeastSpread = 0.15;      // turns are never all alike

double median(std::vector<double> values)
{
    const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
    std::nth_element(values.begin(), middle, values.end());
    if (values.size() % 2 == 1) {
        return *middle;
    }
    return 0.5 * (*middle + *std::max_element(values.begin(), middle));
}

std::vector<double> logGaps(std::span<const KeyedTurn> turns)
{
    std::vector<KeyedTurn> sorted(turns.begin(), turns.end());
    std::sort(sorted.begin(), sorted.end(), [](const KeyedTurn& a, const KeyedTurn& b) {
        return std::pair(a.station, a.place) < std::pair(b.station, b.place);
    });
    std::vector<double> gaps;
    for (std::size_t i = 1; i < sorted.size(); ++i) {
        const int between = sorted[i].place - sorted[i - 1].place;
        if (sorted[i].station != sorted[i - 1].station || between < 1) {
            continue;
        }
        const double seconds =
            static_cast<double>(sorted[i].at.milliseconds - sorted[i - 1].at.milliseconds) /
            1000.0 / between;
        if (seconds >= kShortest && seconds <= kLongest) {
            gaps.push_back(std::log(seconds));
        }
    }
    return gaps;
}

} // namespace

std::vector<KeyedTurn> keyedTurns(const ClassFloor& floor)
{
    std::vector<KeyedTurn> turns;
    std::map<int, int> places; // by station; cells are sorted by round and turn
    for (const PadCell& cell : floor.cells) {
        if (cell.setAside) {
            continue;
        }
        const int place = places[cell.station]++;
        if (cell.done && cell.done->keyedAt && cell.done->performed.known != HowKnown::Group) {
            turns.push_back({cell.station, place, *cell.done->keyedAt});
        }
    }
    return turns;
}

Estimate secondsOfTurn(std::span<const KeyedTurn> turns)
{
    const std::vector<double> gaps = logGaps(turns);
    double precision = 1.0 / square(kPriorSpread);
    double centre = std::log(kPriorTurnSeconds);
    if (!gaps.empty()) {
        const double middle = median(gaps);
        std::vector<double> away;
        std::transform(gaps.begin(), gaps.end(), std::back_inserter(away), [middle](double gap) {
            return std::abs(gap - middle);
        });
        // Few gaps may agree by chance: the prior stands in as two more.
        const auto n = static_cast<double>(gaps.size());
        const double seen = std::max(kLeastSpread, kDeviationScale * median(away));
        const double spread = (n * seen + 2.0 * kPriorSpread) / (n + 2.0);
        const double weight = n / square(kMedianError * spread);
        centre = (centre * precision + middle * weight) / (precision + weight);
        precision += weight;
    }
    const double half = kNormalQuantile / std::sqrt(precision);
    return {std::exp(centre),
            std::exp(centre - half),
            std::exp(centre + half),
            kLevel,
            static_cast<int>(gaps.size())};
}

} // namespace levelbar
