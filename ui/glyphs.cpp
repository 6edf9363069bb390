// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/glyphs.h"

#include <QObject>
#include <QPainter>
#include <QPainterPath>

#include <algorithm>
#include <cmath>

namespace levelbar::ui {

namespace {

constexpr double kClear = 0.90;
constexpr double kLeaning = 0.60;
constexpr double kSteepestPercent = 20.0;
constexpr double kSteepestPerWeek = 1.0;

QPen barPen(const QPalette& palette, bool isDoubtful)
{
    QPen pen(palette.color(QPalette::Text), 3.0);
    pen.setCapStyle(Qt::RoundCap);
    if (isDoubtful) {
        pen.setDashPattern({1.2, 1.6});
    }
    return pen;
}

} // namespace

bool hasClearSide(const SideReview& side)
{
    return side.weaker && side.days >= 2 && side.probabilitySide >= kClear;
}

void paintTilt(QPainter& painter,
               const QRectF& place,
               const SideReview& side,
               const QPalette& palette)
{
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    const double half = std::min(place.width() * 0.32, 46.0);
    const double rise = place.height() * 0.26;
    const QPointF centre = place.center();
    const bool isLeaning = side.weaker && side.days >= 2 && side.probabilitySide >= kLeaning;
    const double size = std::min(1.0, std::abs(side.differencePercent.value) / kSteepestPercent);
    const bool isLeft = side.weaker == Side::Left;
    const double drop = isLeaning ? rise * (0.35 + 0.65 * size) * (isLeft ? 1.0 : -1.0) : 0.0;
    const QPointF left(centre.x() - half, centre.y() + drop);
    const QPointF right(centre.x() + half, centre.y() - drop);
    painter.setPen(barPen(palette, !hasClearSide(side)));
    painter.drawLine(left, right);
    if (isLeaning) {
        const QPointF low = isLeft ? left : right;
        const double radius = std::min(9.0, place.height() * 0.30);
        const Colours tones = colours(palette);
        const QColor tone = isLeft ? tones.left : tones.right;
        const QPointF mark = low + QPointF(isLeft ? -radius - 3.0 : radius + 3.0, 0.0);
        painter.setPen(QPen(tone, 2.0));
        painter.setBrush(isLeft ? palette.color(QPalette::Base) : tone);
        painter.drawEllipse(mark, radius, radius);
        QFont font = painter.font();
        font.setBold(true);
        font.setPixelSize(static_cast<int>(radius * 1.35));
        painter.setFont(font);
        painter.setPen(isLeft ? palette.color(QPalette::Text) : QColor(Qt::white));
        painter.drawText(QRectF(mark - QPointF(radius, radius), QSizeF(2 * radius, 2 * radius)),
                         Qt::AlignCenter,
                         isLeft ? QObject::tr("L", "left side") : QObject::tr("R", "right side"));
    }
    painter.restore();
}

void paintTrend(QPainter& painter, const QRectF& place, const Trend& trend, const QPalette& palette)
{
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    const QRectF box = place.adjusted(6, 5, -6, -5);
    if (!trend.percentPerWeek) {
        painter.setBrush(colours(palette).quiet);
        painter.setPen(Qt::NoPen);
        for (const double x : {0.35, 0.5, 0.65}) {
            painter.drawEllipse(QPointF(box.left() + x * box.width(), box.center().y()), 2.2, 2.2);
        }
        painter.restore();
        return;
    }
    const auto heightAt = [&](double perWeek) {
        const double share = std::clamp(perWeek / kSteepestPerWeek, -1.0, 1.0);
        return box.center().y() - share * box.height() / 2.0;
    };
    const QPointF start(box.left(), box.center().y());
    QPainterPath fan(start);
    fan.lineTo(box.right(), heightAt(trend.percentPerWeek->low));
    fan.lineTo(box.right(), heightAt(trend.percentPerWeek->high));
    fan.closeSubpath();
    painter.fillPath(fan, colours(palette).band);
    const bool isCalled = trend.call != TrendCall::Unclear;
    painter.setPen(barPen(palette, !isCalled));
    painter.drawLine(start, QPointF(box.right(), heightAt(trend.percentPerWeek->value)));
    painter.restore();
}

} // namespace levelbar::ui
