// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QHeaderView>

namespace levelbar::ui {

// The names on the left, which never scroll away; the one of the cursor's row stands out.
class FloorNames : public QHeaderView {
    Q_OBJECT

public:
    explicit FloorNames(QWidget* parent = nullptr);

    // As wide as the longest name, up to a limit.
    [[nodiscard]] QSize sizeHint() const override;

protected:
    void paintSection(QPainter* painter, const QRect& rect, int logicalIndex) const override;

private:
    [[nodiscard]] int numbersWidth() const;
    void paintNumbers(QPainter& painter, const QRect& rect, int row) const;
};

// Column heads in two storeys: the exercise across all its sets, which stays in sight while the
// grid is scrolled sideways, and below it the set and side.
class FloorHeader : public QHeaderView {
    Q_OBJECT

public:
    explicit FloorHeader(QWidget* parent = nullptr);

    [[nodiscard]] QSize sizeHint() const override;

protected:
    void paintSection(QPainter* painter, const QRect& rect, int logicalIndex) const override;

private:
    // Where the exercise of that column stands in the viewport, without what is scrolled away.
    [[nodiscard]] QRect exerciseRect(int column, const QRect& section) const;
};

} // namespace levelbar::ui
