// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/gym/rack_groups.h"

namespace levelbar {

// What each lifter is worth when racks are chosen among listed groups: the linear relaxation of
// covering everyone, solved by the simplex method, gives the prices; the bound that follows from
// them is then reckoned in whole numbers, so that it holds whatever the rounding did. Costs of
// groups that mattered are exact afterwards.
struct GroupPrices {
    static constexpr std::int64_t kScale = 4096; // of prices and surpluses to a move

    std::vector<std::int64_t> kinds;     // price of one lifter of the kind
    std::vector<std::int64_t> surpluses; // of each group over the cheapest of its size, at least
    std::int64_t bound = 0;              // every sharing costs this and the surpluses of its groups
};

[[nodiscard]] GroupPrices
priceGroups(RackGroups& groups, const TurnCosts& costs, std::size_t racks);

} // namespace levelbar
