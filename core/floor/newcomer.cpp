// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/floor/newcomer.h"

#include "core/floor/floor_order.h"
#include "core/floor/substitutes.h"

#include <algorithm>
#include <map>
#include <set>

namespace levelbar {

namespace {

constexpr int kUsualReps = 8; // where nobody at the station has any

bool isForNewcomers(const Exercise& exercise)
{
    return exercise.implement == Implement::BodyWeight || exercise.implement == Implement::Dumbbell;
}

const Station* placeFor(const ClassFloor& floor)
{
    std::map<int, std::set<MemberId>> people;
    for (const PadCell& cell : floor.cells) {
        people[cell.station].insert(cell.planned.member);
    }
    const Station* best = nullptr;
    for (const bool isRack : {false, true}) {
        for (const Station& one : floor.stations) {
            const bool isFewer =
                best == nullptr || people[one.number].size() < people[best->number].size();
            const bool isOfKind = (one.kind == StationKind::Rack) == isRack;
            best = one.isThere && isOfKind && isFewer ? &one : best;
        }
        if (best != nullptr) {
            break; // beside a rack only where there is nothing else
        }
    }
    return best;
}

int turnAfterAll(const ClassFloor& floor, const PadCell& beside)
{
    int last = 0;
    for (const PadCell& cell : floor.cells) {
        const bool isThere = cell.station == beside.station && cell.round == beside.round;
        last = isThere ? std::max(last, cell.turn) : last;
    }
    return last + 1;
}

// The newcomer's cell beside what others do there in that round; nothing that suits: nothing.
std::optional<PadCell>
cellBeside(ClassFloor& floor, const FloorBook& book, const PadCell& beside, MemberId member)
{
    const FloorExercise* theirs = book.find(beside.planned.exercise);
    PadCell cell;
    cell.planned.meeting = book.meeting;
    cell.planned.member = member;
    cell.planned.amount = kUsualReps;
    cell.round = beside.round;
    cell.station = beside.station;
    cell.turn = turnAfterAll(floor, beside);
    for (const bool isSamePattern : {true, false}) {
        for (const FloorExercise& other : book.exercises) {
            const bool isSame =
                theirs != nullptr && other.exercise.pattern == theirs->exercise.pattern;
            if (!isForNewcomers(other.exercise) || isSame != isSamePattern) {
                continue;
            }
            floor.cells.push_back(cell);
            const bool canBe = substitute(floor, book, floor.cells.size() - 1, other);
            const PadCell made = floor.cells.back();
            floor.cells.pop_back();
            if (canBe) {
                return made;
            }
        }
    }
    return std::nullopt;
}

} // namespace

Result<FloorChange> addNewcomer(const ClassFloor& floor, const FloorBook& book, int bib)
{
    if (personWithBib(floor, bib) != nullptr) {
        return refuse(FaultCode::RepeatedBib, {std::to_string(bib)});
    }
    const Station* place = placeFor(floor);
    if (place == nullptr) {
        return refuse(FaultCode::NoStation, {"-"});
    }
    FloorChange change{floor, {}, {}};
    FloorPerson who;
    who.member = {-bib};
    who.bib = bib;
    who.station = place->number;
    who.isScreened = false;
    change.floor.people.push_back(who);
    std::set<int> rounds;
    for (const PadCell& beside : floor.cells) {
        const bool isHere = beside.station == place->number && beside.round >= floor.round;
        if (isHere && rounds.insert(beside.round).second) {
            if (const auto cell = cellBeside(change.floor, book, beside, who.member)) {
                change.floor.cells.push_back(*cell);
            }
        }
    }
    sortCells(change.floor);
    change.said = {"%1 is new, not screened: body weight and dumbbells at station %2",
                   {calledOut(who), std::to_string(place->number)}};
    return change;
}

const std::array<std::string_view, 3>& newcomerQuestions()
{
    static constexpr std::array<std::string_view, 3> kQuestions = {
        "Chest pain, fainting or breathlessness with effort?",
        "Told by a clinician to limit effort, or pregnant?",
        "Anything that hurts today?",
    };
    return kQuestions;
}

FloorChange
answerQuestions(const ClassFloor& floor, MemberId member, const std::array<bool, 3>& isYes)
{
    FloorChange change{floor, {}, {}};
    const FloorPerson* who = person(floor, member);
    const std::string name = who == nullptr ? "" : calledOut(*who);
    if (std::none_of(isYes.begin(), isYes.end(), [](bool yes) { return yes; })) {
        change.said = {"%1: three times no; still not screened", {name}};
        return change;
    }
    for (PadCell& cell : change.floor.cells) {
        if (cell.planned.member == member && cell.isOpen()) {
            cell.isHeld = true;
        }
    }
    change.said = {"%1 said yes: speak with them before any set", {name}};
    return change;
}

} // namespace levelbar
