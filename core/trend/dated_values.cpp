// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/trend/dated_values.h"

#include <algorithm>
#include <cmath>
#include <string>

namespace levelbar {

namespace {

bool isAboveZero(double x)
{
    return std::isfinite(x) && x > 0.0;
}

} // namespace

TrendMeasure measureOf(const TestKind& test)
{
    if (test.maximumOf) {
        return kMaximumMeasure;
    }
    if (test.key == "grip-strength") {
        return kGripMeasure;
    }
    if (test.key == "body-mass") {
        return kBodyMassMeasure;
    }
    if (test.unit == "reps" || test.lowestThousandths < 0) {
        return kRepsMeasure;
    }
    TrendMeasure measure;
    measure.spread = 6.0; // what is neither a maximum nor a mass: assumed
    return measure;
}

Result<void> checkSeries(std::span<const DatedValue> series, const TrendMeasure& measure)
{
    if (!isAboveZero(measure.mattering) || !isAboveZero(measure.spread) || measure.gapDays < 1) {
        return refuse(FaultCode::NotInDomain, {"measure", "numbers above 0"});
    }
    if (series.empty()) {
        return refuse(FaultCode::NotInDomain, {"0 values", "one or more"});
    }
    for (std::size_t i = 0; i < series.size(); ++i) {
        const double value = series[i].value;
        const bool isUsable =
            measure.scale == TrendScale::Ratio ? isAboveZero(value) : std::isfinite(value);
        if (!isUsable) {
            return refuse(
                FaultCode::NotInDomain,
                {std::to_string(value), measure.scale == TrendScale::Ratio ? "above 0" : "finite"});
        }
        if (i > 0 && series[i].day < series[i - 1].day) {
            return refuse(FaultCode::NotInDomain, {isoText(series[i].day), "days ascending"});
        }
    }
    return {};
}

double onScale(double value, TrendScale scale)
{
    return scale == TrendScale::Ratio ? 100.0 * std::log(value) : value;
}

double offScale(double value, TrendScale scale)
{
    return scale == TrendScale::Ratio ? std::exp(value / 100.0) : value;
}

int medianGapDays(std::span<const DatedValue> series, const TrendMeasure& measure)
{
    std::vector<int> gaps;
    gaps.reserve(series.size());
    for (std::size_t i = 1; i < series.size(); ++i) {
        gaps.push_back(series[i].day - series[i - 1].day);
    }
    if (gaps.empty()) {
        return measure.gapDays;
    }
    const auto middle = gaps.begin() + static_cast<std::ptrdiff_t>(gaps.size() / 2);
    std::nth_element(gaps.begin(), middle, gaps.end());
    return std::max(1, *middle);
}

std::vector<DatedValue> resultsOf(std::span<const Trial> trials, Direction direction, Day asOf)
{
    std::vector<DatedValue> results;
    int sameDay = 0;
    for (const Trial& trial : trials) {
        if (!trial.isValid || trial.day > asOf) {
            continue;
        }
        const double value = trial.value();
        if (results.empty() || results.back().day != trial.day) {
            results.push_back({trial.day, value});
            sameDay = 1;
            continue;
        }
        double& best = results.back().value;
        ++sameDay;
        switch (direction) {
        case Direction::MoreIsBetter:
            best = std::max(best, value);
            break;
        case Direction::LessIsBetter:
            best = std::min(best, value);
            break;
        case Direction::None:
            best += (value - best) / sameDay;
            break;
        }
    }
    return results;
}

} // namespace levelbar
