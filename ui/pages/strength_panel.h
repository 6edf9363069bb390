// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/exercise/effort.h"
#include "ui/background_review.h"
#include "ui/workspace.h"

#include <QWidget>

class QComboBox;
class QLabel;
class QToolButton;

namespace levelbar::ui {

class ChartSaver;
class GoalEditor;
class StrengthChart;

// A person's strength in one exercise and side: in words and as a chart, beside a second one if
// wanted, in kilograms, pounds or body masses; with the goal, if there is one.
class StrengthPanel : public QWidget {
    Q_OBJECT

public:
    explicit StrengthPanel(Workspace& workspace, QWidget* parent = nullptr);

    // Keeps what was chosen where the person has it. `history` and `library` must outlive the
    // next call.
    void show(const MemberHistory& history,
              const Library& library,
              const ReviewedRosterPointer& roster,
              EffortScale effort);

    void choose(ExerciseId exercise); // nothing happens when it is not one of theirs
    void focusChoice();

Q_SIGNALS:
    void chosen(levelbar::ExerciseId exercise, levelbar::Side side);

private:
    void makeLayout();
    void fillChoices();
    void fillBeside();
    void showExercise();
    void showWords(const StrengthReview* review);
    [[nodiscard]] QString goalWords(const StrengthReview& review) const;
    [[nodiscard]] MassUnit usualUnit() const;
    [[nodiscard]] const StrengthReview* reviewAt(int row) const;
    [[nodiscard]] QString labelOf(const StrengthReview& review) const;

    Workspace& m_workspace;
    QComboBox* m_exercise;
    QComboBox* m_beside;
    QComboBox* m_unit;
    ChartSaver* m_saver;
    QToolButton* m_setGoal;
    QLabel* m_words;
    GoalEditor* m_goal;
    StrengthChart* m_chart;
    const MemberHistory* m_history = nullptr;
    const Library* m_library = nullptr;
    ReviewedRosterPointer m_roster;
    const MemberReview* m_review = nullptr; // in m_roster
    EffortScale m_effort = EffortScale::Reserve;
};

} // namespace levelbar::ui
