// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/side.h"
#include "core/sides/side_listing.h"
#include "core/sides/side_pairs.h"
#include "core/sides/side_records.h"

#include <array>
#include <optional>
#include <span>
#include <vector>

namespace levelbar {

// What one day's pair is worth. All numbers are in ln-percent, 100 ln(right / left).

// One person's pairs in a measure, by day, from the first that is known.
struct SideSeries {
    std::vector<SidePair> pairs;
    std::optional<Side> dominant;
    std::vector<PainDay> pains;       // by day; of the measure, and of its area
    std::vector<KnownReason> reasons; // of the measure
    std::optional<Day> trainedSince;  // weaker side first, while that runs
    std::optional<Baseline> baseline; // after surgery; its pairs are those since
};

// How a measure is judged: a tested maximum is steadier than a number of reps.
struct SideSettings {
    bool isTest = true;
    double handedCentre = 0.0; // expected towards the dominant side, for right-handed people
};

// People differ in how steady they are: a person's variance over the roster's mean, in eleven
// steps from 0.08 to 12. Shares over the steps sum to 1.
inline constexpr std::size_t kSteadinessSteps = 11;
using SteadinessShares = std::array<double, kSteadinessSteps>;

[[nodiscard]] double relativeVariance(std::size_t step); // step < kSteadinessSteps

[[nodiscard]] SteadinessShares everyoneAlike();

struct SideNoise {
    double spread = 6.0; // of one day's difference around the person's own; root mean square
    double degreesOfFreedom = 20.0;
    double tail = 200.0; // of people's variances: inverse gamma with half of it as its shape
    SteadinessShares people = everyoneAlike();
};

// What the pairs up to a day say of one person: the weighted mean and its variance if the person
// is as steady as the mean, and how steady the pairs show the person to be.
struct SideLook {
    double mean = 0.0;
    double variance = 0.0;
    int days = 0; // distinct days in the window
    Day last;
    Day first;
    double dayVariance = 0.0; // of one more day, at mean steadiness
    SteadinessShares steadiness = everyoneAlike();
};

// The pairs of the 120 days up to `day`, twelve at most, weighted by 0.5 per 60 days of age.
// The very first pair of a series is taken to be noisier: its variance is 1.6 times that of later
// ones. Published for power tests: 2.4 (the error between the first two trials is 1.3 times that
// of later ones; Hopkins, Schabort and Hawley 2001, Sports Med 31:211-234); open grip data: 1.4.
// Nothing when there is no pair.
[[nodiscard]] std::optional<SideLook>
lookAt(const SideSeries& series, Day day, const SideNoise& noise);

// Within-person spread over all series with two or more days in the window, blended with what is
// usual (6 ln-% for tests, 7 for reps; as if from 20 more degrees of freedom; not under 3), and
// how much people differ in it. Both by maximum likelihood of the persons' sums of squares, which
// follow Fisher's F (Smyth 2004, Stat Appl Genet Mol Biol 3:3); the tail is held near 8.
[[nodiscard]] SideNoise
poolNoise(std::span<const SideSeries> all, Day day, const SideSettings& settings);

} // namespace levelbar
