// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/floor/number_pad.h"

#include "core/floor/floor_order.h"
#include "core/floor/newcomer.h"
#include "core/floor/pad_verbs.h"

#include <algorithm>
#include <utility>

namespace levelbar {

namespace {

constexpr std::string_view kKeys = "0123456789.,*/+-cegklnpstu";

PadOutcome refused(NumberPad pad, Fault fault)
{
    PadOutcome outcome;
    outcome.pad = std::move(pad);
    outcome.pad.isRefused = true;
    outcome.refused = std::move(fault);
    return outcome;
}

PadOutcome said(NumberPad pad, Phrase phrase)
{
    PadOutcome outcome;
    outcome.pad = std::move(pad);
    outcome.said = {std::move(phrase)};
    return outcome;
}

PadOutcome changed(NumberPad pad, FloorChange change)
{
    pad.steps.push_back(
        {std::make_shared<const ClassFloor>(std::move(pad.floor)), change.recorded, change.said});
    pad.floor = std::move(change.floor);
    PadOutcome outcome = said(std::move(pad), change.said);
    outcome.recorded = std::move(change.recorded);
    return outcome;
}

bool isSameSet(const DoneSet& a, const DoneSet& b)
{
    return a.member == b.member && a.exercise == b.exercise && a.side == b.side &&
           a.performed.number == b.performed.number;
}

PadOutcome takeBack(NumberPad pad)
{
    // A question about kit or another exercise has changed nothing yet.
    const bool isOnlyAsked =
        pad.question && (pad.question->kind == PadQuestion::Kind::KitGone ||
                         pad.question->kind == PadQuestion::Kind::OtherExercise);
    pad.question.reset();
    if (isOnlyAsked) {
        return said(std::move(pad), {"Nothing changed", {}});
    }
    if (pad.steps.empty()) {
        return refused(std::move(pad), {FaultCode::NothingToTakeBack, {}});
    }
    const PadStep step = std::move(pad.steps.back());
    pad.steps.pop_back();
    pad.floor = *step.before;
    PadOutcome outcome;
    outcome.takenBack = step.recorded;
    for (const PadCell& cell : pad.floor.cells) {
        const bool wasThere =
            cell.done &&
            std::any_of(step.recorded.begin(), step.recorded.end(), [&cell](const DoneSet& set) {
                return isSameSet(set, *cell.done);
            });
        if (wasThere) {
            outcome.restored.push_back(*cell.done);
        }
    }
    outcome.pad = std::move(pad);
    outcome.said = {{"Taken back:", {}}, step.said};
    return outcome;
}

// What a question is asked with: its choices by number.
void sayChoices(PadOutcome& outcome)
{
    const PadQuestion& question = *outcome.pad.question;
    if (question.kind == PadQuestion::Kind::Newcomer) {
        for (const std::string_view asked : newcomerQuestions()) {
            outcome.said.push_back({asked, {}});
        }
        return;
    }
    for (std::size_t i = 0; i < question.choices.size(); ++i) {
        const FloorChoice& one = question.choices[i];
        outcome.said.push_back({"%1:", {std::to_string(i + 1)}});
        outcome.said.push_back(one.said);
        if (one.minutes != 0) {
            outcome.said.push_back({one.minutes > 0 ? "%1 min longer" : "%1 min shorter",
                                    {std::to_string(std::abs(one.minutes))}});
        }
    }
}

PadOutcome obey(NumberPad pad, const FloorBook& book, const PadCommand& command, PadTime time)
{
    if (command.verb == PadVerb::TakeBack) {
        return takeBack(std::move(pad));
    }
    auto answer = answerTo(pad.floor, book, command, time);
    if (!answer) {
        return refused(std::move(pad), answer.error());
    }
    pad.typed.clear();
    PadOutcome outcome = answer->isChange ? changed(std::move(pad), std::move(answer->change))
                                          : said(std::move(pad), answer->change.said);
    if (!answer->isChange) {
        outcome.pad.floor = std::move(answer->change.floor);
    }
    if (answer->question) {
        outcome.pad.question = std::move(answer->question);
        sayChoices(outcome);
    }
    return outcome;
}

// Digits while a question is open.
PadOutcome decide(NumberPad pad, const std::string& typed)
{
    const PadQuestion question = *pad.question;
    const std::string most = std::to_string(question.choices.size());
    if (question.kind == PadQuestion::Kind::Newcomer) {
        const bool isAnswer =
            typed.size() == 3 && typed.find_first_not_of("01") == std::string::npos;
        if (!isAnswer && !typed.empty()) {
            return refused(std::move(pad), {FaultCode::ThreeAnswers, {excerpt(typed)}});
        }
        pad.question.reset();
        if (typed.empty()) {
            return said(std::move(pad), {"Not asked; not screened", {}});
        }
        FloorChange change = answerQuestions(
            pad.floor, question.member, {typed[0] == '1', typed[1] == '1', typed[2] == '1'});
        return changed(std::move(pad), std::move(change));
    }
    if (question.kind == PadQuestion::Kind::WhyLeft && typed.empty()) {
        pad.question.reset();
        return said(std::move(pad), {"Not said why", {}});
    }
    const bool isNumber = typed.size() == 1 && typed[0] >= '0' && typed[0] <= '9';
    const std::size_t picked = isNumber ? static_cast<std::size_t>(typed[0] - '0') : 10;
    if (picked > question.choices.size()) {
        return refused(std::move(pad), {FaultCode::ChooseFirst, {most}});
    }
    pad.question.reset();
    if (picked > 0) {
        return changed(std::move(pad), question.choices[picked - 1].change);
    }
    if (question.kind == PadQuestion::Kind::Pain) {
        FloorChange change = leaveOutHeld(pad.floor, question.member);
        return changed(std::move(pad), std::move(change));
    }
    return said(std::move(pad), {"Nothing changed", {}});
}

PadOutcome enter(NumberPad pad, const FloorBook& book, const PadTime& time)
{
    const std::string typed = pad.typed;
    const auto command = parsePadEntry(typed, book.scale);
    const bool isTakingBack = command && command->verb == PadVerb::TakeBack;
    PadOutcome outcome;
    // Why somebody left can wait: any other word goes before it.
    const bool isAnotherWord = command && command->verb != PadVerb::Enter;
    if (pad.question && pad.question->kind == PadQuestion::Kind::WhyLeft && isAnotherWord) {
        pad.question.reset();
    }
    if (pad.question && !isTakingBack) {
        outcome = decide(std::move(pad), typed);
    } else if (!command) {
        outcome = refused(std::move(pad), command.error());
    } else {
        outcome = obey(std::move(pad), book, *command, time);
    }
    if (!outcome.refused) {
        outcome.pad.typed.clear();
    }
    return outcome;
}

} // namespace

NumberPad openPad(ClassFloor floor)
{
    NumberPad pad;
    pad.floor = std::move(floor);
    pad.floor.cursor.reset();
    sortCells(pad.floor);
    moveCursor(pad.floor, openCell(pad.floor));
    return pad;
}

PadOutcome press(NumberPad pad, const FloorBook& book, const PadKey& key, const PadTime& time)
{
    PadOutcome outcome;
    if (key.isRepeat && key.kind != PadKey::Kind::Erase) {
        outcome.pad = std::move(pad);
        return outcome;
    }
    const bool wasRefused = std::exchange(pad.isRefused, false);
    switch (key.kind) {
    case PadKey::Kind::Enter:
        return enter(std::move(pad), book, time);
    case PadKey::Kind::Erase:
        if (!pad.typed.empty()) {
            pad.typed.pop_back();
        }
        break;
    case PadKey::Kind::Abandon:
        // What a newcomer is asked before the first set is not put away by a slip.
        if (pad.typed.empty() && pad.question &&
            pad.question->kind != PadQuestion::Kind::Newcomer) {
            pad.question.reset();
        }
        pad.typed.clear();
        break;
    case PadKey::Kind::Character:
        if (kKeys.find(key.character) == std::string_view::npos) {
            return refused(std::move(pad),
                           {FaultCode::NotAPadEntry, {std::string(1, key.character)}});
        }
        if (wasRefused) {
            pad.typed.clear(); // begun anew; the last character can still be taken off instead
        }
        pad.typed.push_back(key.character);
        if (isDoneAtOnce(pad.typed)) {
            outcome = enter(std::move(pad), book, time);
            outcome.pad.typed.clear(); // nothing to go on typing from
            return outcome;
        }
        break;
    }
    outcome.pad = std::move(pad);
    return outcome;
}

} // namespace levelbar
