// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/floor/class_floor.h"

#include <optional>
#include <vector>

namespace levelbar {

// What a load takes: the plates of both sides of a bar, a pair of dumbbells or one. Nothing for
// machines and body weight, or a load that does not exist. Bars belong to their racks.
[[nodiscard]] std::vector<Piece> piecesFor(const FloorExercise& exercise, const Mass& load);

// Single pieces owned of the kind; as many as needed while nobody has said what the gym owns.
[[nodiscard]] int owned(const Kit& kit, const Piece& kind);

// Whether the load could be had for the cell's round. People of one station hand pieces on, those
// of different stations use them at once; what is set aside takes nothing.
[[nodiscard]] bool
isFree(const ClassFloor& floor, const FloorBook& book, std::size_t cell, const Mass& load);

// The next load up (1) or down (-1) for the cell that exists and is free.
[[nodiscard]] std::optional<Mass>
nextFreeLoad(const ClassFloor& floor, const FloorBook& book, std::size_t cell, int direction);

} // namespace levelbar
