// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/floor/pad_entry.h"

#include "core/base/number.h"
#include "core/exercise/exercise_detail.h"

#include <algorithm>
#include <array>
#include <vector>

namespace levelbar {

namespace {

constexpr int kMostNumber = 999;
constexpr int kWorstPain = 10;

// What follows a verb: nothing, a number, either, or a pain.
enum class Rest { Nothing, Number, Maybe, Pain };

struct Word {
    char letter = ' ';
    char code = ' '; // after the mark
    PadVerb verb = PadVerb::Enter;
    Rest rest = Rest::Nothing;
};

// A verb that is another one with a number has two rows, the one without first.
constexpr std::array kWords = {
    Word{'t', '0', PadVerb::CatchUp, Rest::Nothing},
    Word{'c', '1', PadVerb::NotClean, Rest::Nothing},
    Word{'e', '2', PadVerb::EasyDay, Rest::Nothing},
    Word{'p', '3', PadVerb::Pain, Rest::Pain},
    Word{'s', '4', PadVerb::OtherExercise, Rest::Nothing},
    Word{'s', '4', PadVerb::SwapTurns, Rest::Number},
    Word{'l', '5', PadVerb::Late, Rest::Maybe},
    Word{'g', '6', PadVerb::Leave, Rest::Maybe},
    Word{'k', '7', PadVerb::LoadGone, Rest::Nothing},
    Word{'k', '7', PadVerb::StationGone, Rest::Number},
    Word{'n', '8', PadVerb::Newcomer, Rest::Number},
    Word{'u', '9', PadVerb::TakeBack, Rest::Nothing},
};

auto notAnEntry(std::string_view text)
{
    return refuse(FaultCode::NotAPadEntry, {excerpt(text)});
}

std::optional<int> numberIn(std::string_view text)
{
    const auto number = parseWhole(text, 0, kMostNumber);
    return number ? std::optional(static_cast<int>(*number)) : std::nullopt;
}

std::vector<std::string_view> partsAtPoints(std::string_view text)
{
    std::vector<std::string_view> parts;
    while (true) {
        const std::size_t point = text.find('.');
        parts.push_back(text.substr(0, point));
        if (point == std::string_view::npos) {
            return parts;
        }
        text.remove_prefix(point + 1);
    }
}

Result<PadPain> parsePain(std::string_view text)
{
    const auto parts = partsAtPoints(text);
    if (parts.size() < 2 || parts.size() > 3) {
        return notAnEntry(text);
    }
    const auto areas = bodyAreas();
    const auto score = parseWhole(parts[0], 0, kWorstPain);
    const auto area = parseWhole(parts[1], 1, static_cast<std::int64_t>(areas.size()));
    const auto side = parts.size() == 3 ? parseWhole(parts[2], 0, 2) : Result<std::int64_t>(0);
    for (const auto* number : {&score, &area, &side}) {
        if (!*number) {
            return tl::unexpected(number->error());
        }
    }
    return PadPain{static_cast<int>(*score),
                   areas[static_cast<std::size_t>(*area) - 1],
                   static_cast<Side>(*side)};
}

Result<PadCommand> commandOf(const Word& word, std::string_view rest, std::string_view whole)
{
    PadCommand command;
    command.verb = word.verb;
    if (word.rest == Rest::Pain) {
        const auto pain = parsePain(rest);
        if (!pain) {
            return tl::unexpected(pain.error());
        }
        command.pain = *pain;
        return command;
    }
    if (!rest.empty()) {
        command.number = numberIn(rest);
        if (!command.number) {
            return notAnEntry(whole);
        }
    }
    return command;
}

bool takes(const Word& word, bool hasRest)
{
    return word.rest == Rest::Maybe || word.rest == Rest::Pain ||
           (word.rest == Rest::Number) == hasRest;
}

// Reads ".7.4" and "k4" alike.
Result<PadCommand> parseWordEntry(std::string_view text)
{
    const bool isCode = text.front() == '.';
    const char sign = isCode ? (text.size() > 1 ? text[1] : ' ') : text.front();
    std::string_view rest = text.substr(std::min(text.size(), isCode ? std::size_t{2} : 1));
    if (isCode && !rest.empty()) {
        if (rest.front() != '.' || rest.size() == 1) {
            return notAnEntry(text);
        }
        rest.remove_prefix(1);
    }
    for (const Word& word : kWords) {
        if ((isCode ? word.code : word.letter) == sign && takes(word, !rest.empty())) {
            return commandOf(word, rest, text);
        }
    }
    return notAnEntry(text);
}

PadCommand plain(PadVerb verb)
{
    PadCommand command;
    command.verb = verb;
    return command;
}

} // namespace

bool isDoneAtOnce(std::string_view text)
{
    return text == "**" || text == "//" || text == "+" || text == "-";
}

Result<PadCommand> parsePadEntry(std::string_view typed, EffortScale scale)
{
    std::string text(typed);
    std::replace(text.begin(), text.end(), ',', '.');
    const std::array<std::pair<std::string_view, PadVerb>, 4> atOnce = {
        {{"**", PadVerb::RoundAsPlanned},
         {"//", PadVerb::TakeBack},
         {"+", PadVerb::LoadUp},
         {"-", PadVerb::LoadDown}}};
    for (const auto& [sign, verb] : atOnce) {
        if (text == sign) {
            return plain(verb);
        }
    }
    if (text.empty() || (text.front() >= '0' && text.front() <= '9')) {
        return parseCell(text, scale).map([](const CellEntry& entry) {
            PadCommand command;
            command.cell = entry;
            return command;
        });
    }
    if (text.front() == '*' || text.front() == '/') {
        PadCommand command = plain(text.front() == '*' ? PadVerb::GoToStation : PadVerb::GoToBib);
        command.number = numberIn(std::string_view(text).substr(1));
        return command.number ? Result<PadCommand>(command) : notAnEntry(typed);
    }
    return parseWordEntry(text);
}

} // namespace levelbar
