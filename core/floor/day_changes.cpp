// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/floor/day_changes.h"

#include "core/floor/floor_order.h"
#include "core/gym/available_loads.h"

#include <algorithm>
#include <cmath>
#include <tuple>

namespace levelbar {

namespace {

std::vector<PadCell*> openCells(ClassFloor& floor, MemberId member)
{
    std::vector<PadCell*> open;
    for (PadCell& cell : floor.cells) {
        if (cell.isOpen() && cell.planned.member == member) {
            open.push_back(&cell);
        }
    }
    return open;
}

std::string nameOf(const ClassFloor& floor, MemberId member)
{
    const FloorPerson* found = person(floor, member);
    return found == nullptr ? "" : calledOut(*found);
}

auto nothingLeft(const ClassFloor& floor, MemberId member)
{
    return refuse(FaultCode::NothingLeft, {nameOf(floor, member)});
}

// The lighter load that exists nearest to nine tenths.
std::optional<Mass> easierLoad(const FloorBook& book, const PadCell& cell)
{
    const FloorExercise* found = book.find(cell.planned.exercise);
    if (found == nullptr || !found->loads || cell.planned.load.thousandths() <= 0) {
        return std::nullopt;
    }
    const AvailableLoads& loads = *found->loads;
    const double aim = kEasyDayShare * cell.planned.load.kilograms();
    const auto under = loads.atMost(aim);
    const auto over = under ? loads.above(under->load) : loads.lightest();
    const bool isOverLighter = over && over->exact < exactWeight(cell.planned.load);
    if (isOverLighter && (!under || over->kilograms() - aim < aim - under->kilograms())) {
        return over->load;
    }
    return under ? std::optional(under->load) : std::nullopt;
}

void easeCell(const FloorBook& book, PadCell& cell)
{
    if (const auto load = easierLoad(book, cell)) {
        cell.planned.load = *load;
    } else if (cell.planned.amount) {
        const int less = static_cast<int>(std::floor(kEasyDayShare * *cell.planned.amount));
        cell.planned.amount = std::max(1, less);
    }
}

// The last open set of each exercise and side, where another stays.
int dropLastSets(const std::vector<PadCell*>& open)
{
    int dropped = 0;
    for (PadCell* cell : open) {
        const auto key = [](const PadCell* one) {
            return std::tuple(one->planned.exercise, one->planned.side, one->kind);
        };
        const auto isSame = [cell, &key](const PadCell* other) { return key(other) == key(cell); };
        const auto last = std::find_if(open.rbegin(), open.rend(), isSame);
        if (*last == cell && std::count_if(open.begin(), open.end(), isSame) > 1) {
            cell->setAside = NotAsked::EasyDay;
            ++dropped;
        }
    }
    return dropped;
}

// All warm-up sets between the lightest and the last of each exercise and side.
void shortenWarmUp(const std::vector<PadCell*>& open)
{
    std::vector<PadCell*> warm;
    std::copy_if(open.begin(), open.end(), std::back_inserter(warm), [](const PadCell* cell) {
        return cell->kind == SetKind::Ramp && !cell->setAside;
    });
    for (PadCell* cell : warm) {
        const auto isSame = [cell](const PadCell* other) {
            return other->planned.exercise == cell->planned.exercise &&
                   other->planned.side == cell->planned.side;
        };
        const auto first = std::find_if(warm.begin(), warm.end(), isSame);
        const auto last = std::find_if(warm.rbegin(), warm.rend(), isSame);
        if (*first != cell && *last != cell) {
            cell->setAside = NotAsked::ShorterWarmUp;
        }
    }
}

// What dropLastSets() dropped then: of the sets that were open at that moment.
void dropLastAgain(ClassFloor& floor, MemberId member, Moment at)
{
    std::vector<PadCell*> open;
    for (PadCell& cell : floor.cells) {
        const bool wasOpen =
            cell.isOpen() || (cell.done && cell.done->keyedAt && *cell.done->keyedAt > at);
        if (cell.planned.member == member && wasOpen) {
            open.push_back(&cell);
        }
    }
    dropLastSets(open);
    for (PadCell* cell : open) {
        if (cell->done) {
            cell->setAside.reset(); // lifted all the same
        }
    }
}

} // namespace

ClassFloor remembering(ClassFloor floor, const RememberedPerson& remembered)
{
    FloorPerson* who = person(floor, remembered.member);
    if (who == nullptr) {
        return floor;
    }
    if (remembered.easyAt) {
        who->easyAt = remembered.easyAt;
        dropLastAgain(floor, remembered.member, *remembered.easyAt);
    }
    if (remembered.minutesLate) {
        who->minutesLate = remembered.minutesLate; // also of whom nothing is open
        if (auto late = comeLate(floor, remembered.member, *remembered.minutesLate)) {
            floor = std::move(late->floor);
        }
    }
    if (remembered.leftMinute) {
        const LeftWhy why = remembered.leftWhy;
        if (auto left = leave(floor, remembered.member, *remembered.leftMinute, why)) {
            floor = std::move(left->floor);
        }
    }
    moveOn(floor);
    return floor;
}

Result<FloorChange>
makeEasyDay(const ClassFloor& floor, const FloorBook& book, MemberId member, Moment at)
{
    FloorChange change{floor, {}, {}};
    const auto open = openCells(change.floor, member);
    FloorPerson* who = person(change.floor, member);
    if (open.empty() || who == nullptr || who->isEasyDay()) {
        return nothingLeft(floor, member);
    }
    who->easyAt = at;
    for (PadCell* cell : open) {
        easeCell(book, *cell);
    }
    const int dropped = dropLastSets(open);
    change.said = {dropped == 1 ? "%1: easy day, about a tenth less, %2 set fewer"
                                : "%1: easy day, about a tenth less, %2 sets fewer",
                   {calledOut(*who), std::to_string(dropped)}};
    moveOn(change.floor);
    return change;
}

Result<FloorChange> comeLate(const ClassFloor& floor, MemberId member, int minutes)
{
    FloorChange change{floor, {}, {}};
    const auto open = openCells(change.floor, member);
    FloorPerson* who = person(change.floor, member);
    if (open.empty() || who == nullptr) {
        return nothingLeft(floor, member);
    }
    who->minutesLate = minutes;
    const bool isVeryLate = minutes > kVeryLateMinutes;
    for (PadCell* cell : open) {
        const auto round = static_cast<std::size_t>(cell->round) - 1;
        if (round < floor.roundEnds.size() && floor.roundEnds[round] <= minutes) {
            cell->setAside = NotAsked::NotYetHere;
        } else if (isVeryLate && cell->kind == SetKind::Test) {
            cell->setAside = NotAsked::NoMaximum;
        }
    }
    if (isVeryLate) {
        shortenWarmUp(open);
    }
    change.said = {isVeryLate ? "%1: %2 min late; short warm-up, no maximum today"
                              : "%1: %2 min late",
                   {calledOut(*who), std::to_string(minutes)}};
    moveOn(change.floor);
    return change;
}

Result<FloorChange> leave(const ClassFloor& floor, MemberId member, int minute, LeftWhy why)
{
    FloorChange change{floor, {}, {}};
    FloorPerson* who = person(change.floor, member);
    if (who == nullptr || (who->hasLeft() && why == LeftWhy::NotSaid)) {
        return nothingLeft(floor, member);
    }
    who->leftMinute = who->leftMinute.value_or(minute);
    who->leftWhy = why;
    for (PadCell* cell : openCells(change.floor, member)) {
        cell->setAside = NotAsked::Left;
    }
    change.said = why == LeftWhy::NotSaid
                      ? Phrase{"%1 has left; nothing of theirs is open", {calledOut(*who)}}
                      : Phrase{"%1 has left (%2); nothing of theirs is open",
                               {calledOut(*who), std::string(leftWhyText(why))}};
    moveOn(change.floor);
    return change;
}

Result<FloorChange> swapTurns(const ClassFloor& floor, MemberId member, MemberId other)
{
    FloorChange change{floor, {}, {}};
    int swapped = 0;
    for (PadCell* mine : openCells(change.floor, member)) {
        for (PadCell* theirs : openCells(change.floor, other)) {
            const bool isTogether =
                mine->round == theirs->round && mine->station == theirs->station;
            if (isTogether && mine->planned.member != theirs->planned.member) {
                ++swapped;
                std::swap(mine->turn, theirs->turn);
                break;
            }
        }
    }
    if (swapped == 0) {
        return nothingLeft(floor, other);
    }
    sortCells(change.floor);
    change.said = {"%1 and %2 change turns", {nameOf(floor, member), nameOf(floor, other)}};
    return change;
}

} // namespace levelbar
