// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QChartView>

namespace levelbar::ui {

// QChartView without the crash of Qt 6.4 on a press where no item lies (QTBUG-118669), and with
// the pointer's place told.
class SafeChartView : public QChartView {
    Q_OBJECT

public:
    explicit SafeChartView(QChart* chart, QWidget* parent = nullptr);

Q_SIGNALS:
    void pointedAt(const QPointF& value); // in the axes' values
    void stepped(int direction);          // left and right keys: -1, +1

protected:
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
};

} // namespace levelbar::ui
