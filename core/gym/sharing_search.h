// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/gym/turn_costs.h"

#include <cstdint>
#include <vector>

namespace levelbar {

// The orders of all racks, as lifters of TurnCosts.
using RackOrders = std::vector<std::vector<std::size_t>>;

[[nodiscard]] int roundsOf(const TurnCosts& costs, const RackOrders& racks);

// A good sharing, not proved: lifters next to each other in the order of `costs` start together,
// then simulated annealing (Kirkpatrick, Gelatt and Vecchi 1983) over swaps, moves and turned
// stretches, then the exact order of each rack where it is small. The racks' sizes differ by one
// at most. The same seed gives the same sharing. racks: 1 to costs.size().
[[nodiscard]] RackOrders
searchSharing(const TurnCosts& costs, std::size_t racks, std::uint64_t seed);

} // namespace levelbar
