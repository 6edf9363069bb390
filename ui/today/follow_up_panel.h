// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/today/follow_up.h"
#include "ui/background_review.h"
#include "ui/workspace.h"

#include <QWidget>

#include <vector>

class QLabel;
class QLineEdit;
class QListWidget;
class QListWidgetItem;

namespace levelbar::ui {

// What the instructor wrote down to do: a line to write, and the list; the space bar says done.
class FollowUpPanel : public QWidget {
    Q_OBJECT

public:
    explicit FollowUpPanel(Workspace& workspace, QWidget* parent = nullptr);

    // Throws StoreError.
    void show(const ReviewedRosterPointer& roster);

    // Begins one about a person.
    void writeAbout(MemberId member, const QString& name);

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void makeLayout();
    void keepTyped();
    void setDone(const QListWidgetItem* item);
    void forgetPerson();
    void refuse(const QString& sentence);
    [[nodiscard]] QString wordsOf(const FollowUp& followUp,
                                  const ReviewedRosterPointer& roster) const;

    Workspace& m_workspace;
    std::vector<FollowUp> m_all;
    MemberId m_about; // 0: nobody
    QLabel* m_person;
    QLineEdit* m_text;
    QLineEdit* m_due;
    QLineEdit* m_owner;
    QLabel* m_refusal;
    QListWidget* m_list;
};

} // namespace levelbar::ui
