// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/base/fault.h"

namespace levelbar {

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
    case FaultCode::NotInDomain:
        return "'%1' is outside what the equation was made for (%2)";
    case FaultCode::NotACell:
        return "'%1' is neither reps (9) nor reps with reserve (9.2)";
    }
    return "";
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
        return std::string(text);
    }
    std::size_t end = kLongest;
    while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0U) == 0x80U) {
        --end;
    }
    return std::string(text.substr(0, end)) + "…";
}

std::string sentence(const Fault& fault)
{
    return fill(sentenceTemplate(fault.code), fault.arguments);
}

} // namespace levelbar
