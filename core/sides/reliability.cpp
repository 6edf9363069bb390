// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sides/reliability.h"

#include "core/base/distributions.h"
#include "core/base/square.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <vector>

namespace levelbar {

namespace {

constexpr double kLimit = 1.96; // of a standard normal, 95 in 100, as the paper rounds it

tl::unexpected<Fault> outside(double value, const char* valid)
{
    return refuse(FaultCode::NotInDomain, {fmt::format("{}", value), valid});
}

bool areFinite(std::span<const double> values)
{
    return std::all_of(values.begin(), values.end(), [](double v) { return std::isfinite(v); });
}

bool isShare(double level)
{
    return level > 0.0 && level < 1.0;
}

double mean(std::span<const double> values)
{
    double sum = 0.0;
    for (const double value : values) {
        sum += value / static_cast<double>(values.size());
    }
    return sum;
}

// Degrees of freedom of the mean squares.
double peopleFreedom(const TrialVariance& v)
{
    return v.people - 1.0;
}

double errorFreedom(const TrialVariance& v)
{
    return (v.people - 1.0) * (v.trials - 1.0);
}

// The interval of (1,1) and (3,1), which differ only in what counts as error.
Estimate fromRatio(const TrialVariance& v, double error, double freedom, double level)
{
    const double k = v.trials;
    const double people = peopleFreedom(v);
    const double ratio = v.betweenPeople / error;
    const double upperTail = (1.0 + level) / 2.0;
    const double low = ratio / fisherQuantile(upperTail, people, freedom);
    const double high = ratio * fisherQuantile(upperTail, freedom, people);
    const auto correlation = [k](double f) { return (f - 1.0) / (f + k - 1.0); };
    return {correlation(ratio), correlation(low), correlation(high), level, v.people};
}

// (2,1): the degrees of freedom of its denominator after Satterthwaite, as Shrout and Fleiss print.
Estimate twoOne(const TrialVariance& v, double level)
{
    const double n = v.people;
    const double k = v.trials;
    const double total =
        v.betweenPeople + (k - 1.0) * v.error + k * (v.betweenTrials - v.error) / n;
    const double value = (v.betweenPeople - v.error) / total;
    const double trialRatio = v.betweenTrials / v.error;
    const double people = n * (1.0 + (k - 1.0) * value) - k * value;
    const double freedom = (k - 1.0) * (n - 1.0) * square(k * value * trialRatio + people) /
                           ((n - 1.0) * square(k * value * trialRatio) + square(people));
    const double upperTail = (1.0 + level) / 2.0;
    const double forLow = fisherQuantile(upperTail, n - 1.0, freedom);
    const double forHigh = fisherQuantile(upperTail, freedom, n - 1.0);
    const double rest = k * v.betweenTrials + (k * n - k - n) * v.error;
    const double low =
        n * (v.betweenPeople - forLow * v.error) / (forLow * rest + n * v.betweenPeople);
    const double high =
        n * (forHigh * v.betweenPeople - v.error) / (rest + n * forHigh * v.betweenPeople);
    return {value, low, high, level, v.people};
}

} // namespace

Result<TrialVariance> trialVariance(const RepeatedTrials& trials)
{
    const std::size_t k = trials.trials < 2 ? 0 : static_cast<std::size_t>(trials.trials);
    if (k == 0 || trials.values.size() % k != 0 || trials.values.size() / k < 2) {
        return outside(static_cast<double>(trials.values.size()), "two people, two trials each");
    }
    if (!areFinite(trials.values)) {
        return outside(NAN, "finite values");
    }
    const std::size_t n = trials.values.size() / k;
    const double grand = mean(trials.values);
    std::vector<double> trialMeans(k, 0.0);
    std::vector<double> personMeans;
    for (std::size_t person = 0; person < n; ++person) {
        const auto row = trials.values.subspan(person * k, k);
        personMeans.push_back(mean(row));
        for (std::size_t trial = 0; trial < k; ++trial) {
            trialMeans[trial] += row[trial] / static_cast<double>(n);
        }
    }
    double between = 0.0;
    double error = 0.0;
    double within = 0.0;
    for (std::size_t person = 0; person < n; ++person) {
        between += static_cast<double>(k) * square(personMeans[person] - grand);
        for (std::size_t trial = 0; trial < k; ++trial) {
            const double off = trials.values[person * k + trial] - personMeans[person];
            within += square(off);
            error += square(off - (trialMeans[trial] - grand));
        }
    }
    double shift = 0.0;
    for (const double trialMean : trialMeans) {
        shift += static_cast<double>(n) * square(trialMean - grand);
    }
    const double people = static_cast<double>(n) - 1.0;
    const double repeats = static_cast<double>(k) - 1.0;
    return TrialVariance{static_cast<int>(n),
                         trials.trials,
                         between / people,
                         shift / repeats,
                         error / (people * repeats),
                         within / (static_cast<double>(n) * repeats)};
}

Result<Estimate>
intraclassCorrelation(const TrialVariance& variance, IntraclassModel model, double level)
{
    const bool isPlain = model == IntraclassModel::OneOne;
    const double error = isPlain ? variance.withinPeople : variance.error;
    if (!(error > 0.0) || !isShare(level)) {
        return outside(error, "an error above 0, a level between 0 and 1");
    }
    switch (model) {
    case IntraclassModel::OneOne:
        return fromRatio(variance, error, variance.people * (variance.trials - 1.0), level);
    case IntraclassModel::TwoOne:
        return twoOne(variance, level);
    case IntraclassModel::ThreeOne:
        break;
    }
    return fromRatio(variance, error, errorFreedom(variance), level);
}

Result<Estimate> typicalError(const TrialVariance& variance, double level)
{
    const double freedom = errorFreedom(variance);
    if (!(freedom >= 1.0) || !(variance.error >= 0.0) || !isShare(level)) {
        return outside(level, "two people, two trials, a level between 0 and 1");
    }
    const double error = std::sqrt(variance.error);
    const auto bound = [&](double probability) {
        return error * std::sqrt(freedom / chiSquareQuantile(probability, freedom));
    };
    return Estimate{
        error, bound((1.0 + level) / 2.0), bound((1.0 - level) / 2.0), level, variance.people};
}

Result<double> variationPercent(double logTypicalError)
{
    const double percent = 100.0 * std::expm1(logTypicalError / 100.0);
    if (!(logTypicalError >= 0.0) || !std::isfinite(percent)) {
        return outside(logTypicalError, "a finite error, 0 or more");
    }
    return percent;
}

Result<double> minimalDetectableChange(double error, int averaged, double level)
{
    if (!(error >= 0.0) || !std::isfinite(error) || averaged < 1 || !isShare(level)) {
        return outside(error, "an error of 0 or more, one trial or more, a level between 0 and 1");
    }
    return normalQuantile((1.0 + level) / 2.0) * std::sqrt(2.0 / averaged) * error;
}

Result<Agreement>
agreement(std::span<const double> first, std::span<const double> second, double level)
{
    if (first.size() != second.size() || first.size() < 2) {
        return outside(static_cast<double>(first.size()), "two pairs or more");
    }
    if (!areFinite(first) || !areFinite(second) || !isShare(level)) {
        return outside(level, "finite values, a level between 0 and 1");
    }
    std::vector<double> differences;
    for (std::size_t i = 0; i < first.size(); ++i) {
        differences.push_back(first[i] - second[i]);
    }
    const double bias = mean(differences);
    double sum = 0.0;
    for (const double difference : differences) {
        sum += square(difference - bias);
    }
    const double n = static_cast<double>(differences.size());
    const double variance = sum / (n - 1.0);
    const double spread = std::sqrt(variance);
    const double t = studentQuantile((1.0 + level) / 2.0, n - 1.0);
    const auto line = [&](double value, double squaredError) {
        const double reach = t * std::sqrt(squaredError);
        return Estimate{value, value - reach, value + reach, level, static_cast<int>(n)};
    };
    // The error of a limit as the paper prints it: the root of 3 s^2 / n.
    return Agreement{line(bias, variance / n),
                     spread,
                     line(bias - kLimit * spread, 3.0 * variance / n),
                     line(bias + kLimit * spread, 3.0 * variance / n)};
}

} // namespace levelbar
