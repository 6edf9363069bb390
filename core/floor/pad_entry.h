// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/exercise/done_set.h"
#include "core/exercise/effort.h"

#include <optional>
#include <string>
#include <string_view>

namespace levelbar {

// What is keyed on the floor. Everything can be keyed on a number pad; letters mean the same as
// the code after the mark. Each ends with Enter, but for ** // + and -, which are done at once.
//
//   Enter        as planned             +  -          next load that exists and is free
//   9   9.2   0  reps, reserve, failed  **            this station's round as planned
//   *3           to rack or bench 3     //   u        take back
//   /14          to bib 14              .0   t        to what the clock says should be done
//   .1  c        the last set was not clean (once more: it was)
//   .2  e        easy day
//   .3.6.2.1     pain: score 6, area 2 of the list, left (2 right, none: no side); p6.2.1
//   .4  s        another exercise       .4.14  s14    swap turns with bib 14
//   .5.12  l12   came 12 minutes late   .5  l         came just now
//   .6.2  g2     has left: 1 had to go, 2 unwell, 3 pain, 4 something else;  .6  g  asks why
//   .7.4  k4     rack or bench 4 is gone;  .7  k      the load under the cursor is gone
//   .8.23  n23   somebody new, bib 23
enum class PadVerb {
    Enter, // a set: see PadCommand::cell
    GoToStation,
    GoToBib,
    RoundAsPlanned,
    LoadUp,
    LoadDown,
    TakeBack,
    CatchUp,
    NotClean,
    EasyDay,
    Pain,
    OtherExercise,
    SwapTurns,
    Late,
    Leave,
    StationGone,
    LoadGone,
    Newcomer,
};

struct PadPain {
    int score = 0;
    std::string_view area; // of bodyAreas()
    Side side = Side::Both;

    friend bool operator==(const PadPain&, const PadPain&) = default;
};

struct PadCommand {
    PadVerb verb = PadVerb::Enter;
    CellEntry cell;            // with Enter
    std::optional<int> number; // of a station or bib, or minutes
    std::optional<PadPain> pain;

    friend bool operator==(const PadCommand&, const PadCommand&) = default;
};

// What was typed before Enter, read as a whole. Blanks are not allowed; a comma is a point.
// NotAPadEntry; of a set: NotACell or NotARpeCell; OutOfRange: a pain's score or area.
[[nodiscard]] Result<PadCommand> parsePadEntry(std::string_view text, EffortScale scale);

// Whether the text is done without Enter.
[[nodiscard]] bool isDoneAtOnce(std::string_view text);

} // namespace levelbar
