// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/gym/plate_stack.h"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace levelbar {

// Someone who lifts at a rack with others.
struct RackLifter {
    std::string id;
    Mass load;                                    // with the bar
    std::optional<int> hookHole;                  // of the hooks; nothing: any hole will do
    std::optional<int> safetyHole = std::nullopt; // as the hooks
    std::optional<int> benchAngle = std::nullopt; // degrees; nothing: any will do
    std::vector<Mass> ramp = {};                  // warm-up loads with the bar, lightest first
};

inline constexpr std::size_t kMostRackLifters = 1000;

struct RackSharingTask {
    std::vector<RackLifter> lifters;
    int racks = 1;
    Mass bar = Mass::ofThousandths(20'000, MassUnit::Kilogram);
    std::vector<Mass> plates;  // kinds, as many of each as needed
    std::uint64_t seed = 1;    // of the search; the same seed gives the same answer
    bool isProofWanted = true; // else the best of the search, with a bound that proves little
};

// 25, 20, 15, 10, 5, 2.5 and 1.25 kg.
[[nodiscard]] std::vector<Mass> commonPlates();

// One lifter's turn at a rack and what must change before it, after the one before (before the
// first: after the last). plateMoves: every plate off or on, both sides. hookMoves: two when both
// have a hole and they differ, and the same for the safeties. benchMoves: one for another angle.
// rampMoves: the plate moves of all warm-up rounds, in the same order; whoever has fewer warm-up
// sets than others repeats the lightest.
struct RackTurn {
    std::size_t lifter = 0; // index into the lifters
    PlateStack stack;       // of each side
    int plateMoves = 0;
    int hookMoves = 0;
    int benchMoves = 0;
    int rampMoves = 0;
};

// Who takes turns at one rack, round after round, beginning with the lightest, and the moves of
// one full round.
struct SharedRack {
    std::vector<RackTurn> turns;
    int plateMoves = 0;
    int hookMoves = 0;
    int benchMoves = 0;
    int rampMoves = 0;
};

struct RackSharing {
    std::vector<SharedRack> racks; // the one with the lightest lifter first
    int plateMoves = 0;
    int hookMoves = 0;
    int benchMoves = 0;
    int rampMoves = 0;
    int lowerBound = 0;        // proved: no sharing has fewer moves than this
    bool isProvedBest = false; // moves() equals lowerBound

    [[nodiscard]] int moves() const { return plateMoves + hookMoves + benchMoves + rampMoves; }
};

// Shares the lifters among the racks, sizes differing by one at most, so that all moves together
// become few. Proved best up to 12 lifters; with more, whenever the bound
// meets what was found, which is most often so with few lifters a rack: up to some 24 lifters on
// 6 racks, or some 20 different ones on one rack.
//
// Faults: TooFewLifters (for the racks; also when there are none), TooManyLifters, OutOfRange
// (fewer racks than one), RepeatedLifter, and those of PlateStacks.
[[nodiscard]] Result<RackSharing> shareRacks(const RackSharingTask& task);

} // namespace levelbar
