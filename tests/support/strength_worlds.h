// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/exercise/done_set.h"
#include "core/member/member.h"

#include <array>
#include <cstdint>
#include <string_view>
#include <vector>

namespace levelbar::tests {

// Simulated people whose true strength is known. None of the worlds is the model's own: rep
// curves, gains, day effects and the way the reserve is named all differ from what it assumes.
enum class World {
    Gym,     // heavy-tailed days of 2-4 %, reserve named 0.6 too low, two sessions of three sets
    Linear,  // straight gains, three sessions a week
    Plateau, // saturating gains, double progression 8-12 reps
    Layoff,  // three to eight weeks off, loss and regain
    Biased,  // each person names the reserve in an own, wrong way; a quarter missing
    Easy,    // always four to eight in reserve, half missing
    Heavy,   // heavy-tailed days, bad days, slips of the pen, changes of slope
    Sparse,  // one top set every three to four weeks
    Few,     // three to six sessions in all
};

inline constexpr std::array kWorlds = {World::Gym,
                                       World::Linear,
                                       World::Plateau,
                                       World::Layoff,
                                       World::Biased,
                                       World::Easy,
                                       World::Heavy,
                                       World::Sparse,
                                       World::Few};

[[nodiscard]] std::string_view worldName(World world);

struct SimulatedMember {
    Experience experience = Experience::Intermediate;
    Day today;
    double lookBackWeeks = 1.0;        // of `slope`
    std::vector<PerformedSet> barbell; // both sides at once
    std::vector<PerformedSet> left;    // single-arm
    std::vector<PerformedSet> right;
    // The truth today, without the day's effect: ln kg, ln per week.
    double barbellLevel = 0.0;
    double leftLevel = 0.0;
    double rightLevel = 0.0;
    double slope = 0.0;
    double logLoadForTen = 0.0; // barbell, to the end
    double logLoadForSeven = 0.0;
};

// The same people for the same seed, on every machine.
[[nodiscard]] std::vector<SimulatedMember>
simulate(World world, int weeks, int members, std::uint64_t seed);

} // namespace levelbar::tests
