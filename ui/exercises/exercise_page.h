// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/exercise/ladder.h"
#include "core/review/history.h"
#include "ui/exercises/exercise_editor.h"
#include "ui/workspace.h"

#include <QStringList>
#include <QWidget>

class QCheckBox;
class QLabel;
class QLineEdit;
class QPushButton;
class QStackedWidget;
class QTextBrowser;
class QTreeWidget;
class QTreeWidgetItem;

namespace levelbar::ui {

class LadderEditor;

// Exercises: the library by pattern, with a filter as one types; what each is taught by, the
// ladders it stands on; the gym's own ones and its changes.
class ExercisePage : public QWidget {
    Q_OBJECT

public:
    explicit ExercisePage(Workspace& workspace, QWidget* parent = nullptr);

    void choose(ExerciseId exercise);

private:
    void makeLayout();
    QWidget* makeList();
    QWidget* makeDetail();
    void refresh();
    void fillList();
    // The exercises of a pattern that are shown now; null when there are none.
    [[nodiscard]] QTreeWidgetItem* groupOf(int pattern, const QStringList& wanted) const;
    void showChosen();
    void startNew();
    void startChange();
    void hideChosen();
    void keep(const TypedExercise& typed);
    void startLadder();
    void keepLadder(const Ladder& ladder);
    void dropLadder(const Ladder& ladder);
    void leaveEditor();
    [[nodiscard]] ExerciseId chosenId() const;
    [[nodiscard]] const Exercise* chosen() const;

    Workspace& m_workspace;
    Library m_library;
    std::vector<Ladder> m_ladders;
    QLineEdit* m_filter;
    QCheckBox* m_withHidden;
    QTreeWidget* m_list;
    QLabel* m_count;
    QStackedWidget* m_sides;
    QLabel* m_name;
    QTextBrowser* m_text;
    QPushButton* m_hide;
    ExerciseEditor* m_editor;
    LadderEditor* m_ladderEditor;
};

} // namespace levelbar::ui
