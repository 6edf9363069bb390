// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/rail_icon.h"

#include <QPainter>
#include <QPixmap>

namespace levelbar::ui {

namespace {

constexpr int kSize = 64; // drawn large, scaled down by the button

void drawPeople(QPainter& painter)
{
    painter.drawEllipse(QPointF(22, 22), 9, 9);
    painter.drawArc(QRectF(6, 36, 32, 34), 0, 180 * 16);
    painter.drawEllipse(QPointF(46, 26), 7, 7);
    painter.drawArc(QRectF(36, 40, 24, 26), 0, 180 * 16);
}

void drawFloor(QPainter& painter, const QColor& ink)
{
    for (int row = 0; row < 3; ++row) {
        for (int column = 0; column < 3; ++column) {
            const QRectF cell(8 + column * 17, 8 + row * 17, 13, 13);
            const bool isDone = row * 3 + column < 4;
            painter.setBrush(isDone ? QBrush(ink) : Qt::NoBrush);
            painter.drawRect(cell);
        }
    }
}

void drawSides(QPainter& painter, const QColor& ink)
{
    painter.drawLine(QPointF(10, 42), QPointF(54, 22));
    painter.setBrush(ink);
    painter.drawEllipse(QPointF(54, 22), 5, 5);
    painter.setBrush(Qt::NoBrush);
    painter.drawEllipse(QPointF(10, 42), 6, 6);
    painter.drawLine(QPointF(32, 34), QPointF(32, 56));
}

} // namespace

QIcon railIcon(RailIcon icon, const QColor& ink)
{
    QPixmap pixmap(kSize, kSize);
    pixmap.fill(Qt::transparent);
    QPainter painter(&pixmap);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(ink, 4.0, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    switch (icon) {
    case RailIcon::People:
        drawPeople(painter);
        break;
    case RailIcon::Floor:
        drawFloor(painter, ink);
        break;
    case RailIcon::Sides:
        drawSides(painter, ink);
        break;
    }
    painter.end();
    return QIcon(pixmap);
}

} // namespace levelbar::ui
