// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/done_set_row.h"

#include "storage/row_binder.h"
#include "storage/row_columns.h"

namespace levelbar::storage {

DoneSet readDoneSet(SQLite::Statement& row, int first)
{
    Columns columns(row, first);
    DoneSet set;
    PerformedSet& performed = set.performed;
    set.member = columns.id<MemberId>();
    set.exercise = columns.id<ExerciseId>();
    set.side = columns.word<Side>();
    performed.day = columns.day();
    performed.number = columns.whole();
    performed.order = columns.whole();
    performed.reps = columns.maybeWhole();
    performed.secondsTenths = columns.maybeWhole();
    performed.metresTenths = columns.maybeWhole();
    performed.load = columns.mass();
    if (const auto tenths = columns.maybeWhole()) {
        performed.reserve = Reserve{*tenths};
    }
    performed.known = columns.word<HowKnown>();
    performed.kind = columns.word<SetKind>();
    performed.stopped = columns.maybeWord<StopReason>();
    performed.isClean = columns.maybeFlag();
    performed.pain = columns.maybeWhole();
    set.painArea = columns.text();
    set.painSide = columns.maybeWord<Side>();
    set.hookHole = columns.maybeWhole();
    set.benchAngle = columns.maybeWhole();
    set.meeting = columns.maybeId<MeetingId>();
    set.planned = columns.maybeId<PlannedSetId>();
    set.keyedAt = columns.maybeMoment();
    set.keyedBy = columns.text();
    set.note = columns.text();
    performed.isAtLeast = columns.flag();
    return set;
}

void bindDoneSet(SQLite::Statement& insert, const DoneSet& set, std::optional<ImportId> import)
{
    const PerformedSet& performed = set.performed;
    Binder::onCleared(insert)
        .add(set.member)
        .add(set.exercise)
        .add(set.side)
        .add(performed.day)
        .add(performed.number)
        .add(performed.order)
        .add(performed.reps)
        .add(performed.secondsTenths)
        .add(performed.metresTenths)
        .add(performed.load.thousandths())
        .add(performed.load.unit())
        .add(performed.reserve ? std::optional(performed.reserve->tenths) : std::nullopt)
        .add(performed.known)
        .add(performed.kind)
        .add(performed.stopped)
        .add(performed.isClean)
        .add(performed.pain)
        .addLasting(set.painArea)
        .add(set.painSide)
        .add(set.hookHole)
        .add(set.benchAngle)
        .add(set.meeting)
        .add(set.planned)
        .add(set.keyedAt)
        .addLasting(set.keyedBy)
        .addLasting(set.note)
        .add(performed.isAtLeast)
        .add(import);
}

} // namespace levelbar::storage
