// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/floor/substitutes.h"

#include "core/floor/floor_order.h"
#include "core/floor/kit_in_use.h"

#include <algorithm>
#include <functional>
#include <iterator>
#include <set>

namespace levelbar {

namespace {

bool stresses(const FloorBook& book, ExerciseId exercise, const std::string& area)
{
    const FloorExercise* found = book.find(exercise);
    return found != nullptr &&
           std::find(found->areas.begin(), found->areas.end(), area) != found->areas.end();
}

bool hurts(const FloorPerson& who, const FloorExercise& exercise)
{
    return std::any_of(who.pains.begin(), who.pains.end(), [&exercise](const SaidPain& pain) {
        return std::find(exercise.areas.begin(), exercise.areas.end(), pain.area) !=
               exercise.areas.end();
    });
}

// Sides that a cell can keep.
bool suitsSide(const Exercise& exercise, Side side)
{
    return exercise.sidedness == Sidedness::Either ||
           (exercise.sidedness == Sidedness::TwoSided) == (side == Side::Both);
}

std::optional<Mass> loadFor(const FloorBook& book, MemberId member, const FloorExercise& other)
{
    const Exercise& exercise = other.exercise;
    if (exercise.load != LoadKind::External) {
        return Mass{};
    }
    if (!other.loads) {
        return std::nullopt;
    }
    const AvailableLoads& loads = *other.loads;
    const auto usual = book.usualLoads.find({member, exercise.id});
    auto found =
        usual == book.usualLoads.end() ? loads.lightest() : loads.atMost(usual->second.kilograms());
    found = found ? found : loads.lightest();
    return found ? std::optional(found->load) : std::nullopt;
}

int nextNumber(const ClassFloor& floor, const PlannedSet& planned, ExerciseId exercise)
{
    int highest = 0;
    for (const PadCell& cell : floor.cells) {
        if (cell.planned.member == planned.member && cell.planned.exercise == exercise &&
            cell.planned.side == planned.side) {
            highest = std::max(highest, cell.planned.number);
        }
    }
    return highest + 1;
}

using Chosen = std::function<bool(const PadCell&)>;

// The hour with the other exercise in all chosen cells; nothing when one of them cannot take it.
std::optional<FloorChange> withOther(const ClassFloor& floor,
                                     const FloorBook& book,
                                     const Chosen& isChosen,
                                     const FloorExercise& other)
{
    FloorChange change{floor, {}, {}};
    int changed = 0;
    for (std::size_t i = 0; i < floor.cells.size(); ++i) {
        if (isChosen(floor.cells[i])) {
            if (!substitute(change.floor, book, i, other)) {
                return std::nullopt;
            }
            ++changed;
        }
    }
    if (changed == 0) {
        return std::nullopt;
    }
    change.said = {"%1, %2 sets", {other.exercise.name, std::to_string(changed)}};
    return change;
}

std::vector<FloorChoice> choicesFor(const ClassFloor& floor,
                                    const FloorBook& book,
                                    const FloorPerson& who,
                                    const Chosen& isChosen)
{
    const auto first = std::find_if(floor.cells.begin(), floor.cells.end(), isChosen);
    const FloorExercise* now =
        first == floor.cells.end() ? nullptr : book.find(first->planned.exercise);
    if (now == nullptr) {
        return {};
    }
    std::vector<FloorChoice> choices;
    const auto offer = [&](const FloorExercise& other) {
        if (choices.size() == kMostChoices || other.exercise.id == now->exercise.id ||
            hurts(who, other)) {
            return false;
        }
        auto change = withOther(floor, book, isChosen, other);
        if (change) {
            moveOn(change->floor);
            choices.push_back({{"%1", {other.exercise.name}}, 0, std::move(*change)});
        }
        return change.has_value();
    };
    for (const FloorExercise& other : book.exercises) {
        if (other.exercise.pattern == now->exercise.pattern) {
            offer(other);
        }
    }
    std::set<Pattern> seen{now->exercise.pattern};
    for (const FloorExercise& other : book.exercises) {
        if (seen.count(other.exercise.pattern) == 0 && offer(other)) {
            seen.insert(other.exercise.pattern);
        }
    }
    return choices;
}

} // namespace

bool substitute(ClassFloor& floor,
                const FloorBook& book,
                std::size_t index,
                const FloorExercise& other)
{
    PadCell cell = floor.cells[index];
    const Station* place = station(floor, cell.station);
    const bool canStand =
        other.needs == StationKind::Open || (place != nullptr && place->kind == other.needs);
    const auto load = loadFor(book, cell.planned.member, other);
    if (!canStand || !load || !suitsSide(other.exercise, cell.planned.side) ||
        other.exercise.amount != AmountKind::Reps) {
        return false;
    }
    // Seconds and metres are no reps.
    const FloorExercise* now = book.find(cell.planned.exercise);
    if (now != nullptr && now->exercise.amount != AmountKind::Reps) {
        cell.planned.amount.reset();
    }
    cell.planned.number = nextNumber(floor, cell.planned, other.exercise.id);
    cell.planned.exercise = other.exercise.id;
    cell.planned.load = *load;
    cell.planned.isNew = book.usualLoads.count({cell.planned.member, other.exercise.id}) == 0;
    cell.kind = SetKind::Work;
    cell.isHeld = false;
    const PadCell before = floor.cells[index];
    floor.cells[index] = cell;
    if (!isFree(floor, book, index, *load)) {
        floor.cells[index] = before;
        return false;
    }
    return true;
}

Result<FloorChange>
notePain(const ClassFloor& floor, const FloorBook& book, MemberId member, const SaidPain& pain)
{
    FloorChange change{floor, {}, {}};
    FloorPerson* who = person(change.floor, member);
    if (who == nullptr) {
        return refuse(FaultCode::UnknownMember, {std::to_string(member.value)});
    }
    who->pains.push_back(pain);
    PadCell* last = nullptr;
    for (PadCell& cell : change.floor.cells) {
        if (cell.planned.member != member || !stresses(book, cell.planned.exercise, pain.area)) {
            continue;
        }
        cell.isHeld = cell.isOpen();
        if (cell.done &&
            (last == nullptr || last->done->performed.order < cell.done->performed.order)) {
            last = &cell;
        }
    }
    if (last != nullptr) {
        last->done->performed.pain = pain.score;
        last->done->performed.stopped = StopReason::Pain;
        last->done->painArea = pain.area;
        last->done->painSide = pain.side;
        change.recorded = {*last->done};
    }
    const bool isOneSided = pain.side != Side::Both;
    change.said = {
        isOneSided ? "%1: pain %2, %3 %4. Stop the set" : "%1: pain %2, %3. Stop the set",
        {calledOut(*who), std::to_string(pain.score), pain.area, std::string(sideWord(pain.side))}};
    return change;
}

std::vector<FloorChoice> painChoices(const ClassFloor& floor,
                                     const FloorBook& book,
                                     MemberId member,
                                     const std::string& area)
{
    const FloorPerson* who = person(floor, member);
    if (who == nullptr) {
        return {};
    }
    const auto waits = [&](const PadCell& cell) {
        return cell.isOpen() && cell.planned.member == member &&
               stresses(book, cell.planned.exercise, area);
    };
    auto choices = choicesFor(floor, book, *who, waits);
    const auto first = std::find_if(floor.cells.begin(), floor.cells.end(), waits);
    if (choices.empty() && first != floor.cells.end()) {
        // Nothing suits all, as where some are done with both hands and some with one.
        const ExerciseId exercise = first->planned.exercise;
        choices = choicesFor(floor, book, *who, [&](const PadCell& cell) {
            return waits(cell) && cell.planned.exercise == exercise;
        });
    }
    return choices;
}

FloorChange leaveOutHeld(const ClassFloor& floor, MemberId member)
{
    FloorChange change{floor, {}, {}};
    int left = 0;
    for (PadCell& cell : change.floor.cells) {
        if (cell.isHeld && cell.isOpen() && cell.planned.member == member) {
            cell.setAside = NotAsked::Pain;
            cell.isHeld = false;
            ++left;
        }
    }
    change.said = {"%1 sets left out", {std::to_string(left)}};
    moveOn(change.floor);
    return change;
}

namespace {

// Open sets of somebody that stress what hurt in a set, unless they went on with it afterwards.
void spare(const std::vector<PadCell*>& theirs, const FloorBook& book, const DoneSet& hurt)
{
    std::vector<PadCell*> stressing;
    std::copy_if(
        theirs.begin(), theirs.end(), std::back_inserter(stressing), [&](const PadCell* cell) {
            return stresses(book, cell->planned.exercise, hurt.painArea);
        });
    const bool wentOn = std::any_of(stressing.begin(), stressing.end(), [&](const PadCell* cell) {
        return cell->done && cell->done->performed.order > hurt.performed.order;
    });
    for (PadCell* cell : stressing) {
        if (!wentOn && cell->isOpen()) {
            cell->setAside = NotAsked::Pain;
        }
    }
}

} // namespace

ClassFloor rememberingPain(ClassFloor floor, const FloorBook& book)
{
    for (FloorPerson& who : floor.people) {
        std::vector<PadCell*> theirs;
        for (PadCell& cell : floor.cells) {
            if (cell.planned.member == who.member) {
                theirs.push_back(&cell);
            }
        }
        for (const PadCell* cell : theirs) {
            if (cell->done && cell->done->performed.pain && !cell->done->painArea.empty()) {
                const DoneSet& hurt = *cell->done;
                who.pains.push_back(
                    {*hurt.performed.pain, hurt.painArea, hurt.painSide.value_or(Side::Both)});
                spare(theirs, book, hurt);
            }
        }
    }
    moveOn(floor);
    return floor;
}

std::vector<FloorChoice> otherExercises(const ClassFloor& floor, const FloorBook& book)
{
    if (!floor.cursor || !floor.cells[*floor.cursor].isOpen()) {
        return {};
    }
    const PlannedSet under = floor.cells[*floor.cursor].planned;
    const FloorPerson* who = person(floor, under.member);
    if (who == nullptr) {
        return {};
    }
    return choicesFor(floor, book, *who, [under](const PadCell& cell) {
        return cell.isOpen() && cell.planned.member == under.member &&
               cell.planned.exercise == under.exercise;
    });
}

} // namespace levelbar
