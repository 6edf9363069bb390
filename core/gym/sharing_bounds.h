// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/gym/turn_costs.h"

namespace levelbar {

// Proved bounds below the cost of every sharing of all lifters among that many racks, whose
// sizes differ by one at most. Multiples of costs.grain(). racks: 1 to costs.size().

// Lifters whose stacks begin alike hang on one branch of the tree of stacks. Where a branch
// cannot fill whole racks, some rack must put its plate on and take it off in every round: four
// moves; and so in every warm-up round. In the same way a hook or safety hole that cannot fill
// whole racks costs two moves and a bench angle one, unless a lifter without takes them in. With
// one rack, no holes, angles and warm-ups this is the exact cost.
[[nodiscard]] int crossingBound(const TurnCosts& costs, std::size_t racks);

// Rounds of three and more lifters are graphs with two changes at each lifter, and without one
// change a rack they are a forest: Held and Karp's 1-tree bound (1970, 1971), with as many trees
// as racks, prices on lifters raised by subgradients in whole numbers. `known`: the cost of a
// sharing that was found. 0 where racks have fewer than three lifters.
[[nodiscard]] int treeBound(const TurnCosts& costs, std::size_t racks, int known);

} // namespace levelbar
