// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/charts/safe_chart_view.h"

#include <optional>

class QRubberBand;

namespace levelbar::ui {

// A chart over time that is zoomed and moved by mouse and keys, with a crosshair. It says what is
// wanted, in the axis' values; whoever holds the axes does it. Drag: that stretch. Wheel, + and -:
// nearer and farther. Shift with the arrows: earlier and later. Double click and 0: everything.
class TimeChartView : public SafeChartView {
    Q_OBJECT

public:
    explicit TimeChartView(QChart* chart, QWidget* parent = nullptr);

    // In the axes' values; nothing: none.
    void setCrosshair(const std::optional<QPointF>& at);

Q_SIGNALS:
    void stretchWanted(double from, double to);
    void zoomWanted(double factor, std::optional<double> about); // nothing: the middle
    void moveWanted(double share); // of what is shown; above 0 to later days
    void allWanted();

protected:
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void mouseDoubleClickEvent(QMouseEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void drawForeground(QPainter* painter, const QRectF& rect) override;

private:
    [[nodiscard]] QRect plotOnView() const;
    [[nodiscard]] double valueAt(int x) const;

    QRubberBand* m_band;
    std::optional<int> m_pressedAt; // x in the view, while dragging
    std::optional<QPointF> m_crosshair;
};

} // namespace levelbar::ui
