// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/member/member.h"
#include "core/today/follow_up.h"
#include "storage/incident_store.h"
#include "ui/report/file_chooser.h"
#include "ui/workspace.h"

#include <QWidget>

#include <optional>
#include <vector>

class QComboBox;
class QLabel;
class QLineEdit;
class QListWidget;
class QPlainTextEdit;
class QPushButton;
class QVBoxLayout;

namespace levelbar::ui {

// What happened, written down the same day: whom it hit, what, first aid, who saw it, what
// follows. Reports written before stand beside it and can be put right.
class IncidentForm : public QWidget {
    Q_OBJECT

public:
    IncidentForm(Workspace& workspace, FileChooser choose, QWidget* parent = nullptr);

    void startNew(MemberId about); // about nobody when it is not stored
    void refresh();                // the reports beside it

    // False when something typed would be lost and the person wants to go on typing.
    [[nodiscard]] bool mayLeave();

Q_SIGNALS:
    void left();

private:
    void makeFields(QVBoxLayout& layout);
    void makeButtons(QVBoxLayout& layout);
    void fillPeople();
    void fill(const storage::Incident& incident);
    void open(int row);
    // What is typed; nothing when it cannot be kept, and why is said.
    [[nodiscard]] std::optional<storage::Incident> taken();
    [[nodiscard]] bool takeWhen(storage::Incident& incident);
    void takeWho(storage::Incident& incident) const;
    // Without text when no day is typed; nothing when it cannot be kept, and why is said.
    [[nodiscard]] std::optional<FollowUp> takenFollowUp(const storage::Incident& incident);
    void refuse(const QString& sentence);
    [[nodiscard]] bool keep();
    void save();
    [[nodiscard]] QString nameOf(const storage::Incident& incident) const;

    Workspace& m_workspace;
    FileChooser m_choose;
    QListWidget* m_list;
    QLineEdit* m_day;
    QLineEdit* m_time;
    QComboBox* m_person;
    QPlainTextEdit* m_what;
    QPlainTextEdit* m_firstAid;
    QLineEdit* m_witness;
    QLineEdit* m_followUp;
    QLineEdit* m_due;
    QLineEdit* m_author;
    QLabel* m_said;
    std::vector<Member> m_people;
    std::vector<storage::Incident> m_all;
    storage::Incident m_shown; // as it was opened
};

} // namespace levelbar::ui
