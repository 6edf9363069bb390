// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/floor/class_floor.h"

namespace levelbar {

// Puts cells by round, station (as walked past), turn, exercise, number and side; the cursor stays
// on its cell.
void sortCells(ClassFloor& floor);

// A person's, a station's or any open cell: of the round in which the keys are, else of the next
// rounds, else of an earlier one. Nothing only when there is none. Of the round itself: the rest
// of the cursor's station first, then on past the stations and round to the first. Sets that
// wait for a choice come after all others.
[[nodiscard]] std::optional<std::size_t> openCell(const ClassFloor& floor);
[[nodiscard]] std::optional<std::size_t> openCellOf(const ClassFloor& floor, MemberId member);
[[nodiscard]] std::optional<std::size_t> openCellAt(const ClassFloor& floor, int station);

// Moves the cursor, and with it the round of the keys.
void moveCursor(ClassFloor& floor, std::optional<std::size_t> cell);

// On an open cell again, when the one under the cursor is open no more.
void moveOn(ClassFloor& floor);

} // namespace levelbar
