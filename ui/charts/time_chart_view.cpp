// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/time_chart_view.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QRubberBand>
#include <QWheelEvent>

#include <algorithm>
#include <cmath>

namespace levelbar::ui {

namespace {

constexpr int kLeastDrag = 12; // pixels; less is a click with a shaking hand
constexpr double kKeyZoom = 1.5;
constexpr double kKeyMove = 0.25;
constexpr double kWheelStep = 120.0; // eighths of a degree a notch

} // namespace

TimeChartView::TimeChartView(QChart* chart, QWidget* parent)
    : SafeChartView(chart, parent)
    , m_band(new QRubberBand(QRubberBand::Rectangle, this))
{
    // The crosshair reaches over the whole plot.
    setViewportUpdateMode(QGraphicsView::FullViewportUpdate);
    m_band->hide();
}

void TimeChartView::setCrosshair(const std::optional<QPointF>& at)
{
    m_crosshair = at;
    viewport()->update();
}

QRect TimeChartView::plotOnView() const
{
    return mapFromScene(chart()->mapToScene(chart()->plotArea())).boundingRect();
}

double TimeChartView::valueAt(int x) const
{
    const QPointF scene = mapToScene(QPoint(x, plotOnView().center().y()));
    return chart()->mapToValue(chart()->mapFromScene(scene)).x();
}

void TimeChartView::mousePressEvent(QMouseEvent* event)
{
    if (event->button() == Qt::LeftButton && plotOnView().contains(event->pos())) {
        setFocus(Qt::MouseFocusReason);
        m_pressedAt = event->pos().x();
        event->accept();
        return;
    }
    SafeChartView::mousePressEvent(event);
}

void TimeChartView::mouseMoveEvent(QMouseEvent* event)
{
    SafeChartView::mouseMoveEvent(event);
    if (!m_pressedAt) {
        return;
    }
    const QRect plot = plotOnView();
    const int to = std::clamp(event->pos().x(), plot.left(), plot.right());
    m_band->setGeometry(
        QRect(QPoint(*m_pressedAt, plot.top()), QPoint(to, plot.bottom())).normalized());
    m_band->setVisible(std::abs(to - *m_pressedAt) >= kLeastDrag);
}

void TimeChartView::mouseReleaseEvent(QMouseEvent* event)
{
    if (!m_pressedAt) {
        SafeChartView::mouseReleaseEvent(event);
        return;
    }
    const int from = *m_pressedAt;
    m_pressedAt.reset();
    m_band->hide();
    const QRect plot = plotOnView();
    const int to = std::clamp(event->pos().x(), plot.left(), plot.right());
    if (std::abs(to - from) >= kLeastDrag) {
        Q_EMIT stretchWanted(valueAt(std::min(from, to)), valueAt(std::max(from, to)));
    }
}

void TimeChartView::mouseDoubleClickEvent(QMouseEvent* event)
{
    m_pressedAt.reset();
    m_band->hide();
    event->accept();
    Q_EMIT allWanted();
}

void TimeChartView::wheelEvent(QWheelEvent* event)
{
    const double notches = event->angleDelta().y() / kWheelStep;
    event->accept();
    if (notches != 0.0) {
        Q_EMIT zoomWanted(std::pow(1.25, notches), valueAt(event->position().toPoint().x()));
    }
}

void TimeChartView::keyPressEvent(QKeyEvent* event)
{
    const bool isArrow = event->key() == Qt::Key_Left || event->key() == Qt::Key_Right;
    if (isArrow && event->modifiers().testFlag(Qt::ShiftModifier)) {
        Q_EMIT moveWanted(event->key() == Qt::Key_Left ? -kKeyMove : kKeyMove);
        return;
    }
    switch (event->key()) {
    case Qt::Key_Plus:
    case Qt::Key_Equal: // the same key without Shift
        Q_EMIT zoomWanted(kKeyZoom, std::nullopt);
        return;
    case Qt::Key_Minus:
        Q_EMIT zoomWanted(1.0 / kKeyZoom, std::nullopt);
        return;
    case Qt::Key_0:
        Q_EMIT allWanted();
        return;
    default:
        SafeChartView::keyPressEvent(event);
    }
}

void TimeChartView::drawForeground(QPainter* painter, const QRectF& rect)
{
    SafeChartView::drawForeground(painter, rect);
    const QRectF plot = chart()->mapToScene(chart()->plotArea()).boundingRect();
    if (!m_crosshair) {
        return;
    }
    const QPointF at = chart()->mapToScene(chart()->mapToPosition(*m_crosshair));
    if (at.x() < plot.left() || at.x() > plot.right()) {
        return;
    }
    painter->save();
    painter->setPen(QPen(palette().color(QPalette::Link), 1.0, Qt::DotLine));
    painter->drawLine(QPointF(at.x(), plot.top()), QPointF(at.x(), plot.bottom()));
    if (at.y() >= plot.top() && at.y() <= plot.bottom()) {
        painter->drawLine(QPointF(plot.left(), at.y()), QPointF(plot.right(), at.y()));
    }
    painter->restore();
}

} // namespace levelbar::ui
