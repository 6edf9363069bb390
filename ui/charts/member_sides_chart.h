// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/review/member_sides_figure.h"

#include <QWidget>

#include <optional>
#include <vector>

class QLabel;

namespace levelbar::ui {

// A person's left and right through time, with a line of text that reads out the day under the
// pointer or stepped to with the left and right keys.
class MemberSidesChart : public QWidget {
    Q_OBJECT

public:
    explicit MemberSidesChart(QWidget* parent = nullptr);

    void show(const MemberSidesFigure& figure);

    [[nodiscard]] const MemberSidesFigure& figure() const { return m_figure; }

    [[nodiscard]] QString readOut() const;

    // For tests: where a difference lies, in the picture's pixels from the top.
    [[nodiscard]] double differenceHeight(double percent) const;

protected:
    void keyPressEvent(QKeyEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void paintPicture();
    void point(double x);
    void choose(std::size_t place);
    [[nodiscard]] QString textOf(Day day) const;

    MemberSidesFigure m_figure;
    std::vector<Day> m_days; // that can be read out
    std::optional<std::size_t> m_current;
    QWidget* m_picture;
    QLabel* m_readOut;
};

} // namespace levelbar::ui
