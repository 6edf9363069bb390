// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/member/member.h"
#include "ui/workspace.h"

#include <QDialog>

#include <string_view>

class QCheckBox;
class QComboBox;
class QFormLayout;
class QLabel;
class QLineEdit;
class QListWidget;
class QPlainTextEdit;

namespace levelbar::ui {

// The form of one person: a new one, or one whose details are put right. What is not known stays
// empty. Ctrl+Enter keeps, Esc leaves.
class PersonEditor : public QDialog {
    Q_OBJECT

public:
    explicit PersonEditor(Workspace& workspace, QWidget* parent = nullptr);

    // Both throw StoreError.
    void startNew();
    void start(MemberId member);

Q_SIGNALS:
    void kept(levelbar::MemberId member);

protected:
    void keyPressEvent(QKeyEvent* event) override;

private:
    void makeLayout();
    void addRow(QFormLayout* form, const QString& label, QWidget* field, const char* name);
    void fill(const Member& member);
    void fillClasses();
    void save();
    [[nodiscard]] Result<Member> typed();
    void refuse(const QString& what, const Fault& fault);

    Workspace& m_workspace;
    Member m_member; // as it was
    QLabel* m_refusal;
    QLineEdit* m_code;
    QLineEdit* m_name;
    QLineEdit* m_birth;
    QComboBox* m_sex;
    QLineEdit* m_stature;
    QLineEdit* m_mass;
    QComboBox* m_dominant;
    QComboBox* m_experience;
    QComboBox* m_goal;
    QLineEdit* m_group;
    QPlainTextEdit* m_note;
    QListWidget* m_classes;
    QCheckBox* m_archived;
    QString m_wrong; // the field that typed() refused
};

} // namespace levelbar::ui
