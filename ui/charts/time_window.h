// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/day.h"

namespace levelbar::ui {

// Which days of all a chart shows. Zooming and moving stay within all of them and never show
// fewer than two weeks.
class TimeWindow {
public:
    static constexpr int kFewestDays = 14;
    static constexpr int kFewestOfAll = 28; // that a chart begins with, however little there is

    // All there is; shows it. to after from.
    void setWhole(Day from, Day to);

    // As above, but keeps what is shown where it lies within.
    void changeWhole(Day from, Day to);

    // `factor` above 1 shows less; the day `about` stays where it is.
    void zoom(double factor, Day about);

    // By a share of what is shown; above 0 to later days.
    void move(double share);

    void show(Day from, Day to);
    void showAll();
    void bringIn(Day day); // moves no farther than it must

    [[nodiscard]] Day from() const { return m_from; }

    [[nodiscard]] Day to() const { return m_to; }

    [[nodiscard]] bool isWhole() const { return m_from == m_first && m_to == m_last; }

private:
    void moveBy(int days);

    Day m_first;
    Day m_last{kFewestDays};
    Day m_from;
    Day m_to{kFewestDays};
};

} // namespace levelbar::ui
