// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/integrity.h"

#include "storage/migrations.h"
#include "storage/row_columns.h"
#include "storage/sqlite_errors.h"

#include <SQLiteCpp/SQLiteCpp.h>
#include <fmt/format.h>
#include <sqlite3.h>

#include <algorithm>
#include <set>
#include <string_view>

namespace levelbar::storage {

namespace {

// SQLite puts several faults into one row, a line each, below a heading.
void addLines(std::string_view text, IntegrityReport& report)
{
    while (!text.empty()) {
        const std::size_t end = std::min(text.find('\n'), text.size());
        const std::string_view line = text.substr(0, end);
        if (!line.empty() && line != "ok" && !line.starts_with("***")) {
            report.faults.emplace_back(line);
        }
        text.remove_prefix(std::min(end + 1, text.size()));
    }
}

void checkPages(SQLite::Database& database, const std::string& pragma, IntegrityReport& report)
{
    try {
        SQLite::Statement check(database, pragma);
        while (check.executeStep()) {
            addLines(check.getColumn(0).getString(), report);
        }
    } catch (const SQLite::Exception& error) { // damaged beyond what it can walk over
        if (asStoreError(error, {}).kind() != StoreErrorKind::Corrupt) {
            throw;
        }
        report.faults.emplace_back(error.what());
    }
}

// One line for all rows of a table that lean on the same missing parents: there may be thousands.
void checkReferences(SQLite::Database& database, IntegrityReport& report)
{
    SQLite::Statement orphans(database, R"sql(
SELECT o."table", coalesce(k."from", '?'), o.parent, count(*), min(o.rowid)
FROM pragma_foreign_key_check o LEFT JOIN pragma_foreign_key_list(o."table") k ON k.id = o.fkid AND k.seq = 0
GROUP BY o."table", o.fkid ORDER BY o."table", o.fkid
)sql");
    while (orphans.executeStep()) {
        Columns columns(orphans);
        const std::string table = columns.text();
        const std::string column = columns.text();
        const std::string parent = columns.text();
        const std::int64_t count = columns.number();
        const auto first = columns.maybeReal(); // tables without rowid have none
        report.faults.push_back(
            fmt::format("table {}, column {}: {} {} a row of {} that is not there{}",
                        table,
                        column,
                        count,
                        count == 1 ? "row names" : "rows name",
                        parent,
                        first ? fmt::format(" (the first is row {:.0f})", *first) : std::string()));
    }
}

// "table done_set", "column reps of table done_set", "index done_set_meeting".
std::set<std::string> partsOf(SQLite::Database& database)
{
    std::set<std::string> parts;
    SQLite::Statement select(database, R"sql(
SELECT type || ' ' || name FROM sqlite_schema WHERE name NOT LIKE 'sqlite\_%' ESCAPE '\'
UNION ALL
SELECT 'column ' || c.name || ' of table ' || t.name
FROM sqlite_schema t JOIN pragma_table_info(t.name) c WHERE t.type = 'table'
)sql");
    while (select.executeStep()) {
        parts.insert(select.getColumn(0).getString());
    }
    return parts;
}

void checkSchema(SQLite::Database& database, IntegrityReport& report)
{
    if (report.schemaVersion != currentSchemaVersion()) {
        report.faults.push_back(
            fmt::format("schema version {} where {} is expected; open it for writing once to "
                        "bring it up to date",
                        report.schemaVersion,
                        currentSchemaVersion()));
        return;
    }
    SQLite::Database fresh(":memory:", SQLite::OPEN_READWRITE);
    migrate(fresh, {}, migrations());
    const std::set<std::string> found = partsOf(database);
    for (const std::string& part : partsOf(fresh)) {
        if (!found.contains(part)) {
            report.faults.push_back(part + " is missing");
        }
    }
}

void count(SQLite::Database& database, IntegrityReport& report)
{
    report.members = database.execAndGet("SELECT count(*) FROM member").getInt64();
    report.sets = database.execAndGet("SELECT count(*) FROM done_set").getInt64();
    report.trials = database.execAndGet("SELECT count(*) FROM trial").getInt64();
}

// Runs a check. What is damaged beyond what the check can walk over is a fault, too.
template <typename Check>
void tryCheck(const Logbook& logbook, IntegrityReport& report, const Check& check)
{
    try {
        check(logbook.database(), report);
    } catch (const SQLite::Exception& error) {
        const StoreErrorKind kind = asStoreError(error, logbook.path()).kind();
        const bool isMissing =
            kind == StoreErrorKind::Other && error.getErrorCode() == SQLITE_ERROR;
        if (kind != StoreErrorKind::Corrupt && !isMissing) {
            throw;
        }
        report.faults.emplace_back(error.what());
    }
}

// SQLite names pages, not tables: when something is wrong, each table is looked at by itself.
void checkAllPages(SQLite::Database& database, IntegrityReport& report)
{
    IntegrityReport whole;
    checkPages(database, "PRAGMA integrity_check", whole);
    if (whole.isSound()) {
        return;
    }
    const std::size_t before = report.faults.size();
    SQLite::Statement tables(database, "SELECT name FROM sqlite_schema WHERE type = 'table'");
    while (tables.executeStep()) {
        const std::string table = tables.getColumn(0).getString();
        IntegrityReport part;
        checkPages(database, "PRAGMA integrity_check(\"" + table + "\")", part);
        for (const std::string& fault : part.faults) {
            report.faults.push_back("table " + table + ": " + fault);
        }
    }
    if (report.faults.size() == before) {
        report.faults.insert(report.faults.end(), whole.faults.begin(), whole.faults.end());
    }
}

void checkPagesQuickly(SQLite::Database& database, IntegrityReport& report)
{
    checkPages(database, "PRAGMA quick_check(1)", report);
}

} // namespace

IntegrityReport checkIntegrity(const Logbook& logbook)
{
    return translateErrors(logbook.path(), [&] {
        IntegrityReport report;
        report.schemaVersion = logbook.schemaVersion();
        for (const auto check : {&checkAllPages, &checkReferences, &checkSchema, &count}) {
            tryCheck(logbook, report, check);
        }
        return report;
    });
}

void requireSound(const Logbook& logbook, Thoroughness thoroughness, const std::string& remedy)
{
    translateErrors(logbook.path(), [&] {
        IntegrityReport report;
        if (thoroughness == Thoroughness::Quick) {
            tryCheck(logbook, report, &checkPagesQuickly);
        } else {
            tryCheck(logbook, report, &checkAllPages);
            tryCheck(logbook, report, &checkReferences);
        }
        if (!report.isSound()) {
            throw StoreError(StoreErrorKind::Corrupt,
                             fmt::format("{} is damaged ({}); {}",
                                         logbook.path().string(),
                                         report.faults.front(),
                                         remedy));
        }
    });
}

} // namespace levelbar::storage
