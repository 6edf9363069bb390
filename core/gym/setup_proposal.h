// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/estimate.h"
#include "core/gym/rack_holes.h"
#include "core/gym/station_heights.h"

#include <optional>
#include <span>
#include <vector>

namespace levelbar {

// Where another person of this gym has a bar or a safety on the same station: a confirmed card.
struct SetupExample {
    BodySize body;
    Length height; // of the hole
    Length pitch;  // of its rack: how coarsely the height is known
};

// The question: one exercise, one rack, one person.
struct SetupQuestion {
    Exercise exercise;
    std::optional<int> benchAngle; // as it is going to be done
    BodySize body;
    RackHoles rack;
};

struct HoleProposal {
    int hole = 1;
    int lowest = 1; // nine in ten of the right holes lie between
    int highest = 1;
    Estimate height; // mm; count: the examples behind it

    friend bool operator==(const HoleProposal&, const HoleProposal&) = default;
};

enum class SetupPart { Hook, Safety };

// The hole to try first. The published height for this body (stationHeights), corrected by what
// this gym's people confirmed: their differences from their own published heights are a straight
// line on stature, whose level (SD 40 mm: benches, pads and habits differ) and slope (SD 0.10 mm a
// mm) are shrunken towards 0, and a person's own scatter, whose variance is learnt from a start of
// six people's worth at the published spread. A card on a coarse rack counts less. Spreads of the
// starts: assumed. Above a safety's height the proposal never rounds by more than 15 mm: a pin too
// high stops the rep on the chest's way, one too low the bar on the chest.
// Nothing where stationHeights knows nothing, or where the part is not needed.
[[nodiscard]] std::optional<HoleProposal>
proposeHole(const SetupQuestion& question, SetupPart part, std::span<const SetupExample> others);

// The angle to try first, of those that the gym's benches have: what most others use on this
// exercise, against the exercise's own angle counted as three people; a tie goes to the
// exercise's. Then the nearest angle there is; of two as near the flatter. Nothing when the
// exercise has no angle. angles empty: any.
[[nodiscard]] std::optional<int> proposeBenchAngle(std::optional<int> usual,
                                                   std::span<const int> others,
                                                   std::span<const int> angles);

} // namespace levelbar
