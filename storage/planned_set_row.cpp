// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/planned_set_row.h"

#include "storage/random_uid.h"
#include "storage/row_binder.h"
#include "storage/row_columns.h"

namespace levelbar::storage {

namespace {

std::optional<GivenPrediction> readPrediction(Columns& columns)
{
    const auto reps = columns.maybeReal();
    const auto low = columns.maybeReal();
    const auto high = columns.maybeReal();
    const auto version = columns.maybeWhole();
    const auto givenAt = columns.maybeMoment();
    const auto experience = columns.maybeWord<Experience>();
    if (!reps || !low || !high || !version) {
        return std::nullopt;
    }
    return GivenPrediction{*reps, *low, *high, experience, *version, givenAt.value_or(Moment{})};
}

} // namespace

PlannedSet readPlannedSet(SQLite::Statement& row)
{
    Columns columns(row);
    PlannedSet planned;
    planned.id = columns.id<PlannedSetId>();
    planned.meeting = columns.id<MeetingId>();
    planned.member = columns.id<MemberId>();
    planned.exercise = columns.id<ExerciseId>();
    planned.side = columns.word<Side>();
    planned.number = columns.whole();
    planned.load = columns.mass();
    planned.amount = columns.maybeWhole();
    if (const auto tenths = columns.maybeWhole()) {
        planned.reserve = Reserve{*tenths};
    }
    planned.isNew = columns.flag();
    planned.prediction = readPrediction(columns);
    return planned;
}

void bindPlannedSet(SQLite::Statement& insert, const PlannedSet& planned)
{
    Binder binder(insert);
    binder.addBytes(randomUid())
        .add(planned.meeting)
        .add(planned.member)
        .add(planned.exercise)
        .add(planned.side)
        .add(planned.number)
        .add(planned.load.thousandths())
        .add(planned.load.unit())
        .add(planned.amount)
        .add(planned.reserve ? std::optional(planned.reserve->tenths) : std::nullopt)
        .add(planned.isNew);
    const auto& given = planned.prediction;
    binder.addReal(given ? std::optional(given->reps) : std::nullopt)
        .addReal(given ? std::optional(given->low) : std::nullopt)
        .addReal(given ? std::optional(given->high) : std::nullopt)
        .add(given ? std::optional(given->modelVersion) : std::nullopt)
        .add(given ? std::optional(given->givenAt) : std::nullopt)
        .add(given ? given->experience : std::nullopt);
}

} // namespace levelbar::storage
