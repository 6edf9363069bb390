// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace levelbar {

// The average person's rep curve: which share of 1RM allows how many reps to the end.
// Desgorces, Berthelot, Dietrich, Testa 2010 (J Strength Cond Res 24:394-400), whole sample,
// which agrees with the meta-regression of Nuzzo 2024 (Sports Med 54:303-321) at its bench
// points 80 % -> 8.8 and 70 % -> 14.1 reps; straight between one rep (the maximum) and two.

// Share of 1RM for reps >= 1 to the end; 1 for one rep or fewer. In (0.17, 1].
[[nodiscard]] double repFraction(double reps);

// The inverse. Shares over 1 give fewer than one rep, falling on in a straight line; shares
// under 0.25 (about 72 reps) give as many as 0.25 does.
[[nodiscard]] double repsAtFraction(double fraction);

// How steeply ln(share) falls per rep there, > 0: about 0.024 to 0.028.
[[nodiscard]] double repCurveSteepness(double reps, double fraction);

} // namespace levelbar
