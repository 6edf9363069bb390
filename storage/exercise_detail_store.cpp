// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/exercise_detail_store.h"

#include "core/base/number.h"
#include "storage/row_binder.h"
#include "storage/row_columns.h"
#include "storage/sqlite_errors.h"

#include <array>

namespace levelbar::storage {

namespace {

constexpr std::array kFields = {"cues", "cautions", "areas", "bench_angle"};

using FieldTexts = std::array<std::string, kFields.size()>;

// In the order of kFields, then the gym's changes in the same order. An empty text can be a
// change; NULL is none.
constexpr const char* kSelectDetail = R"sql(
SELECT e.id, d.cues, d.cautions, d.areas, d.bench_angle,
       (SELECT value FROM exercise_change c WHERE c.exercise = e.id AND field = 'cues'),
       (SELECT value FROM exercise_change c WHERE c.exercise = e.id AND field = 'cautions'),
       (SELECT value FROM exercise_change c WHERE c.exercise = e.id AND field = 'areas'),
       (SELECT value FROM exercise_change c WHERE c.exercise = e.id AND field = 'bench_angle')
FROM exercise e LEFT JOIN exercise_detail d ON d.exercise = e.id
)sql";

FieldTexts textsOf(const ExerciseDetail& detail)
{
    return {joinedParts(detail.cues),
            joinedParts(detail.cautions),
            joinedParts(detail.areas),
            detail.benchAngle ? std::to_string(*detail.benchAngle) : std::string()};
}

ExerciseDetail detailOf(const FieldTexts& texts)
{
    constexpr std::int64_t kWidest = 360;
    ExerciseDetail detail;
    detail.cues = partsOf(texts[0]);
    detail.cautions = partsOf(texts[1]);
    detail.areas = partsOf(texts[2]);
    if (const auto angle = parseWhole(texts[3], -kWidest, kWidest)) {
        detail.benchAngle = static_cast<int>(*angle);
    }
    return detail;
}

// `isChanged`: with the gym's changes laid over.
ExerciseDetail readDetail(SQLite::Statement& row, bool isChanged)
{
    constexpr int kFirst = 1;
    constexpr int kCount = static_cast<int>(kFields.size());
    FieldTexts texts;
    for (int i = 0; i < kCount; ++i) {
        const SQLite::Column change = row.getColumn(kFirst + kCount + i);
        texts.at(static_cast<std::size_t>(i)) = isChanged && !change.isNull()
                                                    ? change.getString()
                                                    : row.getColumn(kFirst + i).getString();
    }
    return detailOf(texts);
}

ExerciseDetail readOne(SQLite::Database& database, ExerciseId exercise, bool isChanged)
{
    SQLite::Statement select(database, std::string(kSelectDetail) + "WHERE e.id = ?");
    select.bind(1, exercise.value);
    return select.executeStep() ? readDetail(select, isChanged) : ExerciseDetail{};
}

void setOwn(SQLite::Database& database, ExerciseId exercise, const ExerciseDetail& detail)
{
    SQLite::Statement upsert(database, R"sql(
INSERT INTO exercise_detail (exercise, cues, cautions, areas, bench_angle) VALUES (?, ?, ?, ?, ?)
ON CONFLICT (exercise) DO UPDATE SET cues = excluded.cues, cautions = excluded.cautions,
    areas = excluded.areas, bench_angle = excluded.bench_angle
)sql");
    Binder(upsert)
        .add(exercise)
        .add(joinedParts(detail.cues))
        .add(joinedParts(detail.cautions))
        .add(joinedParts(detail.areas))
        .add(detail.benchAngle);
    upsert.exec();
}

void setChanges(SQLite::Database& database, ExerciseId exercise, const ExerciseDetail& detail)
{
    const FieldTexts shipped = textsOf(readOne(database, exercise, false));
    const FieldTexts wanted = textsOf(detail);
    SQLite::Statement remove(database,
                             "DELETE FROM exercise_change WHERE exercise = ? AND field = ?");
    SQLite::Statement upsert(database,
                             "INSERT INTO exercise_change (exercise, field, value) VALUES (?, ?, "
                             "?) ON CONFLICT (exercise, field) DO UPDATE SET value = "
                             "excluded.value");
    for (std::size_t i = 0; i < kFields.size(); ++i) {
        const bool isShipped = wanted.at(i) == shipped.at(i);
        SQLite::Statement& write = isShipped ? remove : upsert;
        write.reset();
        Binder binder(write);
        binder.add(exercise).add(std::string(kFields.at(i)));
        if (!isShipped) {
            binder.add(wanted.at(i));
        }
        write.exec();
    }
}

} // namespace

std::map<ExerciseId, ExerciseDetail> ExerciseDetailStore::all() const
{
    return translateErrors(m_logbook.path(), [&] {
        std::map<ExerciseId, ExerciseDetail> details;
        SQLite::Statement select(m_logbook.database(), kSelectDetail);
        while (select.executeStep()) {
            const ExerciseId exercise{select.getColumn(0).getInt64()};
            details.emplace(exercise, readDetail(select, true));
        }
        return details;
    });
}

ExerciseDetail ExerciseDetailStore::find(ExerciseId exercise) const
{
    return translateErrors(m_logbook.path(),
                           [&] { return readOne(m_logbook.database(), exercise, true); });
}

void ExerciseDetailStore::set(WriteScope& scope,
                              const Exercise& exercise,
                              const ExerciseDetail& detail)
{
    translateErrors(scope.logbook().path(), [&] {
        SQLite::Database& database = scope.logbook().database();
        if (exercise.isShipped) {
            setChanges(database, exercise.id, detail);
        } else {
            setOwn(database, exercise.id, detail);
        }
    });
}

} // namespace levelbar::storage
