// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/testing/trial.h"

#include "core/base/mass.h"
#include "core/base/words.h"

namespace levelbar {

namespace {

constexpr Words<Direction, 3> kDirections = {{{Direction::MoreIsBetter, "more"},
                                              {Direction::LessIsBetter, "less"},
                                              {Direction::None, "none"}}};

} // namespace

double Trial::value() const
{
    const double typed = static_cast<double>(valueThousandths) / 1000.0;
    return unit == unitWord(MassUnit::Pound) ? typed * kKilogramsPerPound : typed;
}

std::string_view directionWord(Direction direction)
{
    return wordOf(kDirections, direction);
}

Result<Direction> parseDirection(std::string_view text)
{
    return parseWord(kDirections, text);
}

} // namespace levelbar
