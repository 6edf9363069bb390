// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/base/fault.h"

#include "core/base/utf8.h"

namespace levelbar {

namespace {

// Of what is keyed in the hour on the floor.
std::string_view floorSentence(FaultCode code)
{
    switch (code) {
    case FaultCode::NotAPadEntry:
        return "'%1' is nothing the number pad knows";
    case FaultCode::NoStation:
        return "there is no rack or bench %1";
    case FaultCode::NoBib:
        return "nobody wears bib %1";
    case FaultCode::NoOpenSet:
        return "no set is open there";
    case FaultCode::NothingPlanned:
        return "a key cannot accept this set; type the reps";
    case FaultCode::SetWaits:
        return "this set waits: choose another exercise for it, or speak with the person first";
    case FaultCode::NoFreeLoad:
        return "there is no other load that is free in this round";
    case FaultCode::NothingToTakeBack:
        return "there is nothing to take back";
    case FaultCode::NothingKeyed:
        return "no set was counted yet";
    case FaultCode::ThreeAnswers:
        return "'%1' is not three answers: 1 yes or 0 no to each question, like 000";
    case FaultCode::ChooseFirst:
        return "choose 1 to %1, or 0 for none";
    case FaultCode::NothingLeft:
        return "%1 has no set left to change";
    case FaultCode::RepeatedBib:
        return "bib %1 is worn already";
    default:
        return "";
    }
}

// Of a file that is read in: what its columns hold, and its lines.
std::string_view fileSentence(FaultCode code)
{
    switch (code) {
    case FaultCode::UnknownMember:
        return "there is no member '%1'";
    case FaultCode::UnknownExercise:
        return "there is no exercise '%1'";
    case FaultCode::UnknownTest:
        return "there is no test '%1'";
    case FaultCode::WrongSide:
        return "'%1' is for %2, not %3";
    case FaultCode::NoHeader:
        return "the file is empty; a line with the names of the columns is needed";
    case FaultCode::MissingColumn:
        return "the column '%1' is missing";
    case FaultCode::RepeatedColumn:
        return "the column '%1' stands twice in the header";
    case FaultCode::RepeatedKey:
        return "the same row stands in line %1 already";
    case FaultCode::DiffersFromStored:
        return "'%1' differs from what is stored, '%2' (--update takes the new value)";
    case FaultCode::BrokenQuote:
        return "a quote is broken; nothing after it was read";
    case FaultCode::LineTooLong:
        return "the record is longer than %1 bytes";
    case FaultCode::TooManyCells:
        return "%1 cells where the header has %2";
    case FaultCode::NeedsAmount:
        return "reps, seconds or metres are needed";
    default:
        return floorSentence(code);
    }
}

} // namespace

std::string_view sentenceTemplate(FaultCode code)
{
    switch (code) {
    case FaultCode::Empty:
        return "a value is needed";
    case FaultCode::NotANumber:
        return "'%1' is not a number";
    case FaultCode::NotAWholeNumber:
        return "'%1' is not a whole number from %2 to %3";
    case FaultCode::OutOfRange:
        return "'%1' lies outside %2 to %3";
    case FaultCode::TooManyDecimals:
        return "'%1' has too many decimals (at most %2)";
    case FaultCode::NotADate:
        return "'%1' is not a date like 2026-11-25";
    case FaultCode::DateOutOfRange:
        return "'%1' lies outside %2 to %3";
    case FaultCode::NotATime:
        return "'%1' is not a time from 00:00 to 23:59";
    case FaultCode::NotAMoment:
        return "'%1' is not a moment like 2026-11-25T17:30:00Z";
    case FaultCode::NotOneOf:
        return "'%1' is none of %2";
    case FaultCode::TooLong:
        return "'%1' has more than %2 characters";
    case FaultCode::ControlCharacter:
        return "the text holds a control character";
    case FaultCode::NotUtf8:
        return "the text is not UTF-8";
    case FaultCode::NotInDomain:
        return "'%1' is outside what the equation was made for (%2)";
    case FaultCode::OtherUnit:
        return "'%1' is not in %2, the unit of the bar";
    case FaultCode::BelowTheBar:
        return "'%1' is lighter than the bar, %2";
    case FaultCode::LoadNotMade:
        return "'%1' cannot be made with these plates; the nearest loads are %2 and %3";
    case FaultCode::TooFewLifters:
        return "too few lifters (%1) for the racks (%2)";
    case FaultCode::TooManyLifters:
        return "too many lifters (%1; at most %2)";
    case FaultCode::RepeatedLifter:
        return "the lifter '%1' is there twice";
    case FaultCode::NotACell:
        return "'%1' is neither reps (9) nor reps with reserve (9.2)";
    case FaultCode::NotARpeCell:
        return "'%1' is neither reps (9) nor reps with RPE (9.8 for 8, 9.85 for 8.5)";
    case FaultCode::RepeatedPiece:
        return "'%1' stands there twice";
    case FaultCode::NoBar:
        return "at least one bar is needed";
    case FaultCode::NothingKnown:
        return "nothing is known of '%1' in '%2': no set, no tested maximum, no related lift";
    case FaultCode::NotByLoad:
        return "'%1' is not lifted for reps with a load of its own, so there is no load to aim at";
    case FaultCode::RepeatedMeeting:
        return "the meeting %1 is there twice";
    default:
        return fileSentence(code);
    }
}

std::string fill(std::string_view text, const std::vector<std::string>& arguments)
{
    std::string out;
    out.reserve(text.size() + 32);
    for (std::size_t at = 0; at < text.size(); ++at) {
        const bool isMark =
            text[at] == '%' && at + 1 < text.size() && text[at + 1] >= '1' && text[at + 1] <= '9';
        if (isMark) {
            const auto index = static_cast<std::size_t>(text[at + 1] - '1');
            if (index < arguments.size()) {
                out += arguments[index];
                ++at;
                continue;
            }
        }
        out += text[at];
    }
    return out;
}

std::string excerpt(std::string_view text)
{
    constexpr std::size_t kLongest = 40;
    if (text.size() <= kLongest) {
        return oneLine(text);
    }
    std::size_t end = kLongest;
    while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0U) == 0x80U) {
        --end;
    }
    return oneLine(text.substr(0, end)) + "…";
}

std::string sentence(const Fault& fault)
{
    return fill(sentenceTemplate(fault.code), fault.arguments);
}

} // namespace levelbar
