// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sides/side_model.h"

#include "core/base/distributions.h"
#include "core/base/square.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

namespace levelbar {

namespace {

// The prior of the prior, as if from so many people.
constexpr double kPriorPeople = 10.0;
constexpr double kNarrow = 4.0;
constexpr double kWide = 12.0;
constexpr double kWideShare = 0.1;
constexpr double kCentreSpread = 2.0;
constexpr double kWithNoiseSpread = 0.25; // assumed: none unless the roster shows it

constexpr double kTooSmallShare = 1e-4; // of a step, not worth its arithmetic

double density(double x, double variance)
{
    const double precision = 1.0 / variance;
    return std::exp(-0.5 * x * x * precision) * std::sqrt(precision / (2.0 * std::numbers::pi));
}

// A person's part in learning the prior: the observed mean, centred, and its variance.
struct Part {
    double off = 0.0;
    double variance = 1.0;
    SteadinessShares steadiness{};
};

// The prior's two variances at each step of steadiness.
struct Grown {
    explicit Grown(const SidePrior& prior)
    {
        for (std::size_t step = 0; step < kSteadinessSteps; ++step) {
            growth.at(step) = std::pow(relativeVariance(step), prior.withNoise);
        }
    }

    std::array<double, kSteadinessSteps> growth{};
};

// One normal of a person's posterior: which, how likely, and where.
struct Component {
    std::size_t step = 0;
    bool isWide = false;
    double share = 0.0;
    double mean = 0.0; // of the difference, centred
    double variance = 0.0;
};

struct Components {
    std::array<Component, 2 * kSteadinessSteps> list{};
    std::size_t count = 0;
};

Components componentsOf(const Part& part, const SidePrior& prior, const Grown& grown)
{
    Components result;
    double sum = 0.0;
    for (std::size_t step = 0; step < kSteadinessSteps; ++step) {
        const double steady = part.steadiness[step];
        if (steady < kTooSmallShare) {
            continue;
        }
        const double noise = part.variance * relativeVariance(step);
        for (const bool isWide : {false, true}) {
            const double own = square(isWide ? prior.wide : prior.narrow) * grown.growth[step];
            const double keep = own / (own + noise);
            const double share = steady * (isWide ? prior.wideShare : 1.0 - prior.wideShare) *
                                 density(part.off, own + noise);
            result.list[result.count++] = {step, isWide, share, keep * part.off, keep * noise};
            sum += share;
        }
    }
    if (sum > 0.0) {
        for (std::size_t i = 0; i < result.count; ++i) {
            result.list[i].share /= sum;
        }
    } else {
        // Impossibly far out for every part: the widest is the least wrong.
        result.list[result.count - 1].share = 1.0;
    }
    return result;
}

// Sums of one round of expectation.
struct Sums {
    double narrow = kPriorPeople * (1.0 - kWideShare) * square(kNarrow);
    double narrowCount = kPriorPeople * (1.0 - kWideShare);
    double wide = kPriorPeople * kWideShare * square(kWide);
    double wideCount = kPriorPeople * kWideShare;
    SteadinessShares count{};   // people at each step
    SteadinessShares squares{}; // their squared differences over the prior's variance
};

Sums expect(const SidePrior& prior, std::span<const Part> parts)
{
    const Grown grown(prior);
    Sums sums;
    for (const Part& part : parts) {
        const Components components = componentsOf(part, prior, grown);
        for (std::size_t i = 0; i < components.count; ++i) {
            const Component& c = components.list[i];
            const double size = c.share * (square(c.mean) + c.variance);
            (c.isWide ? sums.wide : sums.narrow) += size / grown.growth[c.step];
            (c.isWide ? sums.wideCount : sums.narrowCount) += c.share;
            sums.count[c.step] += c.share;
            sums.squares[c.step] += size / square(c.isWide ? prior.wide : prior.narrow);
        }
    }
    return sums;
}

// A Newton step for the exponent: maximises the sum over steps of
// -(count x e + squares x exp(-x e)) / 2, with x the step's logarithm.
double improvedExponent(double exponent, const Sums& sums)
{
    double slope = -exponent / square(kWithNoiseSpread);
    double bend = 1.0 / square(kWithNoiseSpread);
    for (std::size_t step = 0; step < kSteadinessSteps; ++step) {
        const double x = std::log(relativeVariance(step));
        const double squares = sums.squares[step] * std::exp(-x * exponent);
        slope += 0.5 * x * (squares - sums.count[step]);
        bend += 0.5 * x * x * squares;
    }
    return std::clamp(exponent + slope / bend, 0.0, 1.0);
}

SidePrior improved(const SidePrior& prior, std::span<const Part> parts)
{
    const Sums sums = expect(prior, parts);
    // Near its end a stretch below 2 converges wherever the plain steps do, in half the rounds
    // (Salakhutdinov and Roweis 2003, ICML 20:664-671).
    constexpr double kStretch = 1.8;
    const auto stretched = [](double from, double to) { return from + kStretch * (to - from); };
    const double narrow = std::sqrt(sums.narrow / sums.narrowCount);
    const double wide = std::sqrt(sums.wide / sums.wideCount);
    const double share = sums.wideCount / (sums.wideCount + sums.narrowCount);
    SidePrior next = prior;
    next.narrow = std::max(1.0, stretched(prior.narrow, narrow));
    next.wide = std::max(2.0 * next.narrow, stretched(prior.wide, wide));
    next.wideShare = std::clamp(stretched(prior.wideShare, share), 0.005, 0.3);
    next.withNoise = improvedExponent(prior.withNoise, sums);
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

double centreFor(const SidePrior& prior, std::optional<Side> dominant)
{
    return dominant == Side::Right ? prior.centre : 0.0;
}

SidePrior learnPrior(std::span<const SideSeries> all,
                     Day day,
                     const SideNoise& noise,
                     const SideSettings& settings,
                     const SidePrior& start)
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
    SidePrior prior = start;
    prior.centre = weighted / weights;
    std::vector<Part> parts;
    parts.reserve(looks.size());
    for (const auto& [look, isRight] : looks) {
        parts.push_back(
            {look.mean - (isRight ? prior.centre : 0.0), look.variance, look.steadiness});
    }
    constexpr int kMostRounds = 100;
    for (int round = 0; round < kMostRounds; ++round) {
        const SidePrior next = improved(prior, parts);
        const double change = std::abs(next.narrow - prior.narrow) +
                              std::abs(next.wide - prior.wide) +
                              10.0 * std::abs(next.wideShare - prior.wideShare) +
                              10.0 * std::abs(next.withNoise - prior.withNoise);
        prior = next;
        if (change < 5e-4) {
            break;
        }
    }
    return prior;
}

SidePosterior posteriorOf(const SideLook& look, const SidePrior& prior, double centre)
{
    const Components components =
        componentsOf({look.mean - centre, look.variance, look.steadiness}, prior, Grown(prior));
    SidePosterior posterior;
    for (std::size_t i = 0; i < components.count; ++i) {
        const Component& c = components.list[i];
        posterior.add({centre + c.mean,
                       std::sqrt(c.variance),
                       c.share,
                       look.dayVariance * relativeVariance(c.step)});
    }
    return posterior;
}

void SidePosterior::add(const Part& part)
{
    m_parts.at(m_count++) = part;
}

std::span<const SidePosterior::Part> SidePosterior::parts() const
{
    return {m_parts.data(), m_count};
}

double SidePosterior::mean() const
{
    double sum = 0.0;
    for (const Part& part : parts()) {
        sum += part.share * part.mean;
    }
    return sum;
}

double SidePosterior::below(double logPercent) const
{
    double sum = 0.0;
    for (const Part& part : parts()) {
        sum += part.share * normalBelow((logPercent - part.mean) / part.spread);
    }
    return sum;
}

double SidePosterior::density(double logPercent) const
{
    double sum = 0.0;
    for (const Part& part : parts()) {
        sum += part.share * levelbar::density(logPercent - part.mean, square(part.spread));
    }
    return sum;
}

double SidePosterior::quantile(double probability) const
{
    double low = parts().front().mean;
    double high = low;
    for (const Part& part : parts()) {
        low = std::min(low, part.mean - 12.0 * part.spread);
        high = std::max(high, part.mean + 12.0 * part.spread);
    }
    // Newton's steps, by halves where they leave the bracket.
    double at = mean();
    for (int step = 0; step < 100 && high - low > 1e-9; ++step) {
        const double off = below(at) - probability;
        (off < 0.0 ? low : high) = at;
        const double next = at - off / density(at);
        if (std::abs(next - at) < 1e-10) {
            break;
        }
        at = next > low && next < high ? next : 0.5 * (low + high);
    }
    return at;
}

SidePosterior SidePosterior::nextDay() const
{
    SidePosterior next;
    for (Part part : parts()) {
        part.spread = std::sqrt(square(part.spread) + part.dayVariance);
        next.add(part);
    }
    return next;
}

} // namespace levelbar
