// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sides/side_noise.h"

#include "core/base/square.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace levelbar {

namespace {

constexpr int kWindowDays = 120;
constexpr std::size_t kMostPairs = 12;
constexpr double kHalfLifeDays = 60.0;
constexpr double kFirstPairVariance = 1.6;

// Prior noise, its weight and its floor. Tests: a 1RM's coefficient of variation of 4.2 % on
// either side (Grgic 2020) makes 5.9; reps: assumed.
constexpr double kTestSpread = 6.0;
constexpr double kRepsSpread = 7.0;
constexpr double kPriorFreedom = 20.0;
constexpr double kLeastSpread = 3.0;

// Steps of the logarithm of the relative variance; the middle one is 0.
constexpr double kLowestStep = -2.5;
constexpr double kStepWidth = 0.5;
constexpr std::size_t kMiddleStep = kSteadinessSteps / 2;

// The tail: its range, and where it is held while the roster is small. Assumed; open grip data
// give 4 to 5.
constexpr double kLeastTail = 3.0; // the mean variance exists above 2
constexpr double kMostTail = 200.0;
constexpr double kUsualTail = 8.0;
constexpr double kTailDoubt = 0.7; // standard deviation of its logarithm

// The pairs that count on a day, and whether the series' first is among them.
struct Window {
    std::span<const SidePair> pairs;
    bool hasFirst = false;

    [[nodiscard]] double precision(std::size_t i) const
    {
        return hasFirst && i == 0 ? 1.0 / kFirstPairVariance : 1.0;
    }
};

Window windowOf(const SideSeries& series, Day day)
{
    const auto& pairs = series.pairs;
    const auto byDay = [](const SidePair& pair, Day d) { return pair.day < d; };
    const auto from = std::lower_bound(pairs.begin(), pairs.end(), day - kWindowDays, byDay);
    const auto to = std::lower_bound(from, pairs.end(), day + 1, byDay);
    const auto count = static_cast<std::size_t>(to - from);
    const std::size_t used = std::min(count, kMostPairs);
    const auto start = to - static_cast<std::ptrdiff_t>(used);
    return {{start, used}, used > 0 && start == pairs.begin()};
}

// A person's sum of squares around the own mean; its degrees of freedom.
struct Residual {
    double squares = 0.0;
    double freedom = 0.0;
};

Residual residualOf(const Window& window)
{
    double weights = 0.0;
    double sum = 0.0;
    for (std::size_t i = 0; i < window.pairs.size(); ++i) {
        weights += window.precision(i);
        sum += window.precision(i) * window.pairs[i].logPercent;
    }
    Residual residual{0.0, static_cast<double>(window.pairs.size()) - 1.0};
    for (std::size_t i = 0; i < window.pairs.size(); ++i) {
        residual.squares +=
            window.precision(i) * square(window.pairs[i].logPercent - sum / weights);
    }
    return residual;
}

// How well a tail explains the residuals, with the scale that suits it best. A person's variance
// is scale * tail / chi-square(tail), so squares / scale are freedom * F(freedom, tail).
class TailFit {
public:
    TailFit(std::span<const Residual> residuals, double usualSpread)
        : m_residuals(residuals)
        , m_usual(square(usualSpread))
        , m_scale(m_usual)
    {
        for (const Residual& residual : residuals) {
            m_freedom += residual.freedom;
            ++m_byFreedom.at(static_cast<std::size_t>(residual.freedom));
        }
    }

    // Log likelihood and prior, up to a constant; keeps the scale as the start of the next call.
    double value(double tail)
    {
        const double priorScale = m_usual * (tail - 2.0) / tail;
        settle(tail, priorScale);
        double sum = 0.5 * kPriorFreedom * (std::log(priorScale / m_scale) - priorScale / m_scale);
        for (const Residual& r : m_residuals) {
            sum -= 0.5 * (tail + r.freedom) * std::log1p(r.squares / (tail * m_scale));
        }
        sum -= 0.5 * m_freedom * std::log(tail * m_scale);
        for (std::size_t d = 1; d < m_byFreedom.size(); ++d) {
            const double half = 0.5 * static_cast<double>(d);
            sum += m_byFreedom.at(d) * (std::lgamma(0.5 * tail + half) - std::lgamma(0.5 * tail));
        }
        return sum - 0.5 * square(std::log(tail / kUsualTail) / kTailDoubt);
    }

    // The mean variance over people.
    [[nodiscard]] double meanVariance(double tail) const { return m_scale * tail / (tail - 2.0); }

    [[nodiscard]] double freedom() const { return m_freedom; }

private:
    // Expectation-maximisation for the scale: those far out weigh less.
    void settle(double tail, double priorScale)
    {
        constexpr int kMostRounds = 100;
        for (int round = 0; round < kMostRounds; ++round) {
            double sum = kPriorFreedom * priorScale;
            for (const Residual& r : m_residuals) {
                sum += r.squares * (tail + r.freedom) / (tail + r.squares / m_scale);
            }
            const double next = sum / (kPriorFreedom + m_freedom);
            const double change = std::abs(next - m_scale);
            m_scale = next;
            if (change < 1e-7 * next) {
                break;
            }
        }
    }

    std::span<const Residual> m_residuals;
    double m_usual;
    double m_scale;
    double m_freedom = 0.0;
    std::array<double, kMostPairs> m_byFreedom{}; // how many residuals have so many
};

// Golden section on the logarithm of the tail.
double bestTail(TailFit& fit)
{
    constexpr double kRatio = 1.0 / std::numbers::phi;
    double low = std::log(kLeastTail);
    double high = std::log(kMostTail);
    double lower = high - kRatio * (high - low);
    double upper = low + kRatio * (high - low);
    double atLower = fit.value(std::exp(lower));
    double atUpper = fit.value(std::exp(upper));
    while (high - low > 1e-3) {
        if (atLower > atUpper) {
            high = upper;
            upper = lower;
            atUpper = atLower;
            lower = high - kRatio * (high - low);
            atLower = fit.value(std::exp(lower));
        } else {
            low = lower;
            lower = upper;
            atLower = atUpper;
            upper = low + kRatio * (high - low);
            atUpper = fit.value(std::exp(upper));
        }
    }
    return std::exp(0.5 * (low + high));
}

// Logarithms of shares in, shares out.
SteadinessShares normalised(SteadinessShares logs)
{
    const double largest = *std::max_element(logs.begin(), logs.end());
    double sum = 0.0;
    for (double& share : logs) {
        share = std::exp(share - largest);
        sum += share;
    }
    for (double& share : logs) {
        share /= sum;
    }
    return logs;
}

// Inverse gamma with mean 1, over the logarithm.
SteadinessShares sharesOfTail(double tail)
{
    SteadinessShares logs{};
    for (std::size_t step = 0; step < kSteadinessSteps; ++step) {
        const double relative = relativeVariance(step);
        logs.at(step) = -0.5 * tail * std::log(relative) - 0.5 * (tail - 2.0) / relative;
    }
    return normalised(logs);
}

// What the person's own residuals make of the roster's shares.
SteadinessShares updated(const SideNoise& noise, const Residual& residual)
{
    SteadinessShares logs{};
    for (std::size_t step = 0; step < kSteadinessSteps; ++step) {
        const double relative = relativeVariance(step);
        logs.at(step) = std::log(noise.people.at(step)) -
                        0.5 * residual.freedom * std::log(relative) -
                        0.5 * residual.squares / (square(noise.spread) * relative);
    }
    return normalised(logs);
}

} // namespace

double relativeVariance(std::size_t step)
{
    static const auto kTable = [] {
        std::array<double, kSteadinessSteps> table{};
        for (std::size_t i = 0; i < table.size(); ++i) {
            table.at(i) = std::exp(kLowestStep + kStepWidth * static_cast<double>(i));
        }
        return table;
    }();
    return kTable.at(step);
}

SteadinessShares everyoneAlike()
{
    SteadinessShares shares{};
    shares.at(kMiddleStep) = 1.0;
    return shares;
}

std::optional<SideLook> lookAt(const SideSeries& series, Day day, const SideNoise& noise)
{
    const Window window = windowOf(series, day);
    if (window.pairs.empty()) {
        return std::nullopt;
    }
    double weights = 0.0;
    double squares = 0.0;
    double sum = 0.0;
    for (std::size_t i = 0; i < window.pairs.size(); ++i) {
        const SidePair& pair = window.pairs[i];
        const double age = std::exp2(-(day - pair.day) / kHalfLifeDays);
        const double weight = age * window.precision(i);
        weights += weight;
        squares += weight * age; // the square of the weight times the pair's variance
        sum += weight * pair.logPercent;
    }
    SideLook look;
    look.mean = sum / weights;
    look.dayVariance = square(noise.spread);
    look.variance = look.dayVariance * squares / square(weights);
    look.days = static_cast<int>(window.pairs.size());
    look.last = window.pairs.back().day;
    look.first = window.pairs.front().day;
    look.steadiness = updated(noise, residualOf(window));
    return look;
}

SideNoise poolNoise(std::span<const SideSeries> all, Day day, const SideSettings& settings)
{
    std::vector<Residual> residuals;
    for (const SideSeries& series : all) {
        const Window window = windowOf(series, day);
        if (window.pairs.size() >= 2) {
            residuals.push_back(residualOf(window));
        }
    }
    TailFit fit(residuals, settings.isTest ? kTestSpread : kRepsSpread);
    SideNoise noise;
    noise.tail = bestTail(fit);
    fit.value(noise.tail);
    noise.spread = std::max(kLeastSpread, std::sqrt(fit.meanVariance(noise.tail)));
    noise.degreesOfFreedom = kPriorFreedom + fit.freedom();
    noise.people = sharesOfTail(noise.tail);
    return noise;
}

} // namespace levelbar
