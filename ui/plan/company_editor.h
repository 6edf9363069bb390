// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/review/history.h"
#include "ui/workspace.h"

#include <QDialog>

#include <vector>

class QComboBox;
class QListWidget;
class QListWidgetItem;
class QPushButton;

namespace levelbar::ui {

// Who can spot for others, and who must not share a rack. Every change is kept at once and can be
// taken back like any other.
class CompanyEditor : public QDialog {
    Q_OBJECT

public:
    explicit CompanyEditor(Workspace& workspace, QWidget* parent = nullptr);

    // Those whom it is about. Throws StoreError.
    void setPeople(const std::vector<MemberHistory>& people);

private:
    void makeLayout();
    void fill();
    void addPair();
    void removePair();
    void setSpotter(const QListWidgetItem* item);
    template <typename Work> void write(const Work& work);
    [[nodiscard]] QString nameOf(MemberId member) const;

    Workspace& m_workspace;
    std::vector<Member> m_people;
    std::vector<std::pair<MemberId, MemberId>> m_apart; // in the order of the list
    QListWidget* m_spotters;
    QListWidget* m_pairs;
    QComboBox* m_one;
    QComboBox* m_other;
    QPushButton* m_add;
};

} // namespace levelbar::ui
