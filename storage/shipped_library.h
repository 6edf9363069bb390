// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "storage/logbook.h"

namespace levelbar::storage {

// Version of resources/exercises.csv, ladders.csv and tests.csv: raise it when they change, so that
// opened logbooks take the new rows in.
inline constexpr int kLibraryVersion = 2;

// Adds and refreshes the shipped exercises, ladders and tests; what the gym changed lies in rows of
// its own and is not touched, nor are its own exercises and ladders. Does nothing when the version
// is known.
void refreshShippedLibrary(Logbook& logbook, Moment now);

} // namespace levelbar::storage
