// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <tl/expected.hpp>

#include <string>
#include <string_view>
#include <vector>

namespace levelbar {

// What can be wrong with a value that came from outside. Each code has one English sentence
// template (sentenceTemplate); a window translates the template, never the finished sentence.
enum class FaultCode {
    Empty,             // a value is needed
    NotANumber,        // %1 is not a number
    NotAWholeNumber,   // %1 is not a whole number from %2 to %3
    OutOfRange,        // %1 lies outside %2 to %3
    TooManyDecimals,   // %1 has too many decimals (at most %2)
    NotADate,          // %1 is not a date like 2026-11-25
    DateOutOfRange,    // %1 lies outside %2 to %3
    NotATime,          // %1 is not a time like 17:30
    NotAMoment,        // %1 is not a moment like 2026-11-25T17:30:00Z
    NotOneOf,          // %1 is none of %2
    TooLong,           // %1 has more than %2 characters
    ControlCharacter,  // holds a control character
    NotUtf8,           // is not UTF-8 text
    UnknownMember,     // no member %1
    UnknownExercise,   // no exercise %1
    UnknownTest,       // no test %1
    WrongSide,         // %1 is trained %2, not %3
    NoHeader,          // the file is empty
    MissingColumn,     // the column %1 is missing
    RepeatedColumn,    // the column %1 stands twice
    RepeatedKey,       // the same row stands in line %1 already
    DiffersFromStored, // another value is stored (%1)
    BrokenQuote,       // a quote is not closed
    LineTooLong,       // longer than %1 bytes
    TooManyCells,      // %1 cells where the header has %2
    NeedsAmount,       // reps, seconds or metres are needed
    NotInDomain,       // an equation does not hold for %1 (valid: %2)
    OtherUnit,         // %1 is not in %2, the unit of the bar
    BelowTheBar,       // %1 is lighter than the bar, %2
    LoadNotMade,       // %1 cannot be made with the plates; %2 and %3 can
    TooFewLifters,     // %1 lifters for %2 racks
    TooManyLifters,    // %1 lifters where %2 can be shared out
    RepeatedLifter,    // the lifter %1 is there twice
    NotACell,          // %1 is not reps, or reps.reserve
    NotARpeCell,       // %1 is not reps, or reps.rpe
    RepeatedPiece,     // %1 stands twice among what the gym owns
    NoBar,             // what the gym owns has no bar
    NothingKnown,      // nothing is known of %1 in %2
    NotByLoad,         // %1 has no load of its own
    RepeatedMeeting,   // the meeting %1 is there twice
    NotAPadEntry,      // %1 is nothing the number pad knows
    NoStation,         // no rack or bench %1
    NoBib,             // nobody wears bib %1
    NoOpenSet,         // no open set to key
    NothingPlanned,    // nothing is planned there that a key could accept
    SetWaits,          // the set waits for a choice
    NoFreeLoad,        // nothing else that exists is free
    NothingToTakeBack, // nothing was keyed yet
    NothingKeyed,      // no set was counted yet
    ThreeAnswers,      // %1 does not answer a newcomer's questions
    ChooseFirst,       // a choice from 1 to %1 is open
    NothingLeft,       // %1 has no set left to change
    RepeatedBib,       // bib %1 is worn already
};

// A value that was refused: what is wrong, and the words that fill %1, %2, ... of its template.
struct Fault {
    FaultCode code = FaultCode::Empty;
    std::vector<std::string> arguments;

    friend bool operator==(const Fault&, const Fault&) = default;
};

template <typename T> using Result = tl::expected<T, Fault>;

// The English sentence of a code, with %1, %2, ... where its arguments go; no full stop.
[[nodiscard]] std::string_view sentenceTemplate(FaultCode code);

// The template with its arguments filled in, e.g. "'ten' is not a whole number from 0 to 200".
[[nodiscard]] std::string sentence(const Fault& fault);

// Puts arguments into %1, %2, ... of any template of ours. A missing argument leaves its mark.
[[nodiscard]] std::string fill(std::string_view text, const std::vector<std::string>& arguments);

// At most 40 bytes of what was typed, cut at a character's border, for the sentence about it.
[[nodiscard]] std::string excerpt(std::string_view text);

// Shorthand for the failing branch of a Result.
[[nodiscard]] inline tl::unexpected<Fault> refuse(FaultCode code,
                                                  std::vector<std::string> arguments = {})
{
    return tl::unexpected<Fault>(Fault{code, std::move(arguments)});
}

} // namespace levelbar
