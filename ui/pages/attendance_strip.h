// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/day.h"

#include <QWidget>

#include <vector>

namespace levelbar::ui {

// The last twelve weeks as a row of small marks: a stroke for a day on which the person was seen,
// weeks side by side, today at the right.
class AttendanceStrip : public QWidget {
    Q_OBJECT

public:
    static constexpr int kWeeks = 12;

    explicit AttendanceStrip(QWidget* parent = nullptr);

    // `seen`: ascending, of any length.
    void show(const std::vector<Day>& seen, Day today);

    [[nodiscard]] int daysShown() const { return static_cast<int>(m_seen.size()); }

    [[nodiscard]] QSize sizeHint() const override;

    [[nodiscard]] QSize minimumSizeHint() const override { return sizeHint(); }

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    std::vector<Day> m_seen; // within the weeks shown
    Day m_first;             // Monday of the first week shown
    Day m_today;
};

} // namespace levelbar::ui
