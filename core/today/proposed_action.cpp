// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/today/proposed_action.h"

#include "core/base/words.h"

namespace levelbar {

namespace {

constexpr int kOftenPainful = 3; // sets in four weeks; common practice, no source

constexpr Words<ProposedAction, 13> kActions = {
    {{ProposedAction::AskBefore, "ask_before"},
     {ProposedAction::LeaveOutAndAsk, "leave_out_and_ask"},
     {ProposedAction::CheckAgain, "check_again"},
     {ProposedAction::WeakerFirst, "weaker_first"},
     {ProposedAction::SendOn, "send_on"},
     {ProposedAction::HoldAndAsk, "hold_and_ask"},
     {ProposedAction::ChangeOneThing, "change_one_thing"},
     {ProposedAction::GetInTouch, "get_in_touch"},
     {ProposedAction::PlanUsualWeek, "plan_usual_week"},
     {ProposedAction::BookTest, "book_test"},
     {ProposedAction::AskForRenewal, "ask_for_renewal"},
     {ProposedAction::NoMaximalTests, "no_maximal_tests"},
     {ProposedAction::LowerLoad, "lower_load"}}};

ProposedAction imbalanceAction(SideTier tier)
{
    switch (tier) {
    case SideTier::Act:
        return ProposedAction::WeakerFirst;
    case SideTier::SendOn:
        return ProposedAction::SendOn;
    case SideTier::Look:
    case SideTier::None:
        break;
    }
    return ProposedAction::CheckAgain;
}

std::string_view actionTemplate(ProposedAction action, std::optional<Side> side)
{
    switch (action) {
    case ProposedAction::AskBefore:
        return "Ask before the first set; swap %1 if it still hurts.";
    case ProposedAction::LeaveOutAndAsk:
        return "Leave %1 out; have it looked at.";
    case ProposedAction::CheckAgain:
        return "Measure both sides again, the other one first.";
    case ProposedAction::WeakerFirst:
        return side == Side::Left ? "Left side first; it sets the reps."
                                  : "Right side first; it sets the reps.";
    case ProposedAction::SendOn:
        return "Send on: not ours to train.";
    case ProposedAction::HoldAndAsk:
        return "Hold the load, and ask what has changed.";
    case ProposedAction::ChangeOneThing:
        return "Change one thing: the rep range, or one set more.";
    case ProposedAction::GetInTouch:
        return "Get in touch; plan the first day back lighter.";
    case ProposedAction::PlanUsualWeek:
        return "Ask what was different; plan a usual week.";
    case ProposedAction::BookTest:
        return "Test it in the next class.";
    case ProposedAction::AskForRenewal:
        return "Ask for the renewal now.";
    case ProposedAction::NoMaximalTests:
        return "No maximal tests until it is renewed.";
    case ProposedAction::LowerLoad:
        return "Take the load of %1 down one step.";
    }
    return "";
}

} // namespace

ProposedAction proposedAction(const Attention& reason)
{
    switch (reason.kind) {
    case AttentionKind::Pain:
        return reason.repeats >= kOftenPainful ? ProposedAction::LeaveOutAndAsk
                                               : ProposedAction::AskBefore;
    case AttentionKind::Imbalance:
        return imbalanceAction(reason.tier);
    case AttentionKind::Falling:
        return ProposedAction::HoldAndAsk;
    case AttentionKind::NoGain:
        return ProposedAction::ChangeOneThing;
    case AttentionKind::Absence:
        return ProposedAction::GetInTouch;
    case AttentionKind::LoadJump:
        return ProposedAction::PlanUsualWeek;
    case AttentionKind::Retest:
        return ProposedAction::BookTest;
    case AttentionKind::Clearance:
        return reason.evidence.amount > 1 ? ProposedAction::NoMaximalTests
                                          : ProposedAction::AskForRenewal;
    case AttentionKind::TargetMissed:
        break;
    }
    return ProposedAction::LowerLoad;
}

std::string_view actionWord(ProposedAction action)
{
    return wordOf(kActions, action);
}

Phrase reasonPhrase(const Attention& reason)
{
    if (reason.kind != AttentionKind::Imbalance) {
        return {attentionTemplate(reason), reason.arguments};
    }
    const bool isLeft = reason.side == Side::Left;
    if (reason.tier == SideTier::SendOn) {
        return {isLeft ? "%1: left weaker by %2 %, %3 to %4, new or painful."
                       : "%1: right weaker by %2 %, %3 to %4, new or painful.",
                reason.arguments};
    }
    return {isLeft ? "%1: left weaker by %2 %, %3 to %4." : "%1: right weaker by %2 %, %3 to %4.",
            reason.arguments};
}

Phrase actionPhrase(const Attention& reason)
{
    const ProposedAction action = proposedAction(reason);
    const std::string_view text = actionTemplate(action, reason.side);
    switch (action) {
    case ProposedAction::AskBefore:
    case ProposedAction::LeaveOutAndAsk:
        return {text, {reason.arguments.at(1)}};
    case ProposedAction::LowerLoad:
        return {text, {reason.arguments.at(0)}};
    default:
        return {text, {}};
    }
}

} // namespace levelbar
