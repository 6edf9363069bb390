// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/review/attention.h"
#include "core/review/wording.h"

#include <string_view>

namespace levelbar {

// The one thing that a reason calls for.
enum class ProposedAction {
    AskBefore,      // pain: ask before the first set
    LeaveOutAndAsk, // pain that comes back
    CheckAgain,     // a difference to measure again
    WeakerFirst,    // a difference to work on
    SendOn,         // not ours to train
    HoldAndAsk,     // falling
    ChangeOneThing, // no gain
    GetInTouch,     // absence
    PlanUsualWeek,  // far more than usual
    BookTest,       // retest
    AskForRenewal,  // a clearance that ends
    NoMaximalTests, // a clearance that has ended
    LowerLoad,      // a target missed twice
};

[[nodiscard]] ProposedAction proposedAction(const Attention& reason);
[[nodiscard]] std::string_view actionWord(ProposedAction action); // "ask_before", ...

// The reason alone, without what to do; and the action: templates of English with their words.
[[nodiscard]] Phrase reasonPhrase(const Attention& reason);
[[nodiscard]] Phrase actionPhrase(const Attention& reason);

} // namespace levelbar
