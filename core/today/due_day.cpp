// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/today/due_day.h"

#include <algorithm>
#include <charconv>

namespace levelbar {

namespace {

constexpr int kMostDaysAhead = 366;

} // namespace

Result<Day> parseDueDay(std::string_view text, Day today)
{
    const bool isNumber =
        !text.empty() && text.size() <= 4 &&
        std::all_of(text.begin(), text.end(), [](char c) { return c >= '0' && c <= '9'; });
    if (isNumber) {
        int days = 0;
        std::from_chars(text.data(), text.data() + text.size(), days);
        if (days < 1 || days > kMostDaysAhead) {
            return refuse(FaultCode::NotAWholeNumber,
                          {excerpt(text), "1", std::to_string(kMostDaysAhead)});
        }
        return today + days;
    }
    const auto day = parseDay(text);
    if (day && (*day <= today || *day - today > kMostDaysAhead)) {
        return refuse(FaultCode::DateOutOfRange,
                      {excerpt(text), isoText(today + 1), isoText(today + kMostDaysAhead)});
    }
    return day;
}

} // namespace levelbar
