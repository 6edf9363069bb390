// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/exercise/exercise.h"

#include "core/base/words.h"

namespace levelbar {

namespace {

constexpr Words<Pattern, 10> kPatterns = {{{Pattern::HorizontalPress, "horizontal press"},
                                           {Pattern::VerticalPress, "vertical press"},
                                           {Pattern::HorizontalPull, "horizontal pull"},
                                           {Pattern::VerticalPull, "vertical pull"},
                                           {Pattern::Squat, "squat"},
                                           {Pattern::Hinge, "hinge"},
                                           {Pattern::SingleLeg, "single-leg"},
                                           {Pattern::Trunk, "trunk"},
                                           {Pattern::Carry, "carry"},
                                           {Pattern::Other, "other"}}};
constexpr Words<Implement, 8> kImplements = {{{Implement::Barbell, "barbell"},
                                              {Implement::Dumbbell, "dumbbell"},
                                              {Implement::Kettlebell, "kettlebell"},
                                              {Implement::Machine, "machine"},
                                              {Implement::Cable, "cable"},
                                              {Implement::BodyWeight, "body weight"},
                                              {Implement::Band, "band"},
                                              {Implement::Other, "other"}}};
constexpr Words<Sidedness, 3> kSidednesses = {{{Sidedness::TwoSided, "both"},
                                               {Sidedness::SingleSided, "single"},
                                               {Sidedness::Either, "either"}}};
constexpr Words<AmountKind, 3> kAmounts = {
    {{AmountKind::Reps, "reps"}, {AmountKind::Seconds, "seconds"}, {AmountKind::Metres, "metres"}}};
constexpr Words<LoadKind, 3> kLoads = {
    {{LoadKind::External, "external"}, {LoadKind::Added, "added"}, {LoadKind::None, "none"}}};

} // namespace

std::string_view patternWord(Pattern pattern)
{
    return wordOf(kPatterns, pattern);
}

std::string_view implementWord(Implement implement)
{
    return wordOf(kImplements, implement);
}

std::string_view sidednessWord(Sidedness sidedness)
{
    return wordOf(kSidednesses, sidedness);
}

std::string_view amountWord(AmountKind amount)
{
    return wordOf(kAmounts, amount);
}

std::string_view loadKindWord(LoadKind load)
{
    return wordOf(kLoads, load);
}

Result<Pattern> parsePattern(std::string_view text)
{
    return parseWord(kPatterns, text);
}

Result<Implement> parseImplement(std::string_view text)
{
    return parseWord(kImplements, text);
}

Result<Sidedness> parseSidedness(std::string_view text)
{
    return parseWord(kSidednesses, text);
}

Result<AmountKind> parseAmountKind(std::string_view text)
{
    return parseWord(kAmounts, text);
}

Result<LoadKind> parseLoadKind(std::string_view text)
{
    return parseWord(kLoads, text);
}

} // namespace levelbar
