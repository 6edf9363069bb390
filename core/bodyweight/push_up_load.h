// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/estimate.h"
#include "core/bodyweight/personal_lever.h"
#include "core/bodyweight/push_up_formula.h"

namespace levelbar {

// A push-up as a load, for comparing rungs and following one person. Not a bench-press maximum:
// see push_up_capacity.h.
struct PushUpLoad {
    Estimate load;          // kg, of the rep, both hands; count = readings of the person's scale
    double lockedOut = 0.0; // kg, where the rep is lightest and heaviest: within the estimate's
    double atChest = 0.0;   // doubt as the load is
};

// The load of a push-up for this person on this day. lever: PersonalLever() when no scale was
// read. Faults as formulaLoad.
[[nodiscard]] Result<PushUpLoad>
pushUpLoad(const Presser& presser, const PersonalLever& lever, const PushUp& pushUp);

// The inverse: the greatest hand height at which the load is still this much (to a tenth of a
// millimetre). OutOfRange when the load lies outside what the floor and the greatest height give.
[[nodiscard]] Result<Length> handHeightFor(const Presser& presser,
                                           const PersonalLever& lever,
                                           double kilograms,
                                           const Mass& added = {});

// Two readings in kg of a bathroom scale under both hands: arms straight, and held with the chest
// a fist over the scale.
struct ScaleReading {
    PushUp pushUp; // with its height the hands lie on the scale
    Mass lockedOut;
    Mass atChest;
};

// The person's lever after a reading; presser: with the body mass of that day.
// A reading tells the floor's level well and the slope less: see PersonalLever.
// Noise of the two readings' mean: 3 %, assumed (half a kilogram on 50, and sway).
// Faults: as formulaLoad; NotInDomain for wall, knees and feet raised; OutOfRange for a reading
// that not one in a thousand would give: a typing error, or the wrong unit.
[[nodiscard]] Result<PersonalLever>
calibrated(const PersonalLever& lever, const Presser& presser, const ScaleReading& reading);

} // namespace levelbar
