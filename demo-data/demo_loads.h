// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace levelbar::demo {

enum class Kind { Barbell, Dumbbell, Stack, PushUp, Seconds, Metres };

// Share of 1RM for reps to the end (Wathen 1994, scaled to one at one rep): not the curve that
// the program assumes.
double shareFor(double reps);

// The inverse, with a person's own factor on the reps beyond the first.
double repsAt(double share, double factor);

// The nearest load that the room has, at least the lightest; in pounds when the person writes so.
double nearest(Kind kind, double kilograms, bool isPounds);

} // namespace levelbar::demo
