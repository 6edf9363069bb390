// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <SQLiteCpp/SQLiteCpp.h>

#include <filesystem>

namespace levelbar::storage {

// Copies a database, which lies at `source`, into a file that nobody but its owner may read and
// that appears whole or not at all. StoreError Exists when `target` is there, Corrupt when the
// source is damaged, else what the disk says.
void copyDatabase(SQLite::Database& database,
                  const std::filesystem::path& source,
                  const std::filesystem::path& target);

} // namespace levelbar::storage
