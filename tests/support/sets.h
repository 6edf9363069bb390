// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/exercise/done_set.h"

#include <optional>

namespace levelbar::tests {

// A counted work set; the rest is set by the test that needs it.
inline PerformedSet
set(Day day, int number, double kilograms, int reps, std::optional<int> reserve = std::nullopt)
{
    PerformedSet made;
    made.day = day;
    made.number = number;
    made.load = Mass::ofKilograms(kilograms);
    made.reps = reps;
    if (reserve) {
        made.reserve = Reserve{*reserve * 10};
    }
    return made;
}

inline Day day(const char* iso)
{
    return parseDay(iso).value();
}

} // namespace levelbar::tests
