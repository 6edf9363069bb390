// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "storage/logbook.h"

#include <string>
#include <vector>

namespace levelbar::storage {

struct IntegrityReport {
    int schemaVersion = 0;
    std::int64_t members = 0;
    std::int64_t sets = 0;
    std::int64_t trials = 0;
    std::vector<std::string> faults; // empty: sound

    [[nodiscard]] bool isSound() const { return faults.empty(); }
};

// SQLite's integrity check, foreign keys, schema version, and that every table, column and index of
// the schema is there.
[[nodiscard]] IntegrityReport checkIntegrity(const Logbook& logbook);

// How closely requireSound looks. Quick reads every page once and finds
// torn pages and values that their columns do not allow; Full also compares indexes with their
// tables and follows every reference.
enum class Thoroughness { Quick, Full };

// StoreError Corrupt when the file is damaged; the sentence names the first fault and ends with
// `remedy`. An older schema is no damage.
void requireSound(const Logbook& logbook, Thoroughness thoroughness, const std::string& remedy);

} // namespace levelbar::storage
