// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/floor/floor_sheet.h"
#include "ui/floor/floor_writer.h"

#include <QString>

// What left and right mean on the class floor, in words.
namespace levelbar::ui {

// Why a set is not asked for; it was not missed.
[[nodiscard]] QString notAskedText(NotAsked reason);

// What is to be done in a cell that is planned: "first: 14 kg × 10", "stop at 9", "to one in
// reserve" (in both cells of an open pair), or just the plan.
[[nodiscard]] QString openCellText(const FloorCell& cell, const Exercise* exercise);

// The same as a sentence for the line below the grid; empty where sides mean nothing.
[[nodiscard]] QString sidesText(const FloorCell& cell, Side side);

// What storing a set says of the other side; empty when nothing.
[[nodiscard]] QString storedSidesText(const FloorCell& cell, const DoneSet& set);

} // namespace levelbar::ui
