// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/exercise/done_set.h"

#include <SQLiteCpp/SQLiteCpp.h>

namespace levelbar::storage {

// The columns of done_set, in one order for reading and writing.
inline constexpr const char* kDoneSetColumns =
    "member, exercise, side, day, number, day_order, reps, seconds_tenths, metres_tenths, load, "
    "load_unit, reserve_tenths, known, kind, stopped, is_clean, pain, pain_area, pain_side, "
    "hook_hole, bench_angle, meeting, planned, keyed_at, keyed_by, note, "
    "is_at_least";

inline constexpr const char* kInsertDoneSet =
    "INSERT INTO done_set (member, exercise, side, day, number, day_order, reps, seconds_tenths, "
    "metres_tenths, load, load_unit, reserve_tenths, known, kind, stopped, is_clean, pain, "
    "pain_area, pain_side, hook_hole, bench_angle, meeting, planned, keyed_at, keyed_by, note, "
    "is_at_least, import) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, "
    "?, ?, ?, ?, ?, "
    "?, ?)";

// The columns begin at `first`.
[[nodiscard]] DoneSet readDoneSet(SQLite::Statement& row, int first = 0);

// Binds a statement of kInsertDoneSet, which must be run while `set` is there.
void bindDoneSet(SQLite::Statement& insert, const DoneSet& set, std::optional<ImportId> import);

} // namespace levelbar::storage
