// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/background_review.h"
#include "ui/workspace.h"

#include <QWidget>

class QLabel;

namespace levelbar::ui {

class BriefPanel;
class FollowUpPanel;
class LinesPanel;

// Today: the classes and what to know before them, who needs attention, follow-ups, and how right
// what was said beforehand has been.
class TodayPage : public QWidget {
    Q_OBJECT

public:
    TodayPage(Workspace& workspace, BackgroundReview& review, QWidget* parent = nullptr);

Q_SIGNALS:
    void opened(levelbar::MemberId member, levelbar::ExerciseId exercise); // 0: of none

protected:
    void showEvent(QShowEvent* event) override;

private:
    void makeLayout();
    void refresh(); // later, while the page is hidden
    void showHowRight();

    Workspace& m_workspace;
    BackgroundReview& m_review;
    QLabel* m_title;
    BriefPanel* m_brief;
    FollowUpPanel* m_followUps;
    LinesPanel* m_lines;
    QLabel* m_howRight;
    bool m_isStale = true;
};

} // namespace levelbar::ui
