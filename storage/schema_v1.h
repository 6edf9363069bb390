// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace levelbar::storage {

// Schema version 1. A released step is never edited: what changes comes as a later step.
// Rules: STRICT; every recorded table has a PRIMARY KEY of NOT NULL columns, AUTOINCREMENT where
// the key is a rowid; no triggers, no generated columns, no ON DELETE CASCADE (taking an action
// back relies on all of this). Days are days since 1970-01-01, moments UTC milliseconds, words
// are the numbers of core's enumerations.
extern const char* const kSchemaV1Roster;
extern const char* const kSchemaV1Library;
extern const char* const kSchemaV1Classes;
extern const char* const kSchemaV1Sets;

} // namespace levelbar::storage
