// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/exercise/ladder.h"

namespace SQLite {
class Database;
}

namespace levelbar::storage {

// Puts the ladder in the place of the one with the same key and origin (shipped or the gym's).
// Its exercises must be stored: a key that is not fails as a Constraint. Inside storage only.
void writeLadder(SQLite::Database& database, const Ladder& ladder);

} // namespace levelbar::storage
