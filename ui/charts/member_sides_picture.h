// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/review/member_sides_figure.h"

#include <QPalette>
#include <QRectF>
#include <QString>

#include <optional>
#include <vector>

class QPainter;

namespace levelbar::ui {

// The picture of a person's left and right through time, in any rectangle of any device. Above,
// the strength of either side; below, the difference: as on the sides page turned a quarter, the
// left half is the lower one, so the line sinks where the left is the weaker side.
class MemberSidesPicture {
public:
    MemberSidesPicture(const MemberSidesFigure& figure, const QRectF& place, const QFont& font);

    // `chosen`: the day that is read out.
    void paint(QPainter& painter, const QPalette& palette, std::optional<Day> chosen) const;

    [[nodiscard]] double across(Day day) const;
    [[nodiscard]] double valueHeight(double value) const;        // in the upper half
    [[nodiscard]] double differenceHeight(double percent) const; // as in SideReview

private:
    void setRanges();
    void paintCalendar(QPainter& painter, const QPalette& palette) const;
    void paintValues(QPainter& painter, const QPalette& palette) const;
    void paintDifference(QPainter& painter, const QPalette& palette) const;
    // Where a number of an axis stands, kept beside its own half.
    [[nodiscard]] QRectF besideAxis(const QRectF& half, double y) const;
    void paintLegend(QPainter& painter, const QPalette& palette) const;

    const MemberSidesFigure& m_figure;
    QRectF m_legend;
    QRectF m_upper;
    QRectF m_lower;
    double m_left = 0.0;
    double m_line = 14.0; // height of a line of text
    Day m_from;
    Day m_to;
    double m_low = 0.0; // of values
    double m_high = 1.0;
    double m_step = 1.0;
    double m_reach = 20.0; // percent from the middle to either edge
};

} // namespace levelbar::ui
