// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/background_review.h"
#include "ui/workspace.h"

#include <QWidget>

class QLabel;
class QListWidget;
class QPushButton;
class QTabWidget;

namespace levelbar::ui {

class AttendanceStrip;
class MemberSidesPanel;
class PersonEditor;
class PushUpPanel;
class SetsPanel;
class SetupCardPanel;
class StrengthPanel;
class TargetCard;
class TestsPanel;

// Person: who they are, their strength over time, their sides, their tests, their sets.
class MemberPage : public QWidget {
    Q_OBJECT

public:
    MemberPage(Workspace& workspace, BackgroundReview& review, QWidget* parent = nullptr);

    // The picture of left and right through time to the front.
    void showSidesPicture();
    // With that exercise shown, when it is one of theirs; 0: the one that stands for the person.
    void open(MemberId member, ExerciseId exercise = {});

    // Where one came from, as the rail names it: "Back to Today".
    void setBack(const QString& place);

    [[nodiscard]] MemberId member() const { return m_member; }

Q_SIGNALS:
    void left(); // back to where one came from
    void printWanted(levelbar::MemberId member);

protected:
    void keyPressEvent(QKeyEvent* event) override;

private:
    void nameParts();
    void makeLayout();
    [[nodiscard]] QWidget* makeFacts();
    void makePictures();
    void changePerson();
    void refresh();
    void showName(const QString& name);
    void showFacts(const Member& member);
    void showSides(const MemberReview* review);
    [[nodiscard]] const MemberReview* reviewOf(MemberId member) const;

    Workspace& m_workspace;
    BackgroundReview& m_review;
    MemberId m_member;
    Library m_library;
    MemberHistory m_history;
    QPushButton* m_back;
    QLabel* m_name;
    QLabel* m_facts;
    AttendanceStrip* m_attendance;
    QListWidget* m_reasons;
    QListWidget* m_sides;
    StrengthPanel* m_strength;
    MemberSidesPanel* m_sidesPanel;
    TestsPanel* m_tests;
    QTabWidget* m_pictures;
    SetsPanel* m_sets;
    TargetCard* m_target;
    SetupCardPanel* m_setup;
    PushUpPanel* m_pushUps;
    PersonEditor* m_editor = nullptr; // once it was wanted
};

} // namespace levelbar::ui
