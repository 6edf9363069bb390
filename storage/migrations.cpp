// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/migrations.h"

#include "storage/database_copy.h"
#include "storage/schema_v1.h"
#include "storage/schema_v2.h"
#include "storage/schema_v3.h"
#include "storage/schema_v4.h"
#include "storage/schema_v5.h"
#include "storage/schema_v6.h"
#include "storage/schema_v7.h"
#include "storage/schema_v8.h"
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
        return; // an earlier try was cut short; its copy is whole and of the same state
    }
    copyDatabase(database, path, copy);
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
    static const std::array<Migration, 8> kSteps = {{
        {1,
         "Everything the store remembers",
         {kSchemaV1Roster, kSchemaV1Library, kSchemaV1Classes, kSchemaV1Sets}},
        {2, "What the gym owns", {kSchemaV2}},
        {3, "How exercises are taught, and ladders", {kSchemaV3}},
        {4, "What was laid down about left and right", {kSchemaV4}},
        {5, "Lines of the day, follow-ups, and what was expected", {kSchemaV5}},
        {6, "Rooms, racks and benches, what is gone, and readings of a scale", {kSchemaV6}},
        {7,
         "The timetable, weeks of a class, and what is written about an hour",
         {kSchemaV7Timetable, kSchemaV7Plan, kSchemaV7Hour}},
        {8, "Goals, places of the floor, and who must not share a rack", {kSchemaV8}},
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
