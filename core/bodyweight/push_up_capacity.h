// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/estimate.h"
#include "core/bodyweight/push_up_load.h"
#include "core/exercise/done_set.h"
#include "core/strength/strength_parameters.h"

namespace levelbar {

// What is known of how much a person can press off the floor or a bar: so many reps to the end at
// so much load. Keeps where the load came from, so that doubts shared by two rungs cancel.
struct PushUpCapacity {
    double logLoad = 0.0; // ln kg by the formula, without the person's lever
    bool isPushUp = true; // else logLoad is of a bar, without a doubt of lever or kind
    double rise = 0.0;    // of the push-up
    double kindSpread = 0.0;
    PushUpKind kind = PushUpKind::Floor;
    double reps = 1.0;       // to the end, >= 1
    double repsSpread = 0.0; // of those reps
    double logSpread = 0.0;  // of the load: day's effect, error of the bar's maximum
    // The person's rep curve: ln of reps beyond the first over the average person's. From
    // StrengthEstimate::repCurveFactor where sets told it.
    double logCurve = 0.0;
    double logCurveSpread = StrengthParameters().factorSpread;
};

// A set of push-ups that was counted, its reserve known.
struct PushUpsDone {
    PushUp pushUp;
    int reps = 0;    // 1 to 60
    Reserve reserve; // 0: to the end
};

// From push-ups done. presser: on that day. Reps and reserve err as in the strength model
// (set_reading.h), the day by its spread. Faults: as formulaLoad; OutOfRange outside 1 to 60 reps
// with the reserve; NotInDomain for hand-release push-ups, whose reps are another scale.
[[nodiscard]] Result<PushUpCapacity> capacityFromPushUps(const Presser& presser,
                                                         const PushUpsDone& done);

// From the one-rep maximum of the bench press, in kg. People press more in a push-up than on the
// bench at one load: published 1.32 and 1.36 (Alizadeh 2020, men and women), 1.14 and 1.66 (Amasay
// 2016, women on the knees), 1.06 (van den Tillaar 2025, men); their ln has a spread of 0.17, taken
// as the doubt. The factors used, 1.25 (men) and 1.4 (women), were CHOSEN between them. A first
// guess for people who were never seen at a rung. OutOfRange unless 0 < low <= value <=
// high, at most 1000.
[[nodiscard]] Result<PushUpCapacity> capacityFromBench(std::optional<Sex> sex,
                                                       const Estimate& oneRepMax);

// Reps to the end of a fresh set on another day at a rung, 0 and up: about what to expect, and
// nine times in ten between low and high. Under one: not a single rep. presser: on the day of the
// set. Each doubt (lever, kind, rep curve, evidence, day, the set itself) is moved to its own 5
// and 95 % points and the changes added in squares. Count: 1, plus the lever's readings.
// Faults: as formulaLoad.
[[nodiscard]] Result<Estimate> expectedPushUps(const Presser& presser,
                                               const PersonalLever& lever,
                                               const PushUpCapacity& capacity,
                                               const PushUp& pushUp);

} // namespace levelbar
