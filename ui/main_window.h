// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/background_review.h"
#include "ui/workspace.h"

#include <QMainWindow>

class QButtonGroup;
class QLabel;
class QStackedWidget;
class QToolButton;
class QVBoxLayout;

namespace levelbar::ui {

class EmergencyWindow;
class ExercisePage;
class FloorPage;
class GymPage;
class MemberPage;
class PlanPage;
class ReportPage;
class RosterPage;
class SidesPage;
class TimetablePage;
class TodayPage;

// The window: a rail of pages, the page, and one line that says what was last done. Pages own
// what they do; the window knows only which one is in front, and taking back.
class MainWindow : public QMainWindow {
    Q_OBJECT

public:
    // The places of the rail and of the page that opens from it.
    enum Page { Today, People, Timetable, Floor, Plan, Sides, Exercises, Gym, Reports, Person };

    explicit MainWindow(Workspace& workspace, QWidget* parent = nullptr);
    ~MainWindow() override;

    void goTo(Page page);
    void openMember(MemberId member, ExerciseId exercise = {});

    [[nodiscard]] Page page() const;

    [[nodiscard]] BackgroundReview& review() { return m_review; }

    [[nodiscard]] FloorPage& floor() { return *m_floor; }

    void takeBackLast();
    void doAgain();

    // What to say and whom to call, about whom the page in front is.
    void openEmergency();

protected:
    void changeEvent(QEvent* event) override;

private:
    void makeRail(QVBoxLayout* rail);
    QToolButton* addButton(QVBoxLayout* rail, const char* name, const QString& label);
    void addPlace(QVBoxLayout* rail, Page page, const QString& label, int key);
    void connectPages();
    void makeShortcuts();
    void paintIcons();
    void restoreWindow();
    void reverse(ActionId action, const QString& verb);
    void tell(const QString& sentence);

    Workspace& m_workspace;
    BackgroundReview m_review;
    QStackedWidget* m_pages;
    QButtonGroup* m_rail;
    QLabel* m_line;
    TodayPage* m_today;
    RosterPage* m_roster;
    FloorPage* m_floor;
    SidesPage* m_sides;
    ExercisePage* m_exercises;
    GymPage* m_gym;
    ReportPage* m_reports;
    TimetablePage* m_timetable;
    PlanPage* m_plan;
    MemberPage* m_person;
    EmergencyWindow* m_emergency;
    Page m_before = Today; // where the person's page was opened from
};

} // namespace levelbar::ui
