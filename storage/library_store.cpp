// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/library_store.h"

#include "storage/case_folding.h"
#include "storage/random_uid.h"
#include "storage/row_binder.h"
#include "storage/row_columns.h"
#include "storage/sqlite_errors.h"

#include <fmt/format.h>

#include <algorithm>

namespace levelbar::storage {

namespace {

// The gym's own words for a shipped exercise lie in exercise_change.
constexpr const char* kSelectExercises = R"sql(
SELECT e.id, e.key,
       coalesce((SELECT value FROM exercise_change c WHERE c.exercise = e.id AND field = 'name'),
                e.name),
       e.pattern, e.implement, e.sidedness, e.amount, e.load, e.base_exercise_key, e.ratio_to_base,
       e.ratio_spread_percent, e.source, e.is_shipped, e.is_hidden
FROM exercise e ORDER BY e.id
)sql";

constexpr const char* kSelectTests = R"sql(
SELECT id, key, name, unit, direction, is_sided, maximum_of, lowest, highest
FROM test_kind ORDER BY id
)sql";

Exercise readExercise(SQLite::Statement& row)
{
    Columns columns(row);
    Exercise exercise;
    exercise.id = columns.id<ExerciseId>();
    exercise.key = columns.text();
    exercise.name = columns.text();
    exercise.pattern = columns.word<Pattern>();
    exercise.implement = columns.word<Implement>();
    exercise.sidedness = columns.word<Sidedness>();
    exercise.amount = columns.word<AmountKind>();
    exercise.load = columns.word<LoadKind>();
    exercise.baseExerciseKey = columns.text();
    exercise.ratioToBase = columns.maybeReal();
    exercise.ratioSpreadPercent = columns.maybeReal();
    exercise.source = columns.text();
    exercise.isShipped = columns.flag();
    exercise.isHidden = columns.flag();
    return exercise;
}

TestKind readTest(SQLite::Statement& row)
{
    Columns columns(row);
    TestKind test;
    test.id = columns.id<TestId>();
    test.key = columns.text();
    test.name = columns.text();
    test.unit = columns.text();
    test.direction = columns.word<Direction>();
    test.isSided = columns.flag();
    test.maximumOf = columns.maybeId<ExerciseId>();
    test.lowestThousandths = columns.number();
    test.highestThousandths = columns.number();
    return test;
}

template <typename T> std::optional<T> named(const std::vector<T>& all, std::string_view name)
{
    const std::string folded = foldCase(name);
    const auto found = std::find_if(all.begin(), all.end(), [&](const T& candidate) {
        return foldCase(candidate.name) == folded;
    });
    return found == all.end() ? std::nullopt : std::optional(*found);
}

// The shipped name takes the gym's change back.
void setShippedName(SQLite::Database& database, const Exercise& exercise)
{
    SQLite::Statement clear(database,
                            "DELETE FROM exercise_change WHERE exercise = ? AND field = 'name'");
    Binder(clear).add(exercise.id);
    clear.exec();
    SQLite::Statement change(database,
                             "INSERT INTO exercise_change SELECT id, 'name', ?1 FROM exercise "
                             "WHERE id = ?2 AND name <> ?1");
    Binder(change).add(exercise.name).add(exercise.id);
    change.exec();
}

std::string ownKey()
{
    std::string key = "own-";
    for (const unsigned char byte : randomUid()) {
        key += fmt::format("{:02x}", byte);
    }
    return key;
}

// In the order of the columns of both statements below.
Binder& addFields(Binder& binder, const Exercise& exercise)
{
    return binder.add(exercise.name)
        .add(exercise.pattern)
        .add(exercise.implement)
        .add(exercise.sidedness)
        .add(exercise.amount)
        .add(exercise.load)
        .add(exercise.baseExerciseKey)
        .addReal(exercise.ratioToBase)
        .addReal(exercise.ratioSpreadPercent)
        .add(exercise.source);
}

} // namespace

Library LibraryStore::all() const
{
    return translateErrors(m_logbook.path(), [&] {
        Library library;
        SQLite::Statement exercises(m_logbook.database(), kSelectExercises);
        while (exercises.executeStep()) {
            library.exercises.push_back(readExercise(exercises));
        }
        SQLite::Statement tests(m_logbook.database(), kSelectTests);
        while (tests.executeStep()) {
            library.tests.push_back(readTest(tests));
        }
        return library;
    });
}

std::optional<Exercise> LibraryStore::findExercise(std::string_view name) const
{
    return named(all().exercises, name);
}

std::optional<TestKind> LibraryStore::findTest(std::string_view name) const
{
    return named(all().tests, name);
}

ExerciseId LibraryStore::addExercise(WriteScope& scope, const Exercise& exercise)
{
    return translateErrors(scope.logbook().path(), [&] {
        SQLite::Database& database = scope.logbook().database();
        SQLite::Statement insert(database, R"sql(
INSERT INTO exercise (key, is_shipped, name, pattern, implement, sidedness, amount, load,
                      base_exercise_key, ratio_to_base, ratio_spread_percent, source, import)
VALUES (?, 0, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
)sql");
        Binder binder(insert);
        binder.add(ownKey());
        addFields(binder, exercise).add(scope.import());
        insert.exec();
        return ExerciseId{database.getLastInsertRowid()};
    });
}

void LibraryStore::updateExercise(WriteScope& scope, const Exercise& exercise)
{
    translateErrors(scope.logbook().path(), [&] {
        SQLite::Database& database = scope.logbook().database();
        if (exercise.isShipped) {
            setShippedName(database, exercise);
            return;
        }
        SQLite::Statement update(database, R"sql(
UPDATE exercise SET name = ?, pattern = ?, implement = ?, sidedness = ?, amount = ?, load = ?,
    base_exercise_key = ?, ratio_to_base = ?, ratio_spread_percent = ?, source = ?
WHERE id = ? AND is_shipped = 0
)sql");
        Binder binder(update);
        addFields(binder, exercise).add(exercise.id);
        update.exec();
    });
}

void LibraryStore::setHidden(WriteScope& scope, ExerciseId exercise, bool isHidden)
{
    translateErrors(scope.logbook().path(), [&] {
        SQLite::Statement update(scope.logbook().database(),
                                 "UPDATE exercise SET is_hidden = ? WHERE id = ?");
        Binder(update).add(isHidden).add(exercise);
        update.exec();
    });
}

TestId LibraryStore::oneRepMaxOf(WriteScope& scope, const Exercise& exercise)
{
    return translateErrors(scope.logbook().path(), [&] {
        SQLite::Database& database = scope.logbook().database();
        SQLite::Statement known(database, "SELECT id FROM test_kind WHERE maximum_of = ?");
        known.bind(1, exercise.id.value);
        if (known.executeStep()) {
            return TestId{known.getColumn(0).getInt64()};
        }
        constexpr std::int64_t kHeaviest = 2'204'622; // thousandths: 1000 kg in pounds
        SQLite::Statement insert(database, R"sql(
INSERT INTO test_kind (key, is_shipped, name, unit, direction, is_sided, maximum_of, lowest, highest,
                       import)
VALUES ((SELECT 'one-rep-max-' || key FROM exercise WHERE id = ?), 0, ?, 'kg', 1, ?, ?, 1, ?, ?)
)sql");
        Binder(insert)
            .add(exercise.id) // an exercise just added knows its key only here
            .add(std::string(kOneRepMaxPrefix) + exercise.name)
            .add(exercise.sidedness == Sidedness::SingleSided)
            .add(exercise.id)
            .add(kHeaviest)
            .add(scope.import());
        insert.exec();
        return TestId{database.getLastInsertRowid()};
    });
}

} // namespace levelbar::storage
