// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/fault.h"
#include "core/base/mass.h"

#include <cstdint>
#include <vector>

namespace levelbar {

// The plates of one side of a bar, from the inside out: heaviest first.
using PlateStack = std::vector<Mass>;

// How a load is put on a bar when there are plates enough of every kind. Each side takes the
// fewest plates that give the load; among those the heaviest innermost plate, then the heaviest
// next. Exact: whole thousandths of the bar's unit, no rounding.
class PlateStacks {
public:
    // `plates`: the kinds, in any order. Faults: Empty (no kinds), OtherUnit (a plate in another
    // unit than the bar), OutOfRange (a plate of nothing, a plate or bar above 1000 kg).
    [[nodiscard]] static Result<PlateStacks> make(Mass bar, std::vector<Mass> plates);

    // One side's stack for the load with the bar. Faults: BelowTheBar, LoadNotMade (which names
    // the nearest loads that can be made), OtherUnit, OutOfRange (above 1000 kg).
    [[nodiscard]] Result<PlateStack> stackFor(Mass load) const;

private:
    PlateStacks(Mass bar, std::vector<Mass> plates);

    Mass m_bar;
    std::vector<Mass> m_plates; // heaviest first, each once
    std::int64_t m_step = 1;    // what every side's load is a multiple of, thousandths
    std::vector<int> m_fewest;  // plates for a side of index * m_step; -1: cannot be made
};

} // namespace levelbar
