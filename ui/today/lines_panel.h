// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/background_review.h"
#include "ui/workspace.h"

#include <QWidget>

#include <optional>

class QLabel;
class QLineEdit;
class QListView;

namespace levelbar::ui {

class AsidePanel;
class LinesModel;

// Who needs attention today: one line a person. Enter opens the person, N says "not before", S
// "settled because", F writes a follow-up about the person, A shows what was put aside.
class LinesPanel : public QWidget {
    Q_OBJECT

public:
    explicit LinesPanel(Workspace& workspace, QWidget* parent = nullptr);

    // Reads anew what was settled, and shows what is left. Throws StoreError.
    void show(const ReviewedRosterPointer& roster);
    void focusLines();

Q_SIGNALS:
    void opened(levelbar::MemberId member, levelbar::ExerciseId exercise); // 0: of none
    void followUpWanted(levelbar::MemberId member, const QString& name);

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    // What the typed line is about.
    enum class Asking { Nothing, NotBefore, Settled };

    void makeLayout();
    QWidget* makeButtons();
    void openCurrent();
    void ask(Asking what);
    void keepTyped();
    void stopAsking();
    void wantFollowUp();
    void keep(const TodayLine& line, std::optional<Day> until, const std::string& because);
    void tellSummary(const ReviewedRosterPointer& roster);

    Workspace& m_workspace;
    LinesModel* m_model;
    QLabel* m_summary;
    QListView* m_view;
    AsidePanel* m_aside;
    QWidget* m_editor;
    QLabel* m_question;
    QLineEdit* m_typed;
    QLabel* m_refusal;
    Asking m_asking = Asking::Nothing;
    MemberId m_about; // whose line the typed words are about
};

} // namespace levelbar::ui
