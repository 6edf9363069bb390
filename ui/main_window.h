// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/background_review.h"
#include "ui/workspace.h"

#include <QMainWindow>

class QButtonGroup;
class QLabel;
class QStackedWidget;
class QVBoxLayout;

namespace levelbar::ui {

class FloorPage;
class MemberPage;
class RosterPage;
class SidesPage;

// The window: a rail of pages, the page, and one line that says what was last done. Pages own
// what they do; the window knows only which one is in front, and taking back.
class MainWindow : public QMainWindow {
    Q_OBJECT

public:
    // The places of the rail and of the page that opens from it.
    enum Page { People, Floor, Sides, Person };

    explicit MainWindow(Workspace& workspace, QWidget* parent = nullptr);
    ~MainWindow() override;

    void goTo(Page page);
    void openMember(MemberId member);

    [[nodiscard]] Page page() const;

    [[nodiscard]] BackgroundReview& review() { return m_review; }

    [[nodiscard]] FloorPage& floor() { return *m_floor; }

    void takeBackLast();
    void doAgain();

protected:
    void changeEvent(QEvent* event) override;

private:
    void makeRail(QVBoxLayout* rail);
    void addPlace(QVBoxLayout* rail, Page page, const QString& label, int key);
    void paintIcons();
    void restoreWindow();
    void reverse(ActionId action, const QString& verb);
    void tell(const QString& sentence);

    Workspace& m_workspace;
    BackgroundReview m_review;
    QStackedWidget* m_pages;
    QButtonGroup* m_rail;
    QLabel* m_line;
    RosterPage* m_roster;
    FloorPage* m_floor;
    SidesPage* m_sides;
    MemberPage* m_person;
    Page m_before = People; // where the person's page was opened from
};

} // namespace levelbar::ui
