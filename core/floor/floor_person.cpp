// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/floor/floor_person.h"

#include "core/base/words.h"

namespace levelbar {

namespace {

constexpr Words<LeftWhy, 5> kLeftWhy = {{{LeftWhy::NotSaid, ""},
                                         {LeftWhy::HadToGo, "had_to_go"},
                                         {LeftWhy::Unwell, "unwell"},
                                         {LeftWhy::Pain, "pain"},
                                         {LeftWhy::Other, "other"}}};

} // namespace

std::string_view leftWhyWord(LeftWhy why)
{
    return wordOf(kLeftWhy, why);
}

Result<LeftWhy> parseLeftWhy(std::string_view word)
{
    return parseWord(kLeftWhy, word);
}

std::string_view leftWhyText(LeftWhy why)
{
    switch (why) {
    case LeftWhy::NotSaid:
        return "";
    case LeftWhy::HadToGo:
        return "had to go";
    case LeftWhy::Unwell:
        return "unwell";
    case LeftWhy::Pain:
        return "pain";
    case LeftWhy::Other:
        break;
    }
    return "something else";
}

} // namespace levelbar
