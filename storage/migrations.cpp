// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/migrations.h"

#include "storage/schema_v1.h"
#include "storage/sqlite_errors.h"
#include "storage/store_error.h"

#include <SQLiteCpp/SQLiteCpp.h>
#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace levelbar::storage {

namespace {

int versionOf(SQLite::Database& database)
{
    return database.execAndGet("PRAGMA user_version").getInt();
}

void copyBeside(SQLite::Database& database, const std::filesystem::path& path, int version)
{
    std::filesystem::path copy = path;
    copy += fmt::format(".before-v{}", version);
    if (std::filesystem::exists(copy)) {
        return; // an earlier try was cut short; its copy is of the same state
    }
    SQLite::Statement vacuum(database, "VACUUM INTO ?");
    vacuum.bind(1, copy.string());
    vacuum.exec();
    std::error_code ignored;
    std::filesystem::permissions(
        copy, std::filesystem::perms::owner_read | std::filesystem::perms::owner_write, ignored);
}

void checkSound(SQLite::Database& database)
{
    SQLite::Statement orphans(database, "PRAGMA foreign_key_check");
    if (orphans.executeStep()) {
        throw StoreError(StoreErrorKind::Corrupt,
                         "Bringing the logbook up to date left rows without their parents; nothing "
                         "was changed.");
    }
    const std::string verdict = database.execAndGet("PRAGMA quick_check").getString();
    if (verdict != "ok") {
        throw StoreError(StoreErrorKind::Corrupt, "The logbook is damaged: " + verdict + ".");
    }
}

} // namespace

std::span<const Migration> migrations()
{
    static const std::array<Migration, 1> kSteps = {{
        {1,
         "Everything the store remembers",
         {kSchemaV1Roster, kSchemaV1Library, kSchemaV1Classes, kSchemaV1Sets}},
    }};
    return kSteps;
}

int currentSchemaVersion()
{
    return migrations().back().number;
}

void migrate(SQLite::Database& database,
             const std::filesystem::path& path,
             std::span<const Migration> steps)
{
    translateErrors(path, [&] {
        const int from = versionOf(database);
        if (from >= steps.back().number) {
            return;
        }
        if (from > 0 && !path.empty()) {
            copyBeside(database, path, steps.back().number);
        }
        for (const Migration& step : steps) {
            if (step.number <= from) {
                continue;
            }
            SQLite::Transaction transaction(database);
            for (const char* sql : step.sql) {
                database.exec(sql);
            }
            database.exec(fmt::format("PRAGMA user_version = {}", step.number));
            checkSound(database);
            transaction.commit();
        }
    });
}

} // namespace levelbar::storage
