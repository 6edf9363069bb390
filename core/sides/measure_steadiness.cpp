// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sides/measure_steadiness.h"

#include "core/sides/reliability.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace levelbar {

namespace {

// The spread below which a share of the people lie.
double spreadBelow(const SideNoise& noise, double share)
{
    double sum = 0.0;
    std::size_t step = 0;
    for (; step + 1 < kSteadinessSteps; ++step) {
        sum += noise.people.at(step);
        if (sum >= share) {
            break;
        }
    }
    return noise.spread * std::sqrt(relativeVariance(step));
}

void addReliability(const std::vector<double>& values, MeasureSteadiness& steadiness)
{
    const auto variance = trialVariance({values, 2});
    if (!variance) {
        return;
    }
    if (const auto intraclass = intraclassCorrelation(*variance, IntraclassModel::ThreeOne)) {
        steadiness.intraclass = *intraclass;
    }
    if (const auto error = typicalError(*variance)) {
        steadiness.typicalError = *error;
        if (const auto change = minimalDetectableChange(error->value)) {
            steadiness.detectable = *change;
        }
    }
}

} // namespace

MeasureSteadiness steadinessOf(const MeasuredSides& sides, Day day, double usualThreshold)
{
    const SideNoise noise = poolNoise(sides.series, day, sides.settings);
    MeasureSteadiness steadiness;
    steadiness.measure = sides.measure;
    steadiness.thresholdPercent = sides.thresholdPercent.value_or(usualThreshold);
    steadiness.daySpread = noise.spread;
    steadiness.steadiest = spreadBelow(noise, (1.0 - kLevel) / 2.0);
    steadiness.unsteadiest = spreadBelow(noise, (1.0 + kLevel) / 2.0);
    std::vector<double> lastTwo;
    for (const SideSeries& series : sides.series) {
        const auto look = lookAt(series, day, noise);
        if (!look) {
            continue;
        }
        ++steadiness.people;
        if (look->days < 2) {
            continue;
        }
        ++steadiness.repeated;
        const auto end = std::upper_bound(series.pairs.begin(),
                                          series.pairs.end(),
                                          day,
                                          [](Day d, const SidePair& pair) { return d < pair.day; });
        lastTwo.push_back((end - 2)->logPercent);
        lastTwo.push_back((end - 1)->logPercent);
    }
    addReliability(lastTwo, steadiness);
    return steadiness;
}

} // namespace levelbar
