// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/review/figures.h"

#include <QAbstractScrollArea>

#include <optional>

namespace levelbar::ui {

// Everyone's left/right difference in one measure on one axis: a dot with whiskers a row, the
// left half for those whose left is weaker, beyond the threshold shaded. Painted by hand: names
// beside the rows and hundreds of rows are more than a chart library's axis gives.
class SidesChart : public QAbstractScrollArea {
    Q_OBJECT

public:
    explicit SidesChart(QWidget* parent = nullptr);

    // Keeps the person chosen when they are still there.
    void show(const SidesFigure& figure);
    void choose(MemberId member);

    [[nodiscard]] std::optional<SidesRow> current() const;

    // Where a difference lies, in viewport pixels: differences with a weaker left go left of
    // place(0). `percent` as in SideReview.
    [[nodiscard]] double place(double percent) const;

Q_SIGNALS:
    void opened(levelbar::MemberId member);
    void chosen();       // another row than before
    void reasonWanted(); // R: why this difference is known

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void mouseDoubleClickEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    bool viewportEvent(QEvent* event) override;

private:
    [[nodiscard]] int rowHeight() const;
    [[nodiscard]] int headerHeight() const;
    [[nodiscard]] int rowAt(int y) const;
    void setScrollRange();
    void select(int row);
    void paintAxis(QPainter& painter) const;
    void paintRow(QPainter& painter, int row, int top) const;

    SidesFigure m_figure;
    double m_reach = 30.0; // percent from the middle to either edge
    int m_current = -1;    // nobody
};

} // namespace levelbar::ui
