// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/background_review.h"
#include "ui/workspace.h"

#include <QWidget>

class QComboBox;
class QLabel;
class QListWidget;
class QTableView;

namespace levelbar::ui {

class SetsModel;
class StrengthChart;

// Person: who they are, their strength over time, their sides, their sets.
class MemberPage : public QWidget {
    Q_OBJECT

public:
    MemberPage(Workspace& workspace, BackgroundReview& review, QWidget* parent = nullptr);

    void open(MemberId member);

    [[nodiscard]] MemberId member() const { return m_member; }

Q_SIGNALS:
    void left(); // back to where one came from

protected:
    void keyPressEvent(QKeyEvent* event) override;

private:
    void makeLayout();
    void refresh();
    void showFacts(const Member& member);
    void showSides(const MemberReview* review);
    void fillExercises(const MemberReview* review);
    void showExercise();
    [[nodiscard]] const MemberReview* reviewOf(MemberId member) const;

    Workspace& m_workspace;
    BackgroundReview& m_review;
    MemberId m_member;
    Library m_library;
    MemberHistory m_history;
    QLabel* m_name;
    QLabel* m_facts;
    QListWidget* m_reasons;
    QListWidget* m_sides;
    QComboBox* m_exercise;
    QLabel* m_strengthWords;
    StrengthChart* m_chart;
    SetsModel* m_sets;
    QTableView* m_table;
};

} // namespace levelbar::ui
