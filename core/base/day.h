// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/fault.h"

#include <cmath>
#include <compare>
#include <cstdint>
#include <string>
#include <string_view>

namespace levelbar {

// A civil date in the gym's own place, as days since 1970-01-01 (proleptic Gregorian).
struct Day {
    std::int32_t sinceEpoch = 0;

    friend constexpr auto operator<=>(const Day&, const Day&) = default;
};

[[nodiscard]] constexpr int operator-(Day later, Day earlier)
{
    return later.sinceEpoch - earlier.sinceEpoch;
}

[[nodiscard]] constexpr Day operator+(Day day, int days)
{
    return Day{day.sinceEpoch + days};
}

[[nodiscard]] constexpr Day operator-(Day day, int days)
{
    return Day{day.sinceEpoch - days};
}

// Weeks since 1970-01-01, the time scale of the strength model, and the nearest day back.
[[nodiscard]] constexpr double weeksOf(Day day)
{
    return day.sinceEpoch / 7.0;
}

[[nodiscard]] inline Day dayOfWeeks(double weeks)
{
    return Day{static_cast<std::int32_t>(std::lround(weeks * 7.0))};
}

struct CivilDate {
    int year = 1970;
    int month = 1; // 1 to 12
    int day = 1;   // 1 to 31

    friend constexpr bool operator==(const CivilDate&, const CivilDate&) = default;
};

[[nodiscard]] CivilDate civilDate(Day day);

// NotADate when the calendar has no such day (31 February). Years 1 to 9999.
[[nodiscard]] Result<Day> dayOf(CivilDate date);

// ISO 8601, exactly YYYY-MM-DD, from 1900-01-01 to 2100-12-31.
[[nodiscard]] Result<Day> parseDay(std::string_view text);
[[nodiscard]] std::string isoText(Day day);

// "12 Dec": how sentences name a day within a year or so of today.
[[nodiscard]] std::string shortText(Day day);

// 1 = Monday to 7 = Sunday (ISO 8601).
[[nodiscard]] int isoWeekday(Day day);

// An instant in UTC, milliseconds since 1970-01-01T00:00:00Z: when something was keyed.
struct Moment {
    std::int64_t milliseconds = 0;

    friend constexpr auto operator<=>(const Moment&, const Moment&) = default;
};

// "2026-11-25T17:30:00Z"; milliseconds are written only when there are any ("…00.250Z").
[[nodiscard]] Result<Moment> parseMoment(std::string_view text);
[[nodiscard]] std::string isoText(Moment moment);

// Minutes since midnight in the gym's place, "17:30".
struct TimeOfDay {
    int minutes = 0; // 0 to 1439

    friend constexpr auto operator<=>(const TimeOfDay&, const TimeOfDay&) = default;
};

[[nodiscard]] Result<TimeOfDay> parseTimeOfDay(std::string_view text);
[[nodiscard]] std::string text(TimeOfDay time);

} // namespace levelbar
