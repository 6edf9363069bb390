// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/day.h"
#include "core/base/estimate.h"
#include "core/floor/class_floor.h"

#include <span>
#include <vector>

namespace levelbar {

// When a turn at a station was written down. place: how many turns of that station lie before it.
struct KeyedTurn {
    int station = 1;
    int place = 0;
    Moment at;
};

// The turns of an hour that were keyed on their own; a whole round at once says nothing of turns.
[[nodiscard]] std::vector<KeyedTurn> keyedTurns(const ClassFloor& floor);

// Seconds of one turn, from when sets were keyed: the median, pulled to a prior (90 s, a factor
// of 1.5 either way; assumed). A gap over several turns counts as that many even ones; under 10 s
// (written down afterwards) or over 10 min a turn (a pause) none. count: gaps used. The interval
// is the median's, on the scale of ln; its error is 1.2533 s / sqrt(n) with s from the median
// absolute deviation (Rousseeuw and Croux 1993 for both constants).
[[nodiscard]] Estimate secondsOfTurn(std::span<const KeyedTurn> turns);

inline constexpr double kPriorTurnSeconds = 90.0;

} // namespace levelbar
