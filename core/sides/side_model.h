// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/estimate.h"
#include "core/base/side.h"
#include "core/sides/side_pairs.h"

#include <optional>
#include <span>
#include <vector>

namespace levelbar {

// Left/right differences of one measure over the whole roster. All numbers are in ln-percent,
// 100 ln(right / left).

// One person's pairs in a measure, by day.
struct SideSeries {
    std::vector<SidePair> pairs;
    std::optional<Side> dominant;
    std::optional<Day> lastPain; // last set of the measure with a pain that matters
};

struct SideNoise {
    double spread = 6.0; // of one day's difference around the person's own
    double degreesOfFreedom = 20.0;
};

// What differences this roster has: most people near `centre` (times the dominant side), some in
// a wide tail.
struct SidePrior {
    double centre = 0.0;    // towards the right for right-handed people
    double narrow = 4.0;    // spread of most
    double wide = 12.0;     // spread of the tail
    double wideShare = 0.1; // how many are in it
};

// What the pairs up to a day say of one person: the weighted mean and its variance.
struct SideLook {
    double mean = 0.0;
    double variance = 0.0;
    int days = 0; // distinct days in the window
    Day last;
    Day first;
};

// A mixture of the narrow and the wide normal, after the person's own pairs.
struct SidePosterior {
    double narrowMean = 0.0;
    double narrowSpread = 1.0;
    double wideMean = 0.0;
    double wideSpread = 1.0;
    double wideShare = 0.0;

    [[nodiscard]] double mean() const;
    [[nodiscard]] double below(double logPercent) const; // P(difference <= value)
    [[nodiscard]] double quantile(double probability) const;
};

// How a measure is judged: a tested maximum is steadier than a number of reps.
struct SideSettings {
    bool isTest = true;
    double handedCentre = 0.0; // expected towards the dominant side, for right-handed people
};

// The pairs of the 120 days up to `day`, twelve at most, weighted by 0.5 per 60 days of age.
// Nothing when there is none.
[[nodiscard]] std::optional<SideLook>
lookAt(const SideSeries& series, Day day, const SideNoise& noise);

// Within-person spread over all series with two or more days in the window, blended with what is
// usual (6 ln-% for tests, 7 for reps; as if from 20 more degrees of freedom; not under 3).
[[nodiscard]] SideNoise
poolNoise(std::span<const SideSeries> all, Day day, const SideSettings& settings);

// By expectation-maximisation, held near the defaults as if by ten more people.
[[nodiscard]] SidePrior learnPrior(std::span<const SideSeries> all,
                                   Day day,
                                   const SideNoise& noise,
                                   const SideSettings& settings);

// Prior centre of a person: with the dominant side, and none when that is not known.
[[nodiscard]] double centreFor(const SidePrior& prior, std::optional<Side> dominant);

[[nodiscard]] SidePosterior
posteriorOf(const SideLook& look, const SidePrior& prior, double centre);

// The ln-percent at which the weaker side is `percent` weaker: -100 ln(1 - percent / 100).
[[nodiscard]] double logPercentOf(double percent);

// 100 (right - left) / the stronger of the two.
[[nodiscard]] double percentOf(double logPercent);

} // namespace levelbar
