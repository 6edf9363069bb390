// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/rail_icon.h"

#include <QPainter>
#include <QPixmap>

namespace levelbar::ui {

namespace {

constexpr int kSize = 64; // drawn large, scaled down by the button

// A list with the first line marked.
void drawToday(QPainter& painter, const QColor& ink)
{
    for (const int y : {14, 32, 50}) {
        painter.drawLine(QPointF(24, y), QPointF(56, y));
    }
    painter.drawEllipse(QPointF(11, 32), 3, 3);
    painter.drawEllipse(QPointF(11, 50), 3, 3);
    painter.setBrush(ink);
    painter.drawEllipse(QPointF(11, 14), 5, 5);
}

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

// Steps that rise, one filled: rungs of a ladder of exercises.
void drawExercises(QPainter& painter, const QColor& ink)
{
    painter.drawRect(QRectF(8, 42, 14, 14));
    painter.drawRect(QRectF(42, 10, 14, 46));
    painter.setBrush(ink);
    painter.drawRect(QRectF(25, 26, 14, 30));
}

// A rack seen from the front with a bar across.
void drawGym(QPainter& painter, const QColor& ink)
{
    painter.drawLine(QPointF(18, 8), QPointF(18, 56));
    painter.drawLine(QPointF(46, 8), QPointF(46, 56));
    painter.drawLine(QPointF(4, 26), QPointF(60, 26));
    painter.setBrush(ink);
    painter.drawRect(QRectF(6, 18, 4, 16));
    painter.drawRect(QRectF(54, 18, 4, 16));
}

// A sheet with lines and a rising stroke.
void drawReports(QPainter& painter)
{
    painter.drawRect(QRectF(14, 6, 36, 52));
    painter.drawLine(QPointF(22, 42), QPointF(42, 42));
    painter.drawLine(QPointF(22, 50), QPointF(42, 50));
    painter.drawPolyline(QPolygonF({{21, 32}, {29, 24}, {34, 27}, {43, 15}}));
}

// A week: columns of a day, with hours in some of them.
void drawTimetable(QPainter& painter, const QColor& ink)
{
    painter.drawRect(QRectF(8, 10, 48, 44));
    painter.drawLine(QPointF(24, 10), QPointF(24, 54));
    painter.drawLine(QPointF(40, 10), QPointF(40, 54));
    painter.fillRect(QRectF(12, 18, 8, 9), ink);
    painter.fillRect(QRectF(28, 32, 8, 14), ink);
    painter.fillRect(QRectF(44, 18, 8, 9), ink);
}

// Weeks ahead: blocks that grow, then a lighter one.
void drawPlan(QPainter& painter, const QColor& ink)
{
    painter.drawLine(QPointF(6, 56), QPointF(58, 56));
    painter.fillRect(QRectF(8, 36, 10, 16), ink);
    painter.fillRect(QRectF(21, 26, 10, 26), ink);
    painter.fillRect(QRectF(34, 14, 10, 38), ink);
    painter.drawRect(QRectF(48, 42, 8, 10));
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
    case RailIcon::Today:
        drawToday(painter, ink);
        break;
    case RailIcon::People:
        drawPeople(painter);
        break;
    case RailIcon::Floor:
        drawFloor(painter, ink);
        break;
    case RailIcon::Sides:
        drawSides(painter, ink);
        break;
    case RailIcon::Exercises:
        drawExercises(painter, ink);
        break;
    case RailIcon::Gym:
        drawGym(painter, ink);
        break;
    case RailIcon::Plan:
        drawPlan(painter, ink);
        break;
    case RailIcon::Timetable:
        drawTimetable(painter, ink);
        break;
    case RailIcon::Reports:
        drawReports(painter);
        break;
    }
    painter.end();
    return QIcon(pixmap);
}

} // namespace levelbar::ui
