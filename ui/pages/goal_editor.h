// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/plan/strength_goal.h"
#include "ui/workspace.h"

#include <QWidget>

#include <optional>

class QLabel;
class QLineEdit;
class QPushButton;

namespace levelbar::ui {

// The 1RM that somebody works towards in one exercise and side: a load and, if wanted, a day.
// Hidden until it is asked for.
class GoalEditor : public QWidget {
    Q_OBJECT

public:
    explicit GoalEditor(Workspace& workspace, QWidget* parent = nullptr);

    // `unit` is that of a number typed without one. Closes the row when it is another goal's.
    // Throws StoreError.
    void show(MemberId member, ExerciseId exercise, Side side, MassUnit unit);

    void open();

    [[nodiscard]] const std::optional<StrengthGoal>& goal() const { return m_goal; }

Q_SIGNALS:
    void changed();

protected:
    void keyPressEvent(QKeyEvent* event) override;

private:
    void makeLayout();
    void fill();
    [[nodiscard]] Result<StrengthGoal> typed() const;
    void keep();
    void drop();
    void write(const std::optional<StrengthGoal>& goal);

    Workspace& m_workspace;
    QLineEdit* m_load;
    QLineEdit* m_by;
    QPushButton* m_drop;
    QLabel* m_refusal;
    MemberId m_member;
    ExerciseId m_exercise;
    Side m_side = Side::Both;
    MassUnit m_unit = MassUnit::Kilogram;
    std::optional<StrengthGoal> m_goal;
};

} // namespace levelbar::ui
