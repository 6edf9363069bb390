// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/fault.h"
#include "core/bodyweight/push_up.h"

namespace levelbar {

// What the average person of this sex, stature and mass has on the hands in a push-up, in kg: the
// weight that a bar would need for the same work in the press, both hands together.
//
// Floor and raised hands: statics of a stiff body turning about the balls of the feet, force
// square to the body. By virtual work that force is the resistance of the press, whatever the
// friction at feet and hands. Segment masses: de Leva 1996 (J Biomech 29:1223-1230); lengths:
// means of ANSUR II (US Army 2012). No number was fitted to measured push-ups; two choices were
// made knowing them: this force among five ways to close the statics, and the hands level with
// the armpit, not the nipple, at the bottom. A static hold or a slow rep: peaks of brisk reps
// reach 80 to 98 % of body weight (Mier 2014).
// Knees: means of Suprak 2011 and Mier 2014. Feet raised: the floor's load times the ratio of
// Ebben 2011. Wall: 5 to 20 % of body weight, assumed.
struct FormulaLoad {
    double lockedOut = 0.0;  // kg, arms straight; > 0
    double atChest = 0.0;    // kg, chest at the hands; > 0. Wall: the same, nothing is known apart
    double rise = 0.0;       // height of the raised hands over stature, 0 to 0.68; else 0
    double kindSpread = 0.0; // ln, of the kind beside a push-up from the toes; 0 for those

    // The load of a rep: halfway.
    [[nodiscard]] double repLoad() const { return (lockedOut + atChest) / 2.0; }
};

// Where the formula holds: from these lengths on, both ends included.
inline constexpr Length kLeastStature{12000}; // adults; the ratios are not a child's
inline constexpr Length kMostStature{23000};
inline constexpr Length kMostFeetHeight{6100}; // Ebben's higher box was 60.96 cm
inline constexpr double kMostRise = 0.68;      // the body at 72 degrees; above it is a wall
inline constexpr double kLeastBodyMass = 20.0; // kg, as the test "Body mass" takes it
inline constexpr double kMostBodyMass = 400.0;
inline constexpr double kMostAddedMass = 100.0; // kg

// The greatest height for the hands that the formula reaches.
[[nodiscard]] Length highestHands(Length stature);

// OutOfRange when stature, a mass or the height lies outside; also a height with a kind that has
// none.
[[nodiscard]] Result<FormulaLoad> formulaLoad(const Presser& presser, const PushUp& pushUp);

} // namespace levelbar
