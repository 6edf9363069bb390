// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/gym/rack_sharing.h"

#include <vector>

namespace levelbar {

// Seconds that things take. Common practice, no source: a change of holes takes two people 30 to
// 45 s, which is two hook moves here; the rest is what a watch in a class shows.
struct RoundPace {
    double work = 35.0;     // one person's set
    double handOver = 15.0; // from one lifter to the next, nothing changed
    double plateMove = 4.0;
    double hookMove = 18.0;
    double rest = 60.0; // at least, between two sets of one person
    double swap = 90.0; // when the halves of a class change places
};

// One full round of a rack: everyone's set, hand-overs and changes, and never less than one
// person's set and rest. No turns: 0.
[[nodiscard]] double roundSeconds(const SharedRack& rack, const RoundPace& pace);

// Racks that work side by side for some rounds. With two halves the second is at the racks when
// the first is done, and so on.
struct BlockTask {
    std::vector<std::vector<SharedRack>> halves; // one: the whole class at once
    int rounds = 3;                              // of each half, 1 or more
    double minutes = 20.0;                       // there are
    RoundPace pace;
};

enum class BlockCut {
    ShorterRest, // `value`: seconds of rest, not under 60
    SameHooks,   // everybody of a rack at one hole; nothing in `value`
    FewerRounds, // `value`: rounds
    FewerPeople, // one lifter fewer at the rack that takes longest; `value`: lifters left there
};

struct BlockSaving {
    BlockCut cut = BlockCut::FewerRounds;
    int value = 0;
    double minutes = 0.0; // the block then takes
};

struct BlockMinutes {
    std::vector<double> roundSeconds; // of each half: of its rack that takes longest
    double minutes = 0.0;
    bool fits = true;
    // What makes it fit, what hurts least first; when nothing does alone, what saves most.
    std::vector<BlockSaving> savings;
};

inline constexpr double kLeastRest = 60.0; // seconds

[[nodiscard]] BlockMinutes minutesOf(const BlockTask& task);

} // namespace levelbar
