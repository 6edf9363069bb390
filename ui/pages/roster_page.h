// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/background_review.h"
#include "ui/workspace.h"

#include <QWidget>

class QLabel;
class QLineEdit;
class QSortFilterProxyModel;
class QTableView;

namespace levelbar::ui {

class PersonEditor;

class RosterModel;

// People: one row each, filtered as you type.
class RosterPage : public QWidget {
    Q_OBJECT

public:
    RosterPage(Workspace& workspace, BackgroundReview& review, QWidget* parent = nullptr);

    void focusFilter();

Q_SIGNALS:
    void opened(levelbar::MemberId member);

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void take(const ReviewedRosterPointer& roster);
    void openCurrent();
    void addPerson();
    void countShown();

    Workspace& m_workspace;
    RosterModel* m_model;
    QSortFilterProxyModel* m_proxy;
    QLineEdit* m_filter;
    QLabel* m_count;
    QTableView* m_table;
    PersonEditor* m_editor = nullptr; // once it was wanted
};

} // namespace levelbar::ui
