// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/safe_chart_view.h"

#include <QGraphicsItem>
#include <QKeyEvent>
#include <QMouseEvent>

namespace levelbar::ui {

SafeChartView::SafeChartView(QChart* chart, QWidget* parent)
    : QChartView(chart, parent)
{
    setRenderHint(QPainter::Antialiasing);
    setMouseTracking(true);
    setFocusPolicy(Qt::StrongFocus);
    setFrameShape(QFrame::NoFrame);
}

void SafeChartView::mousePressEvent(QMouseEvent* event)
{
    if (itemAt(event->pos()) != nullptr) {
        QChartView::mousePressEvent(event);
    }
}

void SafeChartView::mouseMoveEvent(QMouseEvent* event)
{
    QChartView::mouseMoveEvent(event);
    const QPointF place = chart()->mapFromScene(mapToScene(event->pos()));
    if (chart()->plotArea().contains(place)) {
        Q_EMIT pointedAt(chart()->mapToValue(place));
    }
}

void SafeChartView::keyPressEvent(QKeyEvent* event)
{
    if (event->key() == Qt::Key_Left || event->key() == Qt::Key_Right) {
        Q_EMIT stepped(event->key() == Qt::Key_Left ? -1 : 1);
        return;
    }
    QChartView::keyPressEvent(event);
}

} // namespace levelbar::ui
