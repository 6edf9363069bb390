// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "storage/logbook.h"

#include <filesystem>
#include <iosfwd>

namespace levelbar::storage {

// Writes members.csv, sets.csv and tests.csv into the folder (made when missing) in the format
// that importCsv takes back unchanged. Files appear whole or not at all. ReadOnly, Full.
void exportCsv(const Logbook& logbook, const std::filesystem::path& folder);

void writeMembers(const Logbook& logbook, std::ostream& out);
void writeSets(const Logbook& logbook, std::ostream& out);
void writeTrials(const Logbook& logbook, std::ostream& out);

} // namespace levelbar::storage
