// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/floor/floor_change.h"

namespace levelbar {

// The set under the cursor. As planned: accepted, its reserve not known. Typed: counted. On an
// easy day it says "at least" only. The cursor moves on. Faults: NoOpenSet; SetWaits (for a
// choice); NothingPlanned (as planned, where no reps are planned or a maximum is tried).
[[nodiscard]] Result<FloorChange>
keySet(const ClassFloor& floor, const FloorBook& book, const CellEntry& entry, Moment at);

// Every open set of the cursor's station and round as planned, known for the group only. Those
// that a key cannot accept stay open; NothingPlanned when that is all of them.
[[nodiscard]] Result<FloorChange>
keyRound(const ClassFloor& floor, const FloorBook& book, Moment at);

// The set counted last was not clean; once more, it was. NothingKeyed.
[[nodiscard]] Result<FloorChange> turnClean(const ClassFloor& floor);

} // namespace levelbar
