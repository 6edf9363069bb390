// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/trend/off_days.h"

#include "core/base/square.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace levelbar {

namespace {

constexpr int kRounds = 3;
constexpr double kEnough = 0.05; // relative change of an error's size that ends the rounds
constexpr double kIllnessWeeks = 1.0;
constexpr double kPartnerDeviations = 2.0; // each of two hides some of the other's distance
constexpr std::size_t kLeastValues = 4;    // fewer cannot tell who is off

// How far each value lies from what all others say, over the standard deviation of that were it as
// good as any: the deletion residual, from the backward recursion of de Jong
// 1989, JASA 84:1085-1088.
void deletionResiduals(const TrendSeries& series,
                       const LocalTrendModel& model,
                       std::vector<Innovation>& found,
                       std::vector<double>& deviations)
{
    const auto& nodes = series.nodes;
    TrendState state{*nodes[0].value, 0.0, nodes[0].variance, 0.0, series.slopeVariance};
    found[0] = {0.0, 0.0, 1.0, 0.0};
    for (std::size_t i = 1; i < nodes.size(); ++i) {
        state = advanced(state, nodes[i].weeks, model);
        state.levelVariance += nodes[i].levelLoosening;
        state.slopeVariance += nodes[i].slopeLoosening;
        found[i] = absorb(state, *nodes[i].value, nodes[i].variance);
    }
    // What the later values say of this node, as a vector and its variance (r and N there).
    std::array<double, 2> r{};
    std::array<double, 3> n{}; // level, both, slope
    for (std::size_t i = nodes.size(); i-- > 0;) {
        const Innovation& at = found[i];
        const std::array<double, 2> pull = {n[0] * at.levelGain + n[1] * at.slopeGain,
                                            n[1] * at.levelGain + n[2] * at.slopeGain};
        const double off = at.surprise * at.precision - at.levelGain * r[0] - at.slopeGain * r[1];
        const double precision = at.precision + at.levelGain * pull[0] + at.slopeGain * pull[1];
        const double common = 1.0 + (series.usualError(i) - nodes[i].variance) * precision;
        deviations[i] = off / std::sqrt(precision * common);
        r[0] += off;
        n[0] += precision - 2.0 * pull[0];
        n[1] -= pull[1];
        const double weeks = nodes[i].weeks;
        r[1] += weeks * r[0];
        n[2] += weeks * (2.0 * n[1] + weeks * n[0]);
        n[1] += weeks * n[0];
    }
}

// The person's own variance over the roster's, from the middle of the deviations: blind to those
// that are off.
double ownVariance(const TrendSeries& series, std::vector<double> sizes)
{
    constexpr double kNormalMedian = 0.674490; // of the size of a standard normal
    for (double& size : sizes) {
        size = std::abs(size);
    }
    const auto middle = sizes.begin() + static_cast<std::ptrdiff_t>(sizes.size() / 2);
    std::nth_element(sizes.begin(), middle, sizes.end());
    const double robust = square(*middle / kNormalMedian) / series.variance;
    const double count = series.values - 1.0;
    return (series.freedom + count * robust) / (series.freedom + count);
}

bool isChange(const TrendSeries& series, std::size_t first, const std::vector<double>& z)
{
    return first + 1 < z.size() && z[first] * z[first + 1] > 0.0 &&
           std::min(std::abs(z[first]), std::abs(z[first + 1])) > kPartnerDeviations &&
           series.nodes[first + 1].weeks > kIllnessWeeks;
}

// Errors anew from deviations; the largest relative change.
double weighAnew(TrendSeries& series, const std::vector<double>& z)
{
    double change = 0.0;
    for (std::size_t i = 0; i < z.size(); ++i) {
        double& error = series.nodes[i].variance;
        const bool isReal = isChange(series, i, z) || (i > 0 && isChange(series, i - 1, z));
        const double factor = isReal ? 1.0 : square(std::max(1.0, std::abs(z[i]) / kOffDeviations));
        const double next = series.usualError(i) * factor;
        change = std::max(change, std::abs(next / error - 1.0));
        error = next;
    }
    return change;
}

} // namespace

void weighOffDays(TrendSeries& series)
{
    if (series.nodes.size() < kLeastValues) {
        return;
    }
    // The likeliest pace; of equals the fastest, under which the fewest days are off.
    std::size_t pace = 0;
    for (std::size_t i = 1; i < kTrendPaces; ++i) {
        pace = series.paces[i] >= series.paces[pace] ? i : pace;
    }
    std::vector<Innovation> found(series.nodes.size());
    std::vector<double> z(series.nodes.size());
    for (int round = 0; round < kRounds; ++round) {
        deletionResiduals(series, series.models[pace], found, z);
        const double deviation = std::sqrt(series.variance * ownVariance(series, z));
        for (double& deviations : z) {
            deviations /= deviation;
        }
        if (weighAnew(series, z) < kEnough) {
            break;
        }
    }
}

} // namespace levelbar
