// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/gym/kit.h"
#include "core/gym/rack_sharing.h"

#include <cstddef>
#include <utility>
#include <vector>

namespace levelbar {

// What a sharing must keep to beside few moves. Lifters are places in RackSharingTask::lifters.
struct RackRules {
    std::vector<std::pair<std::size_t, std::size_t>> apart; // never at one rack
    std::vector<std::size_t> spotters; // somebody of them at every rack; empty: nobody is asked
    std::vector<PlateKind> stock;      // plates owned; empty: as many as needed
};

// How far a sharing is from keeping to the rules.
struct BrokenRules {
    int together = 0;         // pairs at one rack that must not be
    int racksWithoutSpot = 0; // racks of two and more, beyond what the number of spotters forces
    // Single plates short when every rack has its heaviest use of every kind at once: the worst
    // moment, whatever the turns' pace.
    int platesShort = 0;

    friend bool operator==(const BrokenRules&, const BrokenRules&) = default;

    [[nodiscard]] bool none() const { return *this == BrokenRules{}; }
};

struct RuledSharing {
    RackSharing sharing; // its bound is that of a sharing without rules, which no rule can beat
    BrokenRules broken;
};

// shareRacks(), then, where its answer breaks rules, the best of exchanges and moves of lifters
// between racks: first fewer broken rules (people apart before spotters before plates), then fewer
// moves. Racks' sizes still differ by one at most, so that some rules cannot be kept: see
// `broken`. The same seed gives the same answer. Faults: those of shareRacks(), and OutOfRange for
// a lifter that is not there.
[[nodiscard]] Result<RuledSharing> shareRacks(const RackSharingTask& task, const RackRules& rules);

} // namespace levelbar
