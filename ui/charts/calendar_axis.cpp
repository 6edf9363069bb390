// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/calendar_axis.h"

#include <QDate>
#include <QLocale>

#include <cmath>

namespace levelbar::ui {

namespace {

constexpr double kMillisecondsPerDay = 86'400'000.0;
constexpr int kWeeksUpToDays = 70;
constexpr int kMostLabels = 14;

QDate dateOf(Day day)
{
    const CivilDate date = civilDate(day);
    return {date.year, date.month, date.day};
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

void labelCalendar(QCategoryAxis& axis, Day from, Day to, const QLocale& locale)
{
    for (const QString& label : axis.categoriesLabels()) {
        axis.remove(label);
    }
    axis.setLabelsPosition(QCategoryAxis::AxisLabelsPositionOnValue);
    const bool isByWeek = to - from <= kWeeksUpToDays;
    const int months = (to - from) / 30 + 1;
    const int stride = isByWeek ? ((to - from) / 7 > kMostLabels / 2 ? 2 : 1)
                                : std::max(1, (months + kMostLabels - 1) / kMostLabels);
    int count = 0;
    for (Day day = from; day <= to; day = day + 1) {
        const QDate date = dateOf(day);
        const bool isStart = isByWeek ? isoWeekday(day) == 1 : date.day() == 1;
        if (!isStart || count++ % stride != 0) {
            continue;
        }
        // A label may stand once only: the year keeps months of two years apart.
        const bool isJanuary = date.month() == 1 && !isByWeek;
        const QString format =
            isByWeek || isJanuary || count == 1
                ? (isByWeek ? QStringLiteral("d MMM") : QStringLiteral("MMM yyyy"))
                : QStringLiteral("MMM");
        QString label = locale.toString(date, format);
        if (axis.categoriesLabels().contains(label)) {
            label = locale.toString(date, QStringLiteral("MMM yy"));
        }
        axis.append(label, axisPlace(day));
    }
    axis.setRange(axisPlace(from), axisPlace(to));
}

} // namespace levelbar::ui
