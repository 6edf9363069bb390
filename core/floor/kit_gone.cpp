// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/floor/kit_gone.h"

#include "core/floor/floor_order.h"
#include "core/floor/kit_in_use.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

namespace levelbar {

namespace {

using Places = std::vector<std::size_t>;

void noteHit(const ClassFloor& floor, const Places& cells, KitGone& gone)
{
    for (const std::size_t index : cells) {
        const MemberId member = floor.cells[index].planned.member;
        if (std::find(gone.hit.begin(), gone.hit.end(), member) == gone.hit.end()) {
            gone.hit.push_back(member);
        }
    }
    gone.sets = static_cast<int>(cells.size());
}

std::string namesOf(const ClassFloor& floor, const std::vector<MemberId>& members)
{
    std::string names;
    for (const MemberId member : members) {
        const FloorPerson* who = person(floor, member);
        names += (names.empty() ? "" : ", ") + (who == nullptr ? "" : calledOut(*who));
    }
    return names;
}

// A choice with the minutes it adds.
FloorChoice choice(const ClassFloor& before, const FloorBook& book, ClassFloor after, Phrase said)
{
    const int added = secondsLeft(after, book.turnSeconds) - secondsLeft(before, book.turnSeconds);
    sortCells(after);
    moveOn(after);
    const int minutes = static_cast<int>(std::lround(added / 60.0));
    return {said, minutes, {std::move(after), {}, said}};
}

int turnsAt(const ClassFloor& floor, int number, int fromRound)
{
    std::set<MemberId> people;
    for (const PadCell& cell : floor.cells) {
        if (cell.station == number && cell.round >= fromRound && !cell.setAside) {
            people.insert(cell.planned.member);
        }
    }
    return static_cast<int>(people.size());
}

int lastTurn(const ClassFloor& floor, int number)
{
    int last = 0;
    for (const PadCell& cell : floor.cells) {
        last = cell.station == number ? std::max(last, cell.turn) : last;
    }
    return last;
}

// Of a kind, the one with fewest people in the round; null when none is there.
const Station* emptiest(const ClassFloor& floor, StationKind kind)
{
    const Station* best = nullptr;
    for (const Station& one : floor.stations) {
        const bool isFewer = best == nullptr || turnsAt(floor, one.number, floor.round) <
                                                    turnsAt(floor, best->number, floor.round);
        best = one.isThere && one.kind == kind && isFewer ? &one : best;
    }
    return best;
}

// Everyone who is hit to the station of the kind with fewest people.
std::optional<ClassFloor>
shared(ClassFloor floor, const Places& cells, const std::vector<MemberId>& hit, StationKind kind)
{
    for (const MemberId member : hit) {
        const Station* best = emptiest(floor, kind);
        if (best == nullptr) {
            return std::nullopt;
        }
        const int turn = lastTurn(floor, best->number) + 1;
        for (const std::size_t index : cells) {
            if (floor.cells[index].planned.member == member) {
                floor.cells[index].station = best->number;
                floor.cells[index].turn = turn;
            }
        }
        if (FloorPerson* who = person(floor, member)) {
            who->station = best->number;
        }
    }
    return floor;
}

// Each set by another exercise, of its pattern if there is one, that needs nothing gone.
std::optional<ClassFloor> otherwise(ClassFloor floor, const FloorBook& book, const Places& cells)
{
    for (const std::size_t index : cells) {
        const PlannedSet& planned = floor.cells[index].planned;
        const FloorExercise* now = book.find(planned.exercise);
        bool isDone = false;
        for (const bool isSamePattern : {true, false}) {
            for (const FloorExercise& other : book.exercises) {
                isDone =
                    isDone || (now != nullptr && other.exercise.id != planned.exercise &&
                               (other.exercise.pattern == now->exercise.pattern) == isSamePattern &&
                               substitute(floor, book, index, other));
            }
        }
        if (!isDone) {
            return std::nullopt;
        }
    }
    return floor;
}

ClassFloor leftOut(ClassFloor floor, const Places& cells)
{
    for (const std::size_t index : cells) {
        floor.cells[index].setAside = NotAsked::NoKit;
    }
    return floor;
}

Station* find(ClassFloor& floor, int number)
{
    const auto found = std::find_if(floor.stations.begin(),
                                    floor.stations.end(),
                                    [number](const Station& one) { return one.number == number; });
    return found == floor.stations.end() ? nullptr : &*found;
}

void takeAway(ClassFloor& floor, const std::vector<Piece>& pieces)
{
    for (const Piece& piece : pieces) {
        const auto known =
            std::find_if(floor.missing.begin(), floor.missing.end(), [&piece](const Piece& one) {
                return one.implement == piece.implement && one.exact == piece.exact;
            });
        if (known == floor.missing.end()) {
            floor.missing.push_back(piece);
        } else {
            known->count += piece.count;
        }
    }
}

// Open cells whose load cannot be had any more.
Places withoutLoad(const ClassFloor& floor, const FloorBook& book)
{
    Places cells;
    for (std::size_t i = 0; i < floor.cells.size(); ++i) {
        if (floor.cells[i].isOpen() && !isFree(floor, book, i, floor.cells[i].planned.load)) {
            cells.push_back(i);
        }
    }
    return cells;
}

std::optional<ClassFloor> lighter(ClassFloor floor, const FloorBook& book, const Places& cells)
{
    for (const std::size_t index : cells) {
        const auto next = nextFreeLoad(floor, book, index, -1);
        if (!next) {
            return std::nullopt;
        }
        floor.cells[index].planned.load = *next;
    }
    return floor;
}

} // namespace

int secondsLeft(const ClassFloor& floor, int turnSeconds)
{
    std::map<int, std::map<int, int>> turns; // by round and station
    for (const PadCell& cell : floor.cells) {
        turns[cell.round][cell.station] += cell.isOpen() ? 1 : 0;
    }
    int seconds = 0;
    for (const auto& [round, stations] : turns) {
        int most = 0;
        for (const auto& [number, count] : stations) {
            most = std::max(most, count);
        }
        seconds += most * turnSeconds;
    }
    return seconds;
}

Result<KitGone> stationGone(const ClassFloor& floor, const FloorBook& book, int number)
{
    const Station* place = station(floor, number);
    if (place == nullptr) {
        return refuse(FaultCode::NoStation, {std::to_string(number)});
    }
    Places cells;
    for (std::size_t i = 0; i < floor.cells.size(); ++i) {
        if (floor.cells[i].isOpen() && floor.cells[i].station == number) {
            cells.push_back(i);
        }
    }
    KitGone gone;
    noteHit(floor, cells, gone);
    gone.said = {"Station %1 is gone: %2 sets of %3",
                 {std::to_string(number), std::to_string(gone.sets), namesOf(floor, gone.hit)}};
    if (gone.hit.empty()) {
        gone.said = {"Station %1 is gone; nobody needs it any more", {std::to_string(number)}};
    }
    ClassFloor without = floor;
    find(without, number)->isThere = false;
    if (auto after = shared(without, cells, gone.hit, place->kind)) {
        gone.choices.push_back(
            choice(floor, book, std::move(*after), {"Share the other stations", {}}));
    }
    ClassFloor cleared = floor;
    find(cleared, number)->kind = StationKind::Open;
    if (auto after = otherwise(cleared, book, cells)) {
        gone.choices.push_back(
            choice(floor, book, std::move(*after), {"Other exercises, same place", {}}));
    }
    gone.choices.push_back(
        choice(floor, book, leftOut(without, cells), {"Leave these sets out", {}}));
    return gone;
}

Result<KitGone> loadGone(const ClassFloor& floor, const FloorBook& book)
{
    if (!floor.cursor || !floor.cells[*floor.cursor].isOpen()) {
        return refuse(FaultCode::NoOpenSet);
    }
    const PlannedSet under = floor.cells[*floor.cursor].planned;
    const FloorExercise* exercise = book.find(under.exercise);
    const auto pieces =
        exercise == nullptr ? std::vector<Piece>{} : piecesFor(*exercise, under.load);
    if (pieces.empty()) {
        return refuse(FaultCode::NoFreeLoad);
    }
    ClassFloor without = floor;
    takeAway(without, pieces);
    const Places cells = withoutLoad(without, book);
    KitGone gone;
    noteHit(floor, cells, gone);
    gone.said = {"%1 is gone: %2 sets of %3",
                 {loadText(under.load), std::to_string(gone.sets), namesOf(floor, gone.hit)}};
    if (gone.hit.empty()) {
        gone.said = {"%1 is gone; nobody needs it any more", {loadText(under.load)}};
    }
    if (auto after = lighter(without, book, cells)) {
        gone.choices.push_back(
            choice(floor, book, std::move(*after), {"The next lighter load", {}}));
    }
    if (auto after = otherwise(without, book, cells)) {
        gone.choices.push_back(choice(floor, book, std::move(*after), {"Other exercises", {}}));
    }
    gone.choices.push_back(
        choice(floor, book, leftOut(without, cells), {"Leave these sets out", {}}));
    return gone;
}

} // namespace levelbar
