// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

class QLabel;

namespace levelbar::ui {

// What the marks in the cells mean.
class KnownLegend : public QWidget {
    Q_OBJECT

public:
    explicit KnownLegend(QWidget* parent = nullptr);

    [[nodiscard]] QSize sizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;
};

// Under the grid, to be read from two steps away: where the cursor stands and what is planned
// there, what was saved last, how far the class is.
class FloorStatus : public QWidget {
    Q_OBJECT

public:
    explicit FloorStatus(QWidget* parent = nullptr);

    void showPlace(const QString& person, const QString& set, const QString& plan);
    // isRefused: something was not done. Read out by screen readers.
    void say(const QString& sentence, bool isRefused);
    void showProgress(int known, int all);

protected:
    void changeEvent(QEvent* event) override;

private:
    void showSaid();

    QLabel* m_place;
    QLabel* m_said;
    QLabel* m_progress;
    bool m_isRefused = false;
};

} // namespace levelbar::ui
