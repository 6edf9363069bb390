// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/shipped_library.h"

#include "core/base/number.h"
#include "core/exercise/exercise.h"
#include "core/testing/trial.h"
#include "resources/embedded.h"
#include "storage/case_folding.h"
#include "storage/exchange/csv_reader.h"
#include "storage/ladder_row.h"
#include "storage/row_binder.h"
#include "storage/sqlite_errors.h"

#include <map>
#include <set>
#include <stdexcept>

namespace levelbar::storage {

namespace {

constexpr const char* kVersionSetting = "library_version";
constexpr int kValueDecimals = 3;

constexpr const char* kUpsertExercise = R"sql(
INSERT INTO exercise (key, is_shipped, library_version, name, pattern, implement, sidedness, amount,
                      load, base_exercise_key, ratio_to_base, ratio_spread_percent, source,
                      is_hidden)
VALUES (?, 1, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
ON CONFLICT (key) DO UPDATE SET
    library_version = excluded.library_version, name = excluded.name, pattern = excluded.pattern,
    implement = excluded.implement, sidedness = excluded.sidedness, amount = excluded.amount,
    load = excluded.load, base_exercise_key = excluded.base_exercise_key,
    ratio_to_base = excluded.ratio_to_base, ratio_spread_percent = excluded.ratio_spread_percent,
    source = excluded.source
)sql";

constexpr const char* kUpsertDetail = R"sql(
INSERT INTO exercise_detail (exercise, cues, cautions, areas, bench_angle)
VALUES ((SELECT id FROM exercise WHERE key = ?), ?, ?, ?, ?)
ON CONFLICT (exercise) DO UPDATE SET
    cues = excluded.cues, cautions = excluded.cautions, areas = excluded.areas,
    bench_angle = excluded.bench_angle
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

    int whole(const std::string& column) const
    {
        constexpr std::int64_t kMost = 1'000'000;
        return static_cast<int>(parseWhole(m_cells.at(column), -kMost, kMost).value());
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

// Folded names of the gym's own exercises.
std::set<std::string> ownNames(SQLite::Database& database)
{
    std::set<std::string> names;
    SQLite::Statement select(database, "SELECT name FROM exercise WHERE is_shipped = 0");
    while (select.executeStep()) {
        names.insert(foldCase(select.getColumn(0).getString()));
    }
    return names;
}

void addDetail(SQLite::Statement& upsert, const Row& row)
{
    const bool hasAngle = !row["bench_angle"].empty();
    Binder(upsert)
        .add(row["key"])
        .add(row["cues"])
        .add(row["cautions"])
        .add(row["areas"])
        .add(hasAngle ? std::optional(row.whole("bench_angle")) : std::nullopt);
    upsert.exec();
    upsert.reset();
}

// A shipped exercise that is new here, but of whose name the gym has one of its own, comes
// hidden: nobody's sets are to be split over two.
void addExercises(SQLite::Database& database)
{
    const std::set<std::string> own = ownNames(database);
    SQLite::Statement upsert(database, kUpsertExercise);
    SQLite::Statement upsertDetail(database, kUpsertDetail);
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
            .add(row["source"])
            .add(own.contains(foldCase(row["name"])));
        upsert.exec();
        upsert.reset();
        addDetail(upsertDetail, row);
    });
}

Rung rungOf(const Row& row)
{
    Rung rung;
    rung.exerciseKey = row["exercise"];
    rung.setting = row["setting"];
    rung.up = {row.whole("up_amount"),
               row.whole("up_sets"),
               row.whole("up_sessions"),
               row.whole("up_load_percent")};
    rung.down = {row.whole("down_pain"),
                 row.whole("down_days_away"),
                 row.whole("down_fewer_than"),
                 row.whole("down_sessions")};
    rung.source = row["source"];
    return rung;
}

void addLadders(SQLite::Database& database)
{
    std::vector<Ladder> ladders;
    forEachRow(resources::ladderLibraryCsv(), [&](const Row& row) {
        if (ladders.empty() || ladders.back().key != row["ladder"]) {
            Ladder ladder;
            ladder.key = row["ladder"];
            ladder.name = row["name"];
            ladder.pattern = parsePattern(row["pattern"]).value();
            ladders.push_back(std::move(ladder));
        }
        ladders.back().rungs.push_back(rungOf(row));
    });
    for (const Ladder& ladder : ladders) {
        writeLadder(database, ladder);
    }
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
        addLadders(database);
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
