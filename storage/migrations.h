// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>
#include <span>
#include <string>
#include <vector>

namespace SQLite {
class Database;
}

namespace levelbar::storage {

// One numbered step of the schema. New files run the same steps as old ones: one truth.
struct Migration {
    int number = 0; // the user_version it leaves behind
    std::string why;
    std::vector<const char*> sql; // run in order, in one transaction with user_version
};

[[nodiscard]] std::span<const Migration> migrations();

// The version that this program writes: the last migration's number.
[[nodiscard]] int currentSchemaVersion();

// Brings the database up to the last step. Each step is one transaction; a step that fails
// leaves the version before it. When an existing file (version above 0) has steps to run, a copy
// "NAME.before-vN" is made beside it first; `path` empty: no copy. Throws StoreError.
void migrate(SQLite::Database& database,
             const std::filesystem::path& path,
             std::span<const Migration> steps);

} // namespace levelbar::storage
