// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/base/day.h"

#include <fmt/format.h>

#include <array>
#include <chrono>
#include <optional>

namespace levelbar {

namespace {

constexpr Day kEarliest{-25567}; // 1900-01-01
constexpr Day kLatest{47846};    // 2100-12-31
constexpr std::int64_t kMillisecondsPerDay = 86'400'000;

std::optional<int> digitsAt(std::string_view text, std::size_t at, std::size_t count)
{
    if (text.size() < at + count) {
        return std::nullopt;
    }
    int value = 0;
    for (const char c : text.substr(at, count)) {
        if (c < '0' || c > '9') {
            return std::nullopt;
        }
        value = value * 10 + (c - '0');
    }
    return value;
}

std::optional<Day> isoDay(std::string_view text)
{
    if (text.size() != 10 || text[4] != '-' || text[7] != '-') {
        return std::nullopt;
    }
    const auto year = digitsAt(text, 0, 4);
    const auto month = digitsAt(text, 5, 2);
    const auto day = digitsAt(text, 8, 2);
    if (!year || !month || !day) {
        return std::nullopt;
    }
    const auto found = dayOf({*year, *month, *day});
    return found ? std::optional(*found) : std::nullopt;
}

// Milliseconds since midnight of "17:30:00" or "17:30:00.250".
std::optional<std::int64_t> clockMilliseconds(std::string_view text)
{
    if ((text.size() != 8 && text.size() != 12) || text[2] != ':' || text[5] != ':') {
        return std::nullopt;
    }
    const auto hour = digitsAt(text, 0, 2);
    const auto minute = digitsAt(text, 3, 2);
    const auto second = digitsAt(text, 6, 2);
    std::optional<int> fraction = 0;
    if (text.size() == 12) {
        fraction = text[8] == '.' ? digitsAt(text, 9, 3) : std::nullopt;
    }
    if (!hour || !minute || !second || !fraction || *hour > 23 || *minute > 59 || *second > 59) {
        return std::nullopt;
    }
    return ((std::int64_t{*hour} * 60 + *minute) * 60 + *second) * 1000 + *fraction;
}

} // namespace

CivilDate civilDate(Day day)
{
    const std::chrono::year_month_day date{
        std::chrono::sys_days{std::chrono::days{day.sinceEpoch}}};
    return {static_cast<int>(date.year()),
            static_cast<int>(static_cast<unsigned>(date.month())),
            static_cast<int>(static_cast<unsigned>(date.day()))};
}

Result<Day> dayOf(CivilDate date)
{
    const std::chrono::year_month_day ymd{std::chrono::year{date.year},
                                          std::chrono::month{static_cast<unsigned>(date.month)},
                                          std::chrono::day{static_cast<unsigned>(date.day)}};
    if (date.year < 1 || date.year > 9999 || !ymd.ok()) {
        return refuse(FaultCode::NotADate,
                      {fmt::format("{:04}-{:02}-{:02}", date.year, date.month, date.day)});
    }
    const auto days = std::chrono::sys_days{ymd}.time_since_epoch().count();
    return Day{static_cast<std::int32_t>(days)};
}

Result<Day> parseDay(std::string_view text)
{
    const auto day = isoDay(text);
    if (!day) {
        return refuse(FaultCode::NotADate, {excerpt(text)});
    }
    if (*day < kEarliest || *day > kLatest) {
        return refuse(FaultCode::DateOutOfRange,
                      {std::string(text), isoText(kEarliest), isoText(kLatest)});
    }
    return *day;
}

std::string isoText(Day day)
{
    const CivilDate date = civilDate(day);
    return fmt::format("{:04}-{:02}-{:02}", date.year, date.month, date.day);
}

std::string shortText(Day day)
{
    static constexpr std::array<const char*, 12> kMonths = {
        "Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};
    const CivilDate date = civilDate(day);
    return fmt::format("{} {}", date.day, kMonths.at(static_cast<std::size_t>(date.month - 1)));
}

int isoWeekday(Day day)
{
    const std::chrono::weekday weekday{std::chrono::sys_days{std::chrono::days{day.sinceEpoch}}};
    return static_cast<int>(weekday.iso_encoding());
}

Result<Moment> parseMoment(std::string_view text)
{
    const bool hasShape = text.size() >= 20 && text[10] == 'T' && text.back() == 'Z';
    const auto day = hasShape ? isoDay(text.substr(0, 10)) : std::nullopt;
    const auto clock =
        hasShape ? clockMilliseconds(text.substr(11, text.size() - 12)) : std::nullopt;
    if (!day || !clock) {
        return refuse(FaultCode::NotAMoment, {excerpt(text)});
    }
    return Moment{day->sinceEpoch * kMillisecondsPerDay + *clock};
}

std::string isoText(Moment moment)
{
    std::int64_t days = moment.milliseconds / kMillisecondsPerDay;
    std::int64_t rest = moment.milliseconds % kMillisecondsPerDay;
    if (rest < 0) {
        rest += kMillisecondsPerDay;
        --days;
    }
    const std::string date = isoText(Day{static_cast<std::int32_t>(days)});
    const std::int64_t seconds = rest / 1000;
    const std::string clock =
        fmt::format("{:02}:{:02}:{:02}", seconds / 3600, seconds / 60 % 60, seconds % 60);
    const std::string fraction = rest % 1000 == 0 ? "" : fmt::format(".{:03}", rest % 1000);
    return date + "T" + clock + fraction + "Z";
}

Result<TimeOfDay> parseTimeOfDay(std::string_view text)
{
    const bool hasShape = text.size() == 5 && text[2] == ':';
    const auto hour = hasShape ? digitsAt(text, 0, 2) : std::nullopt;
    const auto minute = hasShape ? digitsAt(text, 3, 2) : std::nullopt;
    if (!hour || !minute || *hour > 23 || *minute > 59) {
        return refuse(FaultCode::NotATime, {excerpt(text)});
    }
    return TimeOfDay{*hour * 60 + *minute};
}

std::string text(TimeOfDay time)
{
    return fmt::format("{:02}:{:02}", time.minutes / 60, time.minutes % 60);
}

} // namespace levelbar
