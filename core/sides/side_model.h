// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/side.h"
#include "core/sides/side_noise.h"

#include <array>
#include <optional>
#include <span>

namespace levelbar {

// Left/right differences of one measure over the whole roster. All numbers are in ln-percent,
// 100 ln(right / left).

// What differences this roster has: most people near `centre` (times the dominant side), some in
// a wide tail. Those who are less steady may also differ more: a person's variances grow with the
// relative variance of the days, to the power of `withNoise`.
struct SidePrior {
    double centre = 0.0;    // towards the right for right-handed people
    double narrow = 4.0;    // spread of most
    double wide = 12.0;     // spread of the tail
    double wideShare = 0.1; // how many are in it
    double withNoise = 0.0; // 0 to 1
};

// What is believed of a person after the own pairs: a mixture of normals, narrow and wide for
// each step of steadiness.
class SidePosterior {
public:
    struct Part {
        double mean = 0.0;
        double spread = 1.0;
        double share = 1.0;
        double dayVariance = 0.0; // of one day's difference around the person's own
    };

    void add(const Part& part); // 2 x kSteadinessSteps at most; shares sum to 1

    [[nodiscard]] std::span<const Part> parts() const;
    [[nodiscard]] double mean() const;
    [[nodiscard]] double below(double logPercent) const;     // P(difference <= value)
    [[nodiscard]] double quantile(double probability) const; // 0 < probability < 1
    // Of the difference that one more day would show.
    [[nodiscard]] SidePosterior nextDay() const;

private:
    [[nodiscard]] double density(double logPercent) const;

    std::array<Part, 2 * kSteadinessSteps> m_parts{};
    std::size_t m_count = 0;
};

// By expectation-maximisation from `start`, held near the defaults as if by ten more people.
[[nodiscard]] SidePrior learnPrior(std::span<const SideSeries> all,
                                   Day day,
                                   const SideNoise& noise,
                                   const SideSettings& settings,
                                   const SidePrior& start = {});

// Prior centre of a person: with the dominant side, and none when that is not known.
[[nodiscard]] double centreFor(const SidePrior& prior, std::optional<Side> dominant);

[[nodiscard]] SidePosterior
posteriorOf(const SideLook& look, const SidePrior& prior, double centre);

// The ln-percent at which the weaker side is `percent` weaker: -100 ln(1 - percent / 100).
[[nodiscard]] double logPercentOf(double percent);

// 100 (right - left) / the stronger of the two.
[[nodiscard]] double percentOf(double logPercent);

} // namespace levelbar
