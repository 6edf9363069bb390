// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/gym/group_prices.h"

#include <optional>
#include <vector>

namespace levelbar {

// What is known of the cheapest way to fill the racks with listed groups.
struct GroupCover {
    int lowerBound = 0;                             // proved, of every sharing
    std::optional<std::vector<std::size_t>> groups; // a cheapest way, when one was found
};

// Raises the bound of the prices step by step: for each cost that is still possible and below
// `known`, all ways of filling rack after rack whose surpluses leave it within reach. Either one
// is found (then it is the cheapest), or the bound rises; lowerBound == known says that nothing is
// cheaper than what is known. Gives up, with the bound reached, when the ways become too many.
[[nodiscard]] GroupCover cheapestCover(RackGroups& groups,
                                       const GroupPrices& prices,
                                       const TurnCosts& costs,
                                       std::size_t racks,
                                       int known);

} // namespace levelbar
