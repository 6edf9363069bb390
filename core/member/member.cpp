// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/member/member.h"

#include "core/base/utf8.h"
#include "core/base/words.h"

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

} // namespace levelbar
