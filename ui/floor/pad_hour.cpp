// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/floor/pad_hour.h"

#include "core/floor/floor_order.h"
#include "storage/exercise_detail_store.h"
#include "storage/set_store.h"
#include "ui/floor/floor_words.h"
#include "ui/floor/load_steps.h"

#include <algorithm>
#include <tuple>

namespace levelbar::ui {

namespace {

// Rounds when nobody said how long they take: warm-up first, then even parts of an hour
// (assumed).
constexpr int kHourMinutes = 60;

// The round of each column; of a pair of sides that of the side that starts.
std::vector<int> roundsOf(const FloorSheet& sheet)
{
    std::vector<int> rounds;
    int round = 0;
    for (std::size_t at = 0; at < sheet.columns.size(); ++at) {
        const FloorColumn& column = sheet.columns[at];
        const bool isSecond = column.side == Side::Right && at > 0 &&
                              sheet.columns[at - 1].side == Side::Left &&
                              sheet.columns[at - 1].exercise == column.exercise &&
                              sheet.columns[at - 1].number == column.number;
        if (isSecond) {
            rounds.push_back(round);
            ++round;
            continue;
        }
        rounds.push_back(++round);
    }
    return rounds;
}

bool isOfPair(const FloorCell& cell)
{
    return cell.sides.first.has_value();
}

PlannedSet plannedOf(const FloorCell& cell, const FloorColumn& column, MemberId member)
{
    if (cell.planned) {
        return *cell.planned;
    }
    PlannedSet planned;
    planned.member = member;
    planned.exercise = column.exercise;
    planned.side = column.side;
    planned.number = column.number;
    planned.load = cell.done ? cell.done->performed.load : Mass{};
    return planned;
}

PadCell padCell(const FloorCell& cell,
                const FloorColumn& column,
                MemberId member,
                const FloorReference& reference)
{
    PadCell made;
    made.planned = plannedOf(cell, column, member);
    made.done = cell.done;
    made.kind = cell.sides.isOpenPair ? SetKind::Open : SetKind::Work;
    if (cell.sides.stopAt) {
        made.planned.amount = cell.sides.stopAt;
    }
    // What a key must not accept: an open pair and a set without a limit are counted, and a load
    // that nobody knows is typed.
    if (cell.sides.isOpenPair || cell.sides.isUncapped ||
        lacksLoad(made.planned, reference.library.exercise(column.exercise))) {
        made.planned.amount.reset();
    }
    if (!cell.done && (cell.sides.isOver || cell.sides.notToday)) {
        made.setAside = NotAsked::Pain;
    }
    return made;
}

int placeIn(const FloorPlaces& places, MemberId member, int FloorPlace::*part)
{
    const auto found = places.find(member);
    return found == places.end() ? 1 : found->second.*part;
}

void takeOverCell(PadCell& cell, const PadCell& running, const PadCell* before)
{
    const bool wasMoved = before == nullptr || before->round != running.round ||
                          before->station != running.station || before->turn != running.turn;
    if (wasMoved) {
        cell.round = running.round;
        cell.station = running.station;
        cell.turn = running.turn;
    }
    if (cell.done) {
        return;
    }
    cell.isHeld = running.isHeld;
    const bool wasRead = before != nullptr && before->setAside == running.setAside;
    if (running.setAside && !wasRead) {
        cell.setAside = running.setAside;
    }
}

// A station that the hour changed stands; bib and name are as read.
void takeOverPerson(FloorPerson& who, const FloorPerson& running, const FloorPerson* before)
{
    const FloorPerson read = who;
    who = running;
    who.bib = read.bib;
    who.name = read.name;
    if (before == nullptr || before->station == running.station) {
        who.station = read.station;
    }
}

} // namespace

FloorPlace placeNow(const ClassFloor& hour, const FloorPerson& who)
{
    FloorPlace place{who.bib, who.station, 1};
    const PadCell* next = nullptr;
    for (const PadCell& cell : hour.cells) {
        if (cell.planned.member == who.member &&
            (next == nullptr || (!next->isOpen() && cell.isOpen()))) {
            next = &cell;
        }
    }
    if (next != nullptr) {
        place.rack = next->station;
        place.turn = next->turn;
    }
    return place;
}

const PadCell* padCellOf(const ClassFloor& hour, const CellKey& key)
{
    const auto found = std::find_if(hour.cells.begin(), hour.cells.end(), [&](const PadCell& cell) {
        return keyOf(cell.planned) == key;
    });
    return found == hour.cells.end() ? nullptr : &*found;
}

CellKey keyOf(const PlannedSet& planned)
{
    return {planned.member, planned.exercise, planned.number, planned.side};
}

const FloorCell* cellOf(const FloorSheet& sheet, const CellKey& key)
{
    for (const FloorRow& row : sheet.rows) {
        if (row.member != key.member) {
            continue;
        }
        const auto column = std::find(sheet.columns.begin(),
                                      sheet.columns.end(),
                                      FloorColumn{key.exercise, key.number, key.side});
        return column == sheet.columns.end()
                   ? nullptr
                   : &row.cells[static_cast<std::size_t>(column - sheet.columns.begin())];
    }
    return nullptr;
}

ClassFloor hourOf(const FloorSheet& sheet,
                  const FloorReference& reference,
                  const FloorPlaces& places,
                  int racks)
{
    ClassFloor hour;
    for (int number = 1; number <= racks; ++number) {
        hour.stations.push_back({number, StationKind::Rack, true});
    }
    const std::vector<int> rounds = roundsOf(sheet);
    int last = 0;
    for (const FloorRow& row : sheet.rows) {
        FloorPerson who;
        who.member = row.member;
        who.bib = placeIn(places, row.member, &FloorPlace::bib);
        who.name = personName(reference, row.member).toStdString();
        who.station = placeIn(places, row.member, &FloorPlace::rack);
        hour.people.push_back(who);
        for (std::size_t at = 0; at < row.cells.size(); ++at) {
            const FloorCell& cell = row.cells[at];
            if (!cell.planned && !cell.done) {
                continue;
            }
            PadCell made = padCell(cell, sheet.columns[at], row.member, reference);
            made.round = rounds[at] + (isOfPair(cell) && !cell.sides.isFirst ? 1 : 0);
            made.station = who.station;
            made.turn = placeIn(places, row.member, &FloorPlace::turn);
            last = std::max(last, made.round);
            hour.cells.push_back(std::move(made));
        }
    }
    for (int round = 1; round <= last; ++round) {
        hour.roundEnds.push_back(kWarmUpMinutes + round * (kHourMinutes - kWarmUpMinutes) / last);
    }
    sortCells(hour);
    return hour;
}

ClassFloor takenOver(const ClassFloor& running, const ClassFloor& before, ClassFloor now)
{
    for (PadCell& cell : now.cells) {
        const CellKey key = keyOf(cell.planned);
        if (const PadCell* known = padCellOf(running, key)) {
            takeOverCell(cell, *known, padCellOf(before, key));
        }
    }
    for (FloorPerson& who : now.people) {
        if (const FloorPerson* known = person(running, who.member)) {
            takeOverPerson(who, *known, person(before, who.member));
        }
    }
    for (Station& station : now.stations) {
        if (const Station* known = levelbar::station(running, station.number)) {
            station = *known;
        }
    }
    now.missing = running.missing;
    now.round = running.round;
    now.cursor.reset();
    sortCells(now);
    if (running.cursor) {
        const CellKey key = keyOf(running.cells[*running.cursor].planned);
        const PadCell* same = padCellOf(now, key);
        if (same != nullptr) {
            moveCursor(now, static_cast<std::size_t>(same - now.cells.data()));
        }
    }
    moveOn(now);
    return now;
}

void layHour(FloorSheet& sheet, const ClassFloor& hour, const std::set<CellKey>& eyes)
{
    for (FloorRow& row : sheet.rows) {
        if (const FloorPerson* who = person(hour, row.member)) {
            const FloorPlace place = placeNow(hour, *who);
            row.bib = place.bib;
            row.rack = place.rack;
            row.turn = place.turn;
            row.isEasyDay = who->isEasyDay();
        }
        for (std::size_t at = 0; at < row.cells.size(); ++at) {
            FloorCell& cell = row.cells[at];
            const FloorColumn& column = sheet.columns[at];
            const CellKey key{row.member, column.exercise, column.number, column.side};
            const PadCell* known = padCellOf(hour, key);
            const bool isOurs = known != nullptr && !cell.sides.isOver && !cell.sides.notToday;
            cell.notAsked = isOurs && !cell.done ? known->setAside : std::nullopt;
            cell.waits = known != nullptr && known->isOpen() && known->isHeld;
            cell.isWorthEyes = eyes.contains(key);
        }
    }
    std::stable_sort(sheet.rows.begin(), sheet.rows.end(), [](const auto& a, const auto& b) {
        return std::tie(a.rack, a.turn) < std::tie(b.rack, b.turn);
    });
}

FloorBook
readBook(const storage::Logbook& logbook, const FloorReference& reference, const FloorSheet& sheet)
{
    FloorBook book;
    book.kit = reference.kit; // less what is gone today
    book.day = sheet.day;
    book.scale = reference.effort;
    const auto details = storage::ExerciseDetailStore(logbook).all();
    const auto add = [&](const Exercise& exercise) {
        if (book.find(exercise.id) != nullptr) {
            return;
        }
        FloorExercise made;
        made.exercise = exercise;
        made.needs =
            exercise.implement == Implement::Barbell ? StationKind::Rack : StationKind::Open;
        const auto detail = details.find(exercise.id);
        if (detail != details.end()) {
            made.areas = detail->second.areas;
        }
        book.exercises.push_back(std::move(made));
    };
    // What the class does is proposed first.
    for (const FloorColumn& column : sheet.columns) {
        if (const Exercise* exercise = reference.library.exercise(column.exercise)) {
            add(*exercise);
        }
    }
    for (const Exercise& exercise : reference.library.exercises) {
        if (!exercise.isHidden) {
            add(exercise);
        }
    }
    return withLoads(std::move(book));
}

void addPerson(const storage::Logbook& logbook, MemberId member, FloorBook& book, HookHoles& holes)
{
    for (const DoneSet& set : storage::SetStore(logbook).ofMember(member)) {
        if (set.performed.day < book.day && set.performed.kind != SetKind::Ramp) {
            book.usualLoads.try_emplace({member, set.exercise}, set.performed.load);
        }
        if (set.hookHole) {
            holes.try_emplace({member, set.exercise}, *set.hookHole);
        }
    }
}

} // namespace levelbar::ui
