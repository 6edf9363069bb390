// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/bodyweight/push_up_capacity.h"
#include "core/gym/rack_holes.h"

namespace levelbar {

// Reps to the end, both ends included. When some are to be kept in reserve, add them to both.
struct RepsWanted {
    double fewest = 8.0;
    double most = 12.0;
};

enum class RungFit {
    InRange,
    BetweenHoles, // no hole meets the range: the lowest of those that are too easy
    AllTooEasy,   // the lowest hole: the floor, or more mass, comes next
    AllTooHard,   // the highest hole in reach: knees or the wall come first
};

struct RungChoice {
    int hole = 1;
    Length height; // of the hands
    Estimate load; // kg
    Estimate reps; // to the end: see expectedPushUps
    RungFit fit = RungFit::InRange;
};

// The hole for push-ups on a bar: the lowest whose expected reps reach the middle of the range, so
// that rounding goes to the easier side; the one below when that would pass the range and the one
// below does not miss it. Holes higher than the formula reaches are passed over.
// Faults: as formulaLoad; OutOfRange for a rack that is not 1 to 99 holes 1 to 300 mm apart from
// 0 to 2 m up, for a lowest hole that is out of the person's reach, and unless 1 <= fewest <= most
// <= 60.
[[nodiscard]] Result<RungChoice> chooseHole(const RackHoles& rack,
                                            const Presser& presser,
                                            const PersonalLever& lever,
                                            const PushUpCapacity& capacity,
                                            const RepsWanted& wanted = {});

} // namespace levelbar
