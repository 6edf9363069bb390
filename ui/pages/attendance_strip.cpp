// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/attendance_strip.h"

#include "ui/theme.h"

#include <QLocale>
#include <QPainter>

#include <algorithm>
#include <array>

namespace levelbar::ui {

namespace {

constexpr int kDaysPerWeek = 7;
constexpr int kHeight = 22;

} // namespace

AttendanceStrip::AttendanceStrip(QWidget* parent)
    : QWidget(parent)
{
    setObjectName(QStringLiteral("memberAttendance"));
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

QSize AttendanceStrip::sizeHint() const
{
    return {kWeeks * kDaysPerWeek * 2, kHeight};
}

void AttendanceStrip::show(const std::vector<Day>& seen, Day today)
{
    m_today = today;
    m_first = today - (isoWeekday(today) - 1) - kDaysPerWeek * (kWeeks - 1);
    m_seen.clear();
    std::array<int, kWeeks> counts{};
    for (const Day day : seen) {
        if (day >= m_first && day <= today) {
            m_seen.push_back(day);
            ++counts.at(static_cast<std::size_t>((day - m_first) / kDaysPerWeek));
        }
    }
    QStringList weeks;
    for (const int count : counts) {
        weeks << locale().toString(count);
    }
    const QString words = tr("Days seen in twelve weeks: %1. Week by week: %2.")
                              .arg(locale().toString(daysShown()), weeks.join(tr(", ")));
    setAccessibleName(words);
    setToolTip(words);
    update();
}

void AttendanceStrip::paintEvent(QPaintEvent* /*event*/)
{
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const Colours more = colours(palette());
    const double week = static_cast<double>(width()) / kWeeks;
    const double gap = 3.0;
    const double day = (week - gap) / kDaysPerWeek;
    const double foot = height() - 3.0;
    const auto left = [&](Day at) {
        const int since = at - m_first;
        return since / kDaysPerWeek * week + since % kDaysPerWeek * day;
    };
    painter.setPen(QPen(more.quiet, 1.0));
    for (int i = 0; i < kWeeks; ++i) {
        painter.drawLine(QPointF(i * week, foot), QPointF((i + 1) * week - gap, foot));
    }
    painter.setPen(Qt::NoPen);
    painter.setBrush(palette().color(QPalette::WindowText));
    for (const Day seen : m_seen) {
        painter.drawRect(QRectF(left(seen), 3.0, std::max(2.0, day - 0.6), foot - 4.0));
    }
}

} // namespace levelbar::ui
