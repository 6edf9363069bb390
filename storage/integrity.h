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

// SQLite's integrity check, foreign keys, application id and schema version.
[[nodiscard]] IntegrityReport checkIntegrity(const Logbook& logbook);

} // namespace levelbar::storage
