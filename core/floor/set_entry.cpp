// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/floor/set_entry.h"

#include "core/floor/floor_order.h"

#include <algorithm>

namespace levelbar {

namespace {

constexpr int kTenths = 10;

bool canAccept(const PadCell& cell)
{
    return cell.isOpen() && !cell.isHeld && cell.planned.amount && cell.kind != SetKind::Test;
}

int setsDone(const ClassFloor& floor, MemberId member)
{
    return static_cast<int>(
        std::count_if(floor.cells.begin(), floor.cells.end(), [member](const PadCell& cell) {
            return cell.done && cell.planned.member == member;
        }));
}

void setAmount(PerformedSet& set, AmountKind kind, int amount)
{
    switch (kind) {
    case AmountKind::Reps:
        set.reps = amount;
        break;
    case AmountKind::Seconds:
        set.secondsTenths = amount;
        break;
    case AmountKind::Metres:
        set.metresTenths = amount;
        break;
    }
}

AmountKind amountOf(const FloorBook& book, ExerciseId exercise)
{
    const FloorExercise* found = book.find(exercise);
    return found == nullptr ? AmountKind::Reps : found->exercise.amount;
}

DoneSet doneFor(const ClassFloor& floor, const FloorBook& book, const PadCell& cell, Moment at)
{
    const FloorPerson* who = person(floor, cell.planned.member);
    DoneSet done;
    done.member = cell.planned.member;
    done.exercise = cell.planned.exercise;
    done.side = cell.planned.side;
    done.meeting = book.meeting;
    if (cell.planned.id.isStored()) {
        done.planned = cell.planned.id;
    }
    done.keyedAt = at;
    done.keyedBy = book.initials;
    done.performed.day = book.day;
    done.performed.number = cell.planned.number;
    done.performed.order = setsDone(floor, cell.planned.member) + 1;
    done.performed.load = cell.planned.load;
    done.performed.kind = cell.kind;
    done.performed.isAtLeast = who != nullptr && who->isEasyDay();
    return done;
}

DoneSet asPlanned(
    const ClassFloor& floor, const FloorBook& book, const PadCell& cell, HowKnown known, Moment at)
{
    DoneSet done = doneFor(floor, book, cell, at);
    setAmount(done.performed, amountOf(book, cell.planned.exercise), *cell.planned.amount);
    done.performed.known = known;
    return done;
}

DoneSet counted(const ClassFloor& floor,
                const FloorBook& book,
                const PadCell& cell,
                const CellEntry& entry,
                Moment at)
{
    DoneSet done = doneFor(floor, book, cell, at);
    const AmountKind kind = amountOf(book, cell.planned.exercise);
    setAmount(done.performed, kind, kind == AmountKind::Reps ? entry.reps : kTenths * entry.reps);
    done.performed.reserve = entry.reserve;
    if (kind == AmountKind::Reps && entry.reps == 0) {
        done.performed.stopped = StopReason::NoMore;
    }
    return done;
}

std::string who(const ClassFloor& floor, MemberId member)
{
    const FloorPerson* found = person(floor, member);
    return found == nullptr ? "" : calledOut(*found);
}

} // namespace

Result<FloorChange>
keySet(const ClassFloor& floor, const FloorBook& book, const CellEntry& entry, Moment at)
{
    if (!floor.cursor || !floor.cells[*floor.cursor].isOpen()) {
        return refuse(FaultCode::NoOpenSet);
    }
    const PadCell& cell = floor.cells[*floor.cursor];
    if (cell.isHeld) {
        return refuse(FaultCode::SetWaits);
    }
    if (entry.asPlanned && !canAccept(cell)) {
        return refuse(FaultCode::NothingPlanned);
    }
    FloorChange change{floor, {}, {}};
    const DoneSet done = entry.asPlanned ? asPlanned(floor, book, cell, HowKnown::Accepted, at)
                                         : counted(floor, book, cell, entry, at);
    change.floor.cells[*floor.cursor].done = done;
    change.recorded = {done};
    change.said = {entry.asPlanned ? "%1: %2, as planned" : "%1: %2",
                   {who(floor, done.member), setText(done.performed)}};
    moveOn(change.floor);
    return change;
}

Result<FloorChange> keyRound(const ClassFloor& floor, const FloorBook& book, Moment at)
{
    if (!floor.cursor) {
        return refuse(FaultCode::NoOpenSet);
    }
    const PadCell& under = floor.cells[*floor.cursor];
    FloorChange change{floor, {}, {}};
    int left = 0;
    for (PadCell& cell : change.floor.cells) {
        if (!cell.isOpen() || cell.round != under.round || cell.station != under.station) {
            continue;
        }
        if (!canAccept(cell)) {
            ++left;
            continue;
        }
        cell.done = asPlanned(change.floor, book, cell, HowKnown::Group, at);
        change.recorded.push_back(*cell.done);
    }
    if (change.recorded.empty()) {
        return refuse(FaultCode::NothingPlanned);
    }
    change.said = {left == 0 ? "Station %1, round %2: %3 as planned"
                             : "Station %1, round %2: %3 as planned, %4 to be typed",
                   {std::to_string(under.station),
                    std::to_string(under.round),
                    std::to_string(change.recorded.size()),
                    std::to_string(left)}};
    moveOn(change.floor);
    return change;
}

Result<FloorChange> turnClean(const ClassFloor& floor)
{
    FloorChange change{floor, {}, {}};
    PadCell* last = nullptr;
    for (PadCell& cell : change.floor.cells) {
        if (cell.done && cell.done->performed.known == HowKnown::Counted &&
            (last == nullptr || !(cell.done->keyedAt < last->done->keyedAt))) {
            last = &cell;
        }
    }
    if (last == nullptr) {
        return refuse(FaultCode::NothingKeyed);
    }
    PerformedSet& set = last->done->performed;
    set.isClean = set.isClean == false;
    change.recorded = {*last->done};
    change.said = {*set.isClean ? "%1: %2, clean" : "%1: %2, not clean",
                   {who(floor, last->planned.member), setText(set)}};
    return change;
}

} // namespace levelbar
