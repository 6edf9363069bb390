// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/integrity.h"

#include "storage/migrations.h"
#include "storage/rows.h"
#include "storage/sqlite_errors.h"

#include <fmt/format.h>

namespace levelbar::storage {

IntegrityReport checkIntegrity(const Logbook& logbook)
{
    return translateErrors(logbook.path(), [&] {
        SQLite::Database& database = logbook.database();
        IntegrityReport report;
        report.schemaVersion = database.execAndGet("PRAGMA user_version").getInt();
        SQLite::Statement check(database, "PRAGMA integrity_check");
        while (check.executeStep()) {
            const std::string line = check.getColumn(0).getString();
            if (line != "ok") {
                report.faults.push_back(line);
            }
        }
        SQLite::Statement orphans(database, "PRAGMA foreign_key_check");
        while (orphans.executeStep()) {
            report.faults.push_back(fmt::format("a row of {} names a row of {} that is not there",
                                                orphans.getColumn(0).getString(),
                                                orphans.getColumn(2).getString()));
        }
        if (report.schemaVersion != currentSchemaVersion()) {
            report.faults.push_back(fmt::format("schema version {} where {} is expected",
                                                report.schemaVersion,
                                                currentSchemaVersion()));
        }
        report.members = database.execAndGet("SELECT count(*) FROM member").getInt64();
        report.sets = database.execAndGet("SELECT count(*) FROM done_set").getInt64();
        report.trials = database.execAndGet("SELECT count(*) FROM trial").getInt64();
        return report;
    });
}

} // namespace levelbar::storage
