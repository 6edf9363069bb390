// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/day.h"

#include <QCategoryAxis>
#include <QFontMetricsF>
#include <QString>

#include <vector>

namespace levelbar::ui {

// Where a day lies on the axis: milliseconds since 1970, as a double.
[[nodiscard]] double axisPlace(Day day);
[[nodiscard]] Day dayAtPlace(double place);

struct CalendarLabel {
    Day day;
    QString text; // each stands once
};

// A label at each month's start, or at each Monday when the range is short; at most `most`.
[[nodiscard]] std::vector<CalendarLabel>
calendarLabels(Day from, Day to, const QLocale& locale, std::size_t most = 14);

// Gives the axis its range and those labels. QDateTimeAxis cuts the range into equal parts and
// prints odd hours around a change of summer time.
// As many labels as stand side by side in a chart that is so wide, its own margins taken off.
[[nodiscard]] std::size_t labelsIn(int width, const QFontMetricsF& metrics);

void labelCalendar(QCategoryAxis& axis, Day from, Day to, const QLocale& locale, std::size_t most);

} // namespace levelbar::ui
