// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/member/member.h"

#include "core/base/number.h"
#include "core/base/utf8.h"
#include "core/base/words.h"

#include <algorithm>

namespace levelbar {

namespace {

constexpr int kLongestCode = 64;

constexpr Words<Sex, 2> kSexes = {{{Sex::Female, "female"}, {Sex::Male, "male"}}};
constexpr Words<Experience, 3> kExperiences = {{{Experience::Novice, "novice"},
                                                {Experience::Intermediate, "intermediate"},
                                                {Experience::Advanced, "advanced"}}};
constexpr Words<Goal, 5> kGoals = {{{Goal::Strength, "strength"},
                                    {Goal::Hypertrophy, "hypertrophy"},
                                    {Goal::Endurance, "endurance"},
                                    {Goal::Power, "power"},
                                    {Goal::General, "general"}}};

Result<std::string> checked(std::string_view text, int longest, bool allowBreaks)
{
    const auto count = codePoints(text);
    if (!count) {
        return refuse(FaultCode::NotUtf8);
    }
    if (holdsControl(text, allowBreaks)) {
        return refuse(FaultCode::ControlCharacter);
    }
    if (*count > static_cast<std::size_t>(longest)) {
        return refuse(FaultCode::TooLong, {excerpt(text), std::to_string(longest)});
    }
    return std::string(text);
}

} // namespace

Result<std::string> checkMemberCode(std::string_view text)
{
    if (text.empty()) {
        return refuse(FaultCode::Empty);
    }
    return checked(text, kLongestCode, false);
}

Result<std::string> checkName(std::string_view text, int longest)
{
    return checked(text, longest, false);
}

Result<std::string> checkText(std::string_view text, int longest)
{
    if (text.find('\r') == std::string_view::npos) {
        return checked(text, longest, true);
    }
    std::string lines;
    for (std::size_t at = 0; at < text.size(); ++at) {
        const bool isPair = text[at] == '\r' && at + 1 < text.size() && text[at + 1] == '\n';
        at += isPair ? 1 : 0;
        lines += text[at] == '\r' ? '\n' : text[at];
    }
    return checked(lines, longest, true);
}

std::string_view sexWord(Sex sex)
{
    return wordOf(kSexes, sex);
}

std::string_view experienceWord(Experience experience)
{
    return wordOf(kExperiences, experience);
}

std::string_view goalWord(Goal goal)
{
    return wordOf(kGoals, goal);
}

Result<Sex> parseSex(std::string_view text)
{
    return parseWord(kSexes, text);
}

Result<Experience> parseExperience(std::string_view text)
{
    return parseWord(kExperiences, text);
}

Result<Goal> parseGoal(std::string_view text)
{
    return parseWord(kGoals, text);
}

Result<int> parseStature(std::string_view centimetres)
{
    constexpr std::int64_t kShortest = 5000; // tenths of a millimetre
    constexpr std::int64_t kTallest = 26'000;
    return parseDecimal(centimetres, 2, kShortest, kTallest).map([](std::int64_t tenths) {
        return static_cast<int>(tenths);
    });
}

Result<Mass> parseBodyMass(std::string_view kilograms)
{
    constexpr std::int64_t kLightest = 2'000; // grams
    constexpr std::int64_t kHeaviest = 500'000;
    return parseDecimal(kilograms, 3, kLightest, kHeaviest).map([](std::int64_t grams) {
        return Mass::ofThousandths(grams, MassUnit::Kilogram);
    });
}

Result<Side> parseDominantSide(std::string_view text)
{
    auto side = parseSide(text);
    if (!side || *side == Side::Both) {
        return refuse(FaultCode::NotOneOf, {excerpt(text), "left, right"});
    }
    return side;
}

std::string proposeMemberCode(std::span<const std::string> codes)
{
    constexpr std::size_t kMostDigits = 9;
    long long largest = 0;
    std::string before;
    std::size_t width = 1;
    for (const std::string& code : codes) {
        std::size_t digits = 0;
        while (digits < std::min(code.size(), kMostDigits) &&
               code[code.size() - 1 - digits] >= '0' && code[code.size() - 1 - digits] <= '9') {
            ++digits;
        }
        const std::string number = code.substr(code.size() - digits);
        if (digits > 0 && std::stoll(number) >= largest) {
            largest = std::stoll(number);
            before = code.substr(0, code.size() - digits);
            width = digits;
        }
    }
    std::string next = std::to_string(largest + 1);
    next.insert(0, width > next.size() ? width - next.size() : 0, '0');
    return before + next;
}

} // namespace levelbar
