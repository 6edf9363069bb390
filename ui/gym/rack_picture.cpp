// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/gym/rack_picture.h"

#include "core/bodyweight/push_up_words.h"
#include "ui/theme.h"
#include "ui/words.h"

#include <QPainter>

#include <algorithm>

namespace levelbar::ui {

namespace {

constexpr int kTopSpace = 150; // mm over the highest hole
constexpr double kUprightWidth = 26.0;
constexpr double kEdge = 14.0;

// Every hole is named when there is room, else every second, fifth or tenth.
int namedEvery(double apart, double lineHeight)
{
    for (const int every : {1, 2, 5, 10, 20}) {
        if (apart * every >= lineHeight) {
            return every;
        }
    }
    return 50;
}

} // namespace

RackPicture::RackPicture(QWidget* parent)
    : QWidget(parent)
{
    setObjectName(QStringLiteral("rackPicture"));
    setMinimumSize(200, 240);
}

void RackPicture::show(const RackHoles& holes)
{
    m_holes = holes;
    setAccessibleName(holes.count == 0 ? tr("No rack")
                                       : tr("Rack: hole 1 at %1, hole %2 at %3")
                                             .arg(plain(centimetres(holes.height(1))))
                                             .arg(holes.count)
                                             .arg(plain(centimetres(holes.height(holes.count)))));
    update();
}

void RackPicture::paintEvent(QPaintEvent* /*event*/)
{
    if (m_holes.count == 0) {
        return;
    }
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const Colours inks = colours(palette());
    const QColor ink = palette().color(QPalette::WindowText);
    const double top = m_holes.height(m_holes.count).tenthMillimetres / 10.0 + kTopSpace;
    const double floor = height() - kEdge;
    const double scale = (floor - kEdge) / top; // pixels a mm
    const double left = 18.0;
    painter.setPen(QPen(inks.grid, 2.0));
    painter.drawLine(QPointF(0.0, floor), QPointF(width(), floor));
    painter.setPen(QPen(ink, 1.5));
    painter.setBrush(palette().color(QPalette::Base));
    painter.drawRect(QRectF(left, kEdge, kUprightWidth, floor - kEdge));
    const double apart = m_holes.pitch.tenthMillimetres / 10.0 * scale;
    const int every = namedEvery(apart, fontMetrics().height());
    const double radius = std::clamp(apart * 0.3, 1.2, 5.0);
    for (int hole = 1; hole <= m_holes.count; ++hole) {
        const double y = floor - m_holes.height(hole).tenthMillimetres / 10.0 * scale;
        painter.setPen(QPen(ink, 1.2));
        painter.setBrush(ink);
        painter.drawEllipse(QPointF(left + kUprightWidth / 2.0, y), radius, radius);
        if ((hole - 1) % every != 0) {
            continue;
        }
        painter.setPen(QPen(inks.grid, 1.0));
        painter.drawLine(QPointF(left + kUprightWidth + 2.0, y),
                         QPointF(left + kUprightWidth + 14.0, y));
        painter.setPen(ink);
        const double lineHeight = fontMetrics().height();
        const QRectF place(left + kUprightWidth + 20.0, y - lineHeight / 2.0, 160.0, lineHeight);
        painter.drawText(
            place,
            Qt::AlignVCenter | Qt::AlignLeft,
            tr("%1   %2").arg(QString::number(hole), plain(centimetres(m_holes.height(hole)))));
    }
}

} // namespace levelbar::ui
