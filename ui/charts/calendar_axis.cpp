// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/calendar_axis.h"

#include <QDate>
#include <QFontMetricsF>
#include <QLocale>

#include <algorithm>
#include <cmath>
#include <vector>

namespace levelbar::ui {

namespace {

constexpr double kMillisecondsPerDay = 86'400'000.0;
constexpr int kWeeksUpToDays = 70;
const QString kMonth = QStringLiteral("MMM");
const QString kMonthOfYear = QStringLiteral("MMM '’'yy");

QDate dateOf(Day day)
{
    const CivilDate date = civilDate(day);
    return {date.year, date.month, date.day};
}

std::vector<Day> weekStarts(Day from, Day to)
{
    std::vector<Day> starts;
    for (Day day = from; day <= to; day = day + 1) {
        if (isoWeekday(day) == 1) {
            starts.push_back(day);
        }
    }
    return starts;
}

std::vector<Day> monthStarts(Day from, Day to)
{
    std::vector<Day> starts;
    for (Day day = from; day <= to; day = day + 1) {
        if (civilDate(day).day == 1) {
            starts.push_back(day);
        }
    }
    return starts;
}

} // namespace

double axisPlace(Day day)
{
    return day.sinceEpoch * kMillisecondsPerDay;
}

Day dayAtPlace(double place)
{
    return Day{static_cast<std::int32_t>(std::lround(place / kMillisecondsPerDay))};
}

std::vector<CalendarLabel> calendarLabels(Day from, Day to, const QLocale& locale, std::size_t most)
{
    const bool isByWeek = to - from <= kWeeksUpToDays;
    const std::vector<Day> starts = isByWeek ? weekStarts(from, to) : monthStarts(from, to);
    const std::size_t room = std::max<std::size_t>(1, isByWeek ? most / 2 : most);
    const std::size_t stride = std::max<std::size_t>(1, (starts.size() + room - 1) / room);
    const bool spansYears = dateOf(from).year() != dateOf(to).year();
    std::vector<CalendarLabel> labels;
    int year = 0; // of the label before
    for (std::size_t at = 0; at < starts.size(); at += stride) {
        const QDate date = dateOf(starts[at]);
        QString text = locale.toString(date, QStringLiteral("d MMM"));
        if (!isByWeek) {
            const bool saysYear = spansYears && date.year() != year;
            year = date.year();
            text = locale.toString(date, saysYear ? kMonthOfYear : kMonth);
        }
        // A label may stand once only: the year keeps months of two years apart.
        const bool isThere = std::any_of(
            labels.begin(), labels.end(), [&](const auto& label) { return label.text == text; });
        labels.push_back({starts[at], isThere ? locale.toString(date, kMonthOfYear) : text});
    }
    return labels;
}

std::size_t labelsIn(int width, const QFontMetricsF& metrics)
{
    constexpr double kMargins = 90.0; // the values beside the axis, and the chart's edge
    const double each =
        metrics.horizontalAdvance(QStringLiteral("28 MMM ’26")) + metrics.averageCharWidth();
    return static_cast<std::size_t>(std::clamp((width - kMargins) / each, 2.0, 14.0));
}

void labelCalendar(QCategoryAxis& axis, Day from, Day to, const QLocale& locale, std::size_t most)
{
    for (const QString& label : axis.categoriesLabels()) {
        axis.remove(label);
    }
    axis.setLabelsPosition(QCategoryAxis::AxisLabelsPositionOnValue);
    for (const CalendarLabel& label : calendarLabels(from, to, locale, most)) {
        axis.append(label.text, axisPlace(label.day));
    }
    axis.setRange(axisPlace(from), axisPlace(to));
}

} // namespace levelbar::ui
