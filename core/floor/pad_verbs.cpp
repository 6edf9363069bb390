// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/floor/pad_verbs.h"

#include "core/floor/catch_up.h"
#include "core/floor/day_changes.h"
#include "core/floor/floor_order.h"
#include "core/floor/kit_gone.h"
#include "core/floor/kit_in_use.h"
#include "core/floor/set_entry.h"

#include <array>

namespace levelbar {

namespace {

using Answer = Result<PadAnswer>;

Answer fromChange(Result<FloorChange> change)
{
    if (!change) {
        return tl::unexpected(change.error());
    }
    return PadAnswer{std::move(*change), true, std::nullopt};
}

// The one whose set is under the cursor.
std::optional<MemberId> memberUnder(const ClassFloor& floor)
{
    return floor.cursor ? std::optional(floor.cells[*floor.cursor].planned.member) : std::nullopt;
}

PadAnswer movedTo(const ClassFloor& floor, std::size_t cell)
{
    PadAnswer answer{{floor, {}, {}}, false, std::nullopt};
    moveCursor(answer.change.floor, cell);
    const PadCell& at = floor.cells[cell];
    const FloorPerson* who = person(floor, at.planned.member);
    answer.change.said = {"Station %1, round %2: %3",
                          {std::to_string(at.station),
                           std::to_string(at.round),
                           who == nullptr ? "" : calledOut(*who)}};
    return answer;
}

Answer goToStation(const ClassFloor& floor, int number)
{
    if (station(floor, number) == nullptr) {
        return refuse(FaultCode::NoStation, {std::to_string(number)});
    }
    const auto cell = openCellAt(floor, number);
    return cell ? Answer(movedTo(floor, *cell)) : Answer(refuse(FaultCode::NoOpenSet));
}

Answer goToBib(const ClassFloor& floor, int bib)
{
    const FloorPerson* who = personWithBib(floor, bib);
    if (who == nullptr) {
        return refuse(FaultCode::NoBib, {std::to_string(bib)});
    }
    const auto cell = openCellOf(floor, who->member);
    return cell ? Answer(movedTo(floor, *cell)) : Answer(refuse(FaultCode::NoOpenSet));
}

Answer catchUp(const ClassFloor& floor, int minute)
{
    const auto due = dueBy(floor, minute);
    if (due.empty()) {
        return refuse(FaultCode::NoOpenSet);
    }
    PadAnswer answer = movedTo(floor, due.front());
    answer.change.said = {"%1 sets should be done by now", {std::to_string(due.size())}};
    return answer;
}

Answer stepLoad(const ClassFloor& floor, const FloorBook& book, int direction)
{
    if (!floor.cursor || !floor.cells[*floor.cursor].isOpen()) {
        return refuse(FaultCode::NoOpenSet);
    }
    const auto next = nextFreeLoad(floor, book, *floor.cursor, direction);
    if (!next) {
        return refuse(FaultCode::NoFreeLoad);
    }
    const PlannedSet under = floor.cells[*floor.cursor].planned;
    FloorChange change{floor, {}, {}};
    int sets = 0;
    for (std::size_t i = 0; i < floor.cells.size(); ++i) {
        PadCell& cell = change.floor.cells[i];
        const bool isSame = cell.isOpen() && cell.planned.member == under.member &&
                            cell.planned.exercise == under.exercise &&
                            cell.planned.side == under.side && cell.planned.load == under.load;
        if (isSame && isFree(floor, book, i, *next)) {
            cell.planned.load = *next;
            ++sets;
        }
    }
    const FloorPerson* who = person(floor, under.member);
    change.said = {"%1: %2 from now on, %3 sets",
                   {who == nullptr ? "" : calledOut(*who), loadText(*next), std::to_string(sets)}};
    return PadAnswer{std::move(change), true, std::nullopt};
}

Answer pain(const ClassFloor& floor, const FloorBook& book, MemberId member, const PadPain& said)
{
    const std::string area(said.area);
    auto answer = fromChange(notePain(floor, book, member, {said.score, area, said.side}));
    if (!answer) {
        return answer;
    }
    const ClassFloor& after = answer->change.floor;
    bool isHeld = false;
    for (const PadCell& cell : after.cells) {
        isHeld = isHeld || (cell.planned.member == member && cell.isHeld && cell.isOpen());
    }
    if (isHeld) {
        answer->question =
            PadQuestion{PadQuestion::Kind::Pain, member, painChoices(after, book, member, area)};
    }
    return answer;
}

Answer otherExercise(const ClassFloor& floor, const FloorBook& book, MemberId member)
{
    auto choices = otherExercises(floor, book);
    if (choices.empty()) {
        return refuse(FaultCode::NoOpenSet);
    }
    PadAnswer answer{{floor, {}, {"Instead of this exercise", {}}}, false, std::nullopt};
    answer.question = PadQuestion{PadQuestion::Kind::OtherExercise, member, std::move(choices)};
    return answer;
}

Answer swap(const ClassFloor& floor, MemberId member, int bib)
{
    const FloorPerson* other = personWithBib(floor, bib);
    if (other == nullptr) {
        return refuse(FaultCode::NoBib, {std::to_string(bib)});
    }
    return fromChange(swapTurns(floor, member, other->member));
}

Answer ask(const ClassFloor& floor, Result<KitGone> gone)
{
    if (!gone) {
        return tl::unexpected(gone.error());
    }
    PadAnswer answer{{floor, {}, gone->said}, false, std::nullopt};
    answer.question = PadQuestion{PadQuestion::Kind::KitGone, {}, std::move(gone->choices)};
    return answer;
}

Answer newcomer(const ClassFloor& floor, const FloorBook& book, int bib)
{
    auto answer = fromChange(addNewcomer(floor, book, bib));
    if (answer) {
        answer->question = PadQuestion{PadQuestion::Kind::Newcomer, {-bib}, {}};
    }
    return answer;
}

constexpr std::array kWhyLeft = {LeftWhy::HadToGo, LeftWhy::Unwell, LeftWhy::Pain, LeftWhy::Other};

Answer left(const ClassFloor& floor, MemberId member, std::optional<int> number, int minute)
{
    if (number) {
        if (*number < 1 || *number > static_cast<int>(kWhyLeft.size())) {
            return refuse(FaultCode::OutOfRange,
                          {std::to_string(*number), "1", std::to_string(kWhyLeft.size())});
        }
        const auto at = static_cast<std::size_t>(*number) - 1;
        return fromChange(leave(floor, member, minute, kWhyLeft.at(at)));
    }
    auto answer = fromChange(leave(floor, member, minute));
    if (answer) {
        answer->question = PadQuestion{PadQuestion::Kind::WhyLeft, member, {}};
        for (const LeftWhy why : kWhyLeft) {
            FloorChoice choice;
            choice.change = leave(answer->change.floor, member, minute, why).value();
            choice.said = {leftWhyText(why), {}};
            answer->question->choices.push_back(std::move(choice));
        }
    }
    return answer;
}

// Commands about the person under the cursor.
Answer aboutPerson(const ClassFloor& floor,
                   const FloorBook& book,
                   const PadCommand& command,
                   const PadTime& time)
{
    const auto member = memberUnder(floor);
    if (!member) {
        return refuse(FaultCode::NoOpenSet);
    }
    switch (command.verb) {
    case PadVerb::EasyDay:
        return fromChange(makeEasyDay(floor, book, *member, time.at));
    case PadVerb::Late:
        return fromChange(comeLate(floor, *member, command.number.value_or(time.minute)));
    case PadVerb::Leave:
        return left(floor, *member, command.number, time.minute);
    case PadVerb::OtherExercise:
        return otherExercise(floor, book, *member);
    case PadVerb::SwapTurns:
        return swap(floor, *member, command.number.value_or(0));
    default:
        return pain(floor, book, *member, command.pain.value_or(PadPain{}));
    }
}

} // namespace

Result<PadAnswer> answerTo(const ClassFloor& floor,
                           const FloorBook& book,
                           const PadCommand& command,
                           const PadTime& time)
{
    const int number = command.number.value_or(0);
    switch (command.verb) {
    case PadVerb::Enter:
        return fromChange(keySet(floor, book, command.cell, time.at));
    case PadVerb::RoundAsPlanned:
        return fromChange(keyRound(floor, book, time.at));
    case PadVerb::NotClean:
        return fromChange(turnClean(floor));
    case PadVerb::GoToStation:
        return goToStation(floor, number);
    case PadVerb::GoToBib:
        return goToBib(floor, number);
    case PadVerb::CatchUp:
        return catchUp(floor, time.minute);
    case PadVerb::LoadUp:
        return stepLoad(floor, book, 1);
    case PadVerb::LoadDown:
        return stepLoad(floor, book, -1);
    case PadVerb::StationGone:
        return ask(floor, stationGone(floor, book, number));
    case PadVerb::LoadGone:
        return ask(floor, loadGone(floor, book));
    case PadVerb::Newcomer:
        return newcomer(floor, book, number);
    default:
        return aboutPerson(floor, book, command, time);
    }
}

} // namespace levelbar
