// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/today/follow_up.h"
#include "storage/today_store.h"
#include "ui/background_review.h"
#include "ui/workspace.h"

#include <QWidget>

#include <vector>

class QLabel;
class QListWidget;
class QListWidgetItem;

namespace levelbar::ui {

// The meetings of the day, and what is worth knowing of the people of the one chosen: the next
// one, unless another is picked.
class BriefPanel : public QWidget {
    Q_OBJECT

public:
    explicit BriefPanel(Workspace& workspace, QWidget* parent = nullptr);

    // Throws StoreError.
    void show(const ReviewedRosterPointer& roster);

Q_SIGNALS:
    void opened(levelbar::MemberId member);

private:
    void showMeetings();
    void showBrief();
    void addPeople(const std::vector<MemberId>& expected);
    void addPlan(const storage::DayMeeting& meeting);
    void addFollowUps(const std::vector<MemberId>& expected, const storage::DayMeeting& meeting);
    void openItem(const QListWidgetItem* item);

    Workspace& m_workspace;
    ReviewedRosterPointer m_roster;
    std::vector<storage::DayMeeting> m_all;
    QListWidget* m_meetings;
    QLabel* m_title;
    QListWidget* m_brief;
};

} // namespace levelbar::ui
