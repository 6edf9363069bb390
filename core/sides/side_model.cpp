// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sides/side_model.h"

#include "core/base/distributions.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace levelbar {

namespace {

constexpr int kWindowDays = 120;
constexpr std::size_t kMostPairs = 12;
constexpr double kHalfLifeDays = 60.0;

// Prior noise, its weight and its floor. Tests: a 1RM's coefficient of variation of 4.2 % on
// either side (Grgic 2020) makes 5.9; reps: assumed.
constexpr double kTestSpread = 6.0;
constexpr double kRepsSpread = 7.0;
constexpr double kPriorFreedom = 20.0;
constexpr double kLeastSpread = 3.0;

// The prior of the prior, as if from so many people.
constexpr double kPriorPeople = 10.0;
constexpr double kNarrow = 4.0;
constexpr double kWide = 12.0;
constexpr double kWideShare = 0.1;
constexpr double kCentreSpread = 2.0;

double square(double x)
{
    return x * x;
}

double density(double x, double variance)
{
    return std::exp(-0.5 * x * x / variance) / std::sqrt(2.0 * std::numbers::pi * variance);
}

std::span<const SidePair> window(const SideSeries& series, Day day)
{
    const auto& pairs = series.pairs;
    const auto byDay = [](const SidePair& pair, Day d) { return pair.day < d; };
    const auto from = std::lower_bound(pairs.begin(), pairs.end(), day - kWindowDays, byDay);
    const auto to = std::lower_bound(from, pairs.end(), day + 1, byDay);
    const auto count = static_cast<std::size_t>(to - from);
    const std::size_t used = std::min(count, kMostPairs);
    return {to - static_cast<std::ptrdiff_t>(used), used};
}

// A person's part in learning the prior: the observed mean, centred, and its variance.
struct Part {
    double off = 0.0;
    double variance = 1.0;
};

// One component's posterior for a part.
struct Component {
    double mean = 0.0;
    double variance = 0.0;
};

Component shrink(const Part& part, double spread)
{
    const double keep = square(spread) / (square(spread) + part.variance);
    return {keep * part.off, keep * part.variance};
}

double wideWeight(const Part& part, const SidePrior& prior)
{
    const double wide = prior.wideShare * density(part.off, part.variance + square(prior.wide));
    const double narrow =
        (1.0 - prior.wideShare) * density(part.off, part.variance + square(prior.narrow));
    // Both vanish only for a part that is impossibly far out: then it is in the tail.
    return wide + narrow > 0.0 ? wide / (wide + narrow) : 1.0;
}

// One round of expectation and maximisation.
SidePrior improved(const SidePrior& prior, std::span<const Part> parts)
{
    double narrowSum = kPriorPeople * (1.0 - kWideShare) * square(kNarrow);
    double narrowCount = kPriorPeople * (1.0 - kWideShare);
    double wideSum = kPriorPeople * kWideShare * square(kWide);
    double wideCount = kPriorPeople * kWideShare;
    for (const Part& part : parts) {
        const double weight = wideWeight(part, prior);
        const Component narrow = shrink(part, prior.narrow);
        const Component wide = shrink(part, prior.wide);
        narrowSum += (1.0 - weight) * (square(narrow.mean) + narrow.variance);
        narrowCount += 1.0 - weight;
        wideSum += weight * (square(wide.mean) + wide.variance);
        wideCount += weight;
    }
    SidePrior next = prior;
    next.narrow = std::max(1.0, std::sqrt(narrowSum / narrowCount));
    next.wide = std::max(2.0 * next.narrow, std::sqrt(wideSum / wideCount));
    next.wideShare = std::clamp(wideCount / (wideCount + narrowCount), 0.005, 0.3);
    return next;
}

} // namespace

double logPercentOf(double percent)
{
    return -100.0 * std::log(1.0 - percent / 100.0);
}

double percentOf(double logPercent)
{
    const double size = 100.0 * (1.0 - std::exp(-std::abs(logPercent) / 100.0));
    return logPercent < 0.0 ? -size : size;
}

std::optional<SideLook> lookAt(const SideSeries& series, Day day, const SideNoise& noise)
{
    const auto pairs = window(series, day);
    if (pairs.empty()) {
        return std::nullopt;
    }
    double weights = 0.0;
    double squares = 0.0;
    double sum = 0.0;
    for (const SidePair& pair : pairs) {
        const double weight = std::pow(0.5, (day - pair.day) / kHalfLifeDays);
        weights += weight;
        squares += square(weight);
        sum += weight * pair.logPercent;
    }
    const double effective = square(weights) / squares;
    return SideLook{sum / weights,
                    square(noise.spread) / effective,
                    static_cast<int>(pairs.size()),
                    pairs.back().day,
                    pairs.front().day};
}

SideNoise poolNoise(std::span<const SideSeries> all, Day day, const SideSettings& settings)
{
    double sum = 0.0;
    double freedom = 0.0;
    for (const SideSeries& series : all) {
        const auto pairs = window(series, day);
        if (pairs.size() < 2) {
            continue;
        }
        double mean = 0.0;
        for (const SidePair& pair : pairs) {
            mean += pair.logPercent / static_cast<double>(pairs.size());
        }
        for (const SidePair& pair : pairs) {
            sum += square(pair.logPercent - mean);
        }
        freedom += static_cast<double>(pairs.size()) - 1.0;
    }
    const double usual = settings.isTest ? kTestSpread : kRepsSpread;
    const double total = kPriorFreedom + freedom;
    const double variance = (kPriorFreedom * square(usual) + sum) / total;
    return {std::max(kLeastSpread, std::sqrt(variance)), total};
}

double centreFor(const SidePrior& prior, std::optional<Side> dominant)
{
    return dominant == Side::Right ? prior.centre : 0.0;
}

SidePrior learnPrior(std::span<const SideSeries> all,
                     Day day,
                     const SideNoise& noise,
                     const SideSettings& settings)
{
    std::vector<std::pair<SideLook, bool>> looks; // and whether right-handed
    double weights = 1.0 / square(kCentreSpread);
    double weighted = weights * settings.handedCentre;
    for (const SideSeries& series : all) {
        if (const auto look = lookAt(series, day, noise)) {
            const bool isRight = series.dominant == Side::Right;
            looks.emplace_back(*look, isRight);
            // The tail pulls less: a weight as if everyone came from narrow and wide together.
            const double weight = 1.0 / (look->variance + square(kNarrow) + 2.0 * kWide);
            weights += isRight ? weight : 0.0;
            weighted += isRight ? weight * look->mean : 0.0;
        }
    }
    SidePrior prior;
    prior.centre = weighted / weights;
    std::vector<Part> parts;
    parts.reserve(looks.size());
    for (const auto& [look, isRight] : looks) {
        parts.push_back({look.mean - (isRight ? prior.centre : 0.0), look.variance});
    }
    constexpr int kMostRounds = 60;
    for (int round = 0; round < kMostRounds; ++round) {
        const SidePrior next = improved(prior, parts);
        const double change = std::abs(next.narrow - prior.narrow) +
                              std::abs(next.wide - prior.wide) +
                              10.0 * std::abs(next.wideShare - prior.wideShare);
        prior = next;
        if (change < 1e-6) {
            break;
        }
    }
    return prior;
}

SidePosterior posteriorOf(const SideLook& look, const SidePrior& prior, double centre)
{
    const Part part{look.mean - centre, look.variance};
    const Component narrow = shrink(part, prior.narrow);
    const Component wide = shrink(part, prior.wide);
    return {centre + narrow.mean,
            std::sqrt(narrow.variance),
            centre + wide.mean,
            std::sqrt(wide.variance),
            wideWeight(part, prior)};
}

double SidePosterior::mean() const
{
    return (1.0 - wideShare) * narrowMean + wideShare * wideMean;
}

double SidePosterior::below(double logPercent) const
{
    return (1.0 - wideShare) * normalBelow((logPercent - narrowMean) / narrowSpread) +
           wideShare * normalBelow((logPercent - wideMean) / wideSpread);
}

double SidePosterior::quantile(double probability) const
{
    const double reach = 12.0 * std::max(narrowSpread, wideSpread);
    double low = std::min(narrowMean, wideMean) - reach;
    double high = std::max(narrowMean, wideMean) + reach;
    for (int step = 0; step < 80; ++step) {
        const double middle = 0.5 * (low + high);
        (below(middle) < probability ? low : high) = middle;
    }
    return 0.5 * (low + high);
}

} // namespace levelbar
