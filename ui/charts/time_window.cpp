// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/time_window.h"

#include <algorithm>
#include <cmath>

namespace levelbar::ui {

void TimeWindow::setWhole(Day from, Day to)
{
    m_first = from;
    m_last = std::max(to, from + kFewestDays);
    showAll();
}

void TimeWindow::changeWhole(Day from, Day to)
{
    const bool wasWhole = isWhole();
    const Day shownFrom = m_from;
    const Day shownTo = m_to;
    setWhole(from, to);
    if (!wasWhole && shownFrom < m_last && shownTo > m_first) {
        show(shownFrom, shownTo);
    }
}

void TimeWindow::zoom(double factor, Day about)
{
    if (!(factor > 0.0)) {
        return;
    }
    const int length = m_to - m_from;
    const int wanted =
        std::clamp(static_cast<int>(std::lround(length / factor)), kFewestDays, m_last - m_first);
    const double share = static_cast<double>(about - m_from) / length;
    const Day from = about - static_cast<int>(std::lround(share * wanted));
    show(from, from + wanted);
}

void TimeWindow::move(double share)
{
    moveBy(static_cast<int>(std::lround(share * (m_to - m_from))));
}

void TimeWindow::show(Day from, Day to)
{
    if (to < from) {
        std::swap(from, to);
    }
    const int length = std::clamp(to - from, kFewestDays, m_last - m_first);
    m_from = from;
    m_to = from + length;
    moveBy(0);
}

void TimeWindow::showAll()
{
    m_from = m_first;
    m_to = m_last;
}

void TimeWindow::bringIn(Day day)
{
    if (day < m_from) {
        moveBy(day - m_from);
    } else if (day > m_to) {
        moveBy(day - m_to);
    }
}

void TimeWindow::moveBy(int days)
{
    const int length = m_to - m_from;
    m_from = std::clamp(m_from + days, m_first, m_last - length);
    m_to = m_from + length;
}

} // namespace levelbar::ui
