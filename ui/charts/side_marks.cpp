// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/side_marks.h"

#include "ui/theme.h"

#include <QPainter>

namespace levelbar::ui {

namespace {

void paintDiamond(QPainter& painter, const QPointF& at, double radius)
{
    painter.drawPolygon(QPolygonF{{at.x() - radius, at.y()},
                                  {at.x(), at.y() - radius},
                                  {at.x() + radius, at.y()},
                                  {at.x(), at.y() + radius}});
}

} // namespace

void paintSideMark(
    QPainter& painter, const QPointF& at, Side side, SideMark mark, const QPalette& palette)
{
    const Colours tones = colours(palette);
    const QColor tone = side == Side::Left ? tones.left : tones.right;
    painter.setPen(QPen(tone, 1.6));
    painter.setBrush(side == Side::Left ? palette.color(QPalette::Base) : tone);
    switch (mark) {
    case SideMark::Set:
        painter.drawEllipse(at, kSideMark, kSideMark);
        return;
    case SideMark::Test:
        paintDiamond(painter, at, kSideMark + 2.5);
        return;
    case SideMark::AtLeast:
        break;
    }
    painter.setBrush(Qt::NoBrush);
    painter.drawPolyline(QPolygonF{{at.x() - kSideMark, at.y() + 2.0},
                                   {at.x(), at.y() - kSideMark + 1.0},
                                   {at.x() + kSideMark, at.y() + 2.0}});
}

void paintPairMark(QPainter& painter, const QPointF& at, PairKind kind, const QPalette& palette)
{
    const QColor ink = palette.color(QPalette::Text);
    painter.setPen(QPen(ink, 1.4));
    painter.setBrush(ink);
    switch (kind) {
    case PairKind::Test:
        paintDiamond(painter, at, kSideMark + 2.0);
        return;
    case PairKind::Open:
        painter.setBrush(palette.color(QPalette::Base));
        painter.drawEllipse(at, kSideMark + 2.0, kSideMark + 2.0);
        painter.setBrush(ink);
        painter.drawEllipse(at, 1.8, 1.8);
        return;
    case PairKind::Sets:
        break;
    }
    painter.drawEllipse(at, kSideMark - 1.0, kSideMark - 1.0);
}

} // namespace levelbar::ui
