// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/floor/floor_session.h"
#include "ui/workspace.h"

#include <QWidget>

class QComboBox;
class QDateEdit;
class QLabel;
class QLineEdit;
class QListWidget;
class QListWidgetItem;

namespace levelbar::ui {

class FloorGrid;
class FloorModel;
class TemplateEditor;

// Floor: a class on a day, who came, and the grid of their sets, run from the keyboard.
class FloorPage : public QWidget {
    Q_OBJECT

public:
    explicit FloorPage(Workspace& workspace, QWidget* parent = nullptr);

    // What the status line says, for the window and for tests.
    [[nodiscard]] QString status() const;

    void openClass(ClassId groupClass, Day day);

Q_SIGNALS:
    void takeBackWanted(); // the window takes back and says what

private:
    void makeLayout();
    void readClasses();
    void openChosen();
    void rebuild();
    void fillPeople();
    void togglePerson(QListWidgetItem* item);
    void addPerson();
    void addClass();
    void storeCell(const QModelIndex& cell);
    void setTypedLoad(const QModelIndex& cell, const QString& text);
    void stepLoad(const QModelIndex& cell, int direction);
    void tellPlace(const QModelIndex& cell);
    void tell(const QString& sentence);
    void takeChange(const storage::Change& change);

    Workspace& m_workspace;
    FloorSession m_session;
    FloorModel* m_model;
    FloorGrid* m_grid;
    QComboBox* m_class;
    QDateEdit* m_day;
    QLineEdit* m_initials;
    QListWidget* m_people;
    QLineEdit* m_addPerson;
    TemplateEditor* m_template;
    QLabel* m_place;
    QLabel* m_status;
    bool m_isWriting = false; // our own change: the grid knows already
};

} // namespace levelbar::ui
