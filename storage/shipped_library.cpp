// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/shipped_library.h"

#include "core/base/number.h"
#include "core/exercise/exercise.h"
#include "core/testing/trial.h"
#include "resources/embedded.h"
#include "storage/exchange/csv_reader.h"
#include "storage/rows.h"
#include "storage/sqlite_errors.h"

#include <map>
#include <stdexcept>

namespace levelbar::storage {

namespace {

constexpr const char* kVersionSetting = "library_version";
constexpr int kValueDecimals = 3;

constexpr const char* kUpsertExercise = R"sql(
INSERT INTO exercise (key, is_shipped, library_version, name, pattern, implement, sidedness, amount,
                      load, base_exercise_key, ratio_to_base, ratio_spread_percent, source)
VALUES (?, 1, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
ON CONFLICT (key) DO UPDATE SET
    library_version = excluded.library_version, name = excluded.name, pattern = excluded.pattern,
    implement = excluded.implement, sidedness = excluded.sidedness, amount = excluded.amount,
    load = excluded.load, base_exercise_key = excluded.base_exercise_key,
    ratio_to_base = excluded.ratio_to_base, ratio_spread_percent = excluded.ratio_spread_percent,
    source = excluded.source
)sql";

constexpr const char* kUpsertTest = R"sql(
INSERT INTO test_kind (key, is_shipped, name, unit, direction, is_sided, lowest, highest)
VALUES (?, 1, ?, ?, ?, ?, ?, ?)
ON CONFLICT (key) DO UPDATE SET
    name = excluded.name, unit = excluded.unit, direction = excluded.direction,
    is_sided = excluded.is_sided, lowest = excluded.lowest, highest = excluded.highest
)sql";

// A row of our own data by column name. What is wrong in it is our own mistake, found by a test.
class Row {
public:
    Row(const CsvHeader& header, std::span<const std::string> cells)
    {
        for (std::size_t i = 0; i < header.columns.size(); ++i) {
            m_cells[header.columns[i]] = cells[i];
        }
    }

    const std::string& operator[](const std::string& column) const { return m_cells.at(column); }

    std::optional<double> real(const std::string& column) const
    {
        const std::string& text = m_cells.at(column);
        constexpr std::int64_t kMost = 1'000'000'000;
        if (text.empty()) {
            return std::nullopt;
        }
        return static_cast<double>(parseDecimal(text, 4, 0, kMost).value()) / 10000.0;
    }

private:
    std::map<std::string, std::string> m_cells;
};

void forEachRow(std::string_view csv, const std::function<void(const Row&)>& visit)
{
    CsvHeader header;
    readCsv(csv,
            {[&](const CsvHeader& found) {
                 header = found;
                 return true;
             },
             [&](int, std::span<const std::string> cells) { visit(Row(header, cells)); },
             [](int line, const Fault& fault) {
                 throw std::logic_error("shipped library, line " + std::to_string(line) + ": " +
                                        sentence(fault));
             }});
}

void addExercises(SQLite::Database& database)
{
    SQLite::Statement upsert(database, kUpsertExercise);
    forEachRow(resources::exerciseLibraryCsv(), [&](const Row& row) {
        Binder(upsert)
            .add(row["key"])
            .add(kLibraryVersion)
            .add(row["name"])
            .add(parsePattern(row["pattern"]).value())
            .add(parseImplement(row["implement"]).value())
            .add(parseSidedness(row["sides"]).value())
            .add(parseAmountKind(row["amount"]).value())
            .add(parseLoadKind(row["load"]).value())
            .add(row["base_exercise"])
            .addReal(row.real("ratio"))
            .addReal(row.real("ratio_spread_percent"))
            .add(row["source"]);
        upsert.exec();
        upsert.reset();
    });
}

void addTests(SQLite::Database& database)
{
    constexpr std::int64_t kFarthest = 1'000'000'000'000;
    SQLite::Statement upsert(database, kUpsertTest);
    forEachRow(resources::testLibraryCsv(), [&](const Row& row) {
        const auto limit = [&](const char* column) {
            return parseDecimal(row[column], kValueDecimals, -kFarthest, kFarthest).value();
        };
        Binder(upsert)
            .add(row["key"])
            .add(row["name"])
            .add(row["unit"])
            .add(parseDirection(row["direction"]).value())
            .add(row["sides"] == "each")
            .add(limit("lowest"))
            .add(limit("highest"));
        upsert.exec();
        upsert.reset();
    });
}

} // namespace

void refreshShippedLibrary(Logbook& logbook, Moment /*now*/)
{
    SQLite::Database& database = logbook.database();
    translateErrors(logbook.path(), [&] {
        SQLite::Statement known(database, "SELECT value FROM setting WHERE name = ?");
        known.bind(1, kVersionSetting);
        const std::string version = std::to_string(kLibraryVersion);
        if (known.executeStep() && known.getColumn(0).getString() == version) {
            return;
        }
        known.reset();
        SQLite::Transaction transaction(database, SQLite::TransactionBehavior::IMMEDIATE);
        addExercises(database);
        addTests(database);
        SQLite::Statement note(database,
                               "INSERT INTO setting VALUES (?, ?) ON CONFLICT (name) DO UPDATE SET "
                               "value = excluded.value");
        note.bind(1, kVersionSetting);
        note.bind(2, version);
        note.exec();
        transaction.commit();
    });
}

} // namespace levelbar::storage
