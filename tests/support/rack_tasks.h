// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/gym/rack_sharing.h"
#include "tests/support/random.h"

#include <string>

namespace levelbar::tests {

// A drawn class: loads from an empty bar of 20 kg to 120 kg in steps of 2.5 kg, hooks in one of
// `holes` holes (0: nobody has one), a tenth of the lifters without.
inline RackSharingTask drawnRackTask(Random& random, int lifters, int racks, int holes)
{
    RackSharingTask task;
    task.racks = racks;
    task.plates = commonPlates();
    for (int i = 0; i < lifters; ++i) {
        RackLifter lifter{
            "M" + std::to_string(i),
            Mass::ofThousandths(20'000 + 2'500 * random.below(41), MassUnit::Kilogram),
            std::nullopt};
        if (holes > 0 && !random.chance(0.1)) {
            lifter.hookHole = 1 + random.below(holes);
        }
        task.lifters.push_back(std::move(lifter));
    }
    return task;
}

} // namespace levelbar::tests
