// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/plan/class_plan.h"

#include <SQLiteCpp/SQLiteCpp.h>

namespace levelbar::storage {

// The columns of planned_set, in one order for reading and writing.
inline constexpr const char* kPlannedSetColumns =
    "id, meeting, member, exercise, side, number, load, load_unit, amount, reserve_tenths, is_new, "
    "predicted_reps, predicted_low, predicted_high, model_version, given_at, experience";
inline constexpr int kPlannedSetColumnCount = 17;

inline constexpr const char* kInsertPlannedSet =
    "INSERT INTO planned_set (uid, meeting, member, exercise, side, number, load, load_unit, "
    "amount, reserve_tenths, is_new, predicted_reps, predicted_low, predicted_high, "
    "model_version, given_at, experience) "
    "VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)";

[[nodiscard]] PlannedSet readPlannedSet(SQLite::Statement& row);

// Binds a statement of kInsertPlannedSet, with a new uid.
void bindPlannedSet(SQLite::Statement& insert, const PlannedSet& planned);

} // namespace levelbar::storage
