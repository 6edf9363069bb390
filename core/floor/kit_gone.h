// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/floor/substitutes.h"

namespace levelbar {

// What is not there any more, whom it hits, and what can be done. Nothing changes before one of
// the choices is picked; whoever is not hit stays where they are.
struct KitGone {
    std::vector<MemberId> hit; // by round and turn
    int sets = 0;
    Phrase said;
    std::vector<FloorChoice> choices; // two or three where sets are open
};

// A rack or bench. Choices: share the others of its kind, whose rounds get longer; exercises that
// need no such station, at the same place; leave the sets out. NoStation.
[[nodiscard]] Result<KitGone>
stationGone(const ClassFloor& floor, const FloorBook& book, int number);

// The pieces under the cursor: dumbbells, or plates. Choices: the next lighter load that is
// free, another exercise, leave the sets out. NoOpenSet, NoFreeLoad (nothing lies there).
[[nodiscard]] Result<KitGone> loadGone(const ClassFloor& floor, const FloorBook& book);

// Seconds that the rounds still open take: in each round the station with most turns.
[[nodiscard]] int secondsLeft(const ClassFloor& floor, int turnSeconds);

} // namespace levelbar
