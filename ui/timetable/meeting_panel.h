// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/member/member.h"
#include "ui/timetable/week_grid.h"

#include <QWidget>

#include <map>
#include <optional>
#include <vector>

class QComboBox;
class QLabel;
class QLineEdit;
class QListWidget;
class QPushButton;

namespace levelbar::ui {

// One meeting: what differs for it, and who has a place.
class MeetingPanel : public QWidget {
    Q_OBJECT

public:
    explicit MeetingPanel(QWidget* parent = nullptr);

    void setPeople(std::map<MemberId, QString> names);
    void show(const WeekMeeting& meeting, const std::vector<MemberId>& cancelled);
    void clear();
    void refuse(const QString& sentence);
    void focusFirst();

    using QWidget::show;

Q_SIGNALS:
    // What differs for the meeting from now on; the other parts of it stay.
    void roomWanted(const QString& room);
    void coverWanted(const QString& initials);
    void cancelWanted(const QString& reason); // empty: it takes place
    void placesWanted(const levelbar::MeetingPlaces& places, const QString& sentence);
    void weeklyWanted(); // to change the class of every week

private:
    void makeLayout();
    void makeDetails(QVBoxLayout& layout);
    void makePlaces(QVBoxLayout& layout);
    void cancelOrTakeUp();
    // Nothing, with a sentence, when nobody by that name is known.
    std::optional<MemberId> typedPerson();
    void bookTyped();
    void letTypedIn();
    void giveChosenBack();
    [[nodiscard]] QString nameOf(MemberId member) const;

    std::map<MemberId, QString> m_names;
    std::optional<WeekMeeting> m_meeting;
    QLabel* m_title;
    QWidget* m_body;
    QLineEdit* m_room;
    QLineEdit* m_instructor;
    QLineEdit* m_reason;
    QPushButton* m_cancel;
    QPushButton* m_weekly;
    QLabel* m_count;
    QListWidget* m_places;
    QComboBox* m_person;
    QLabel* m_said;
};

} // namespace levelbar::ui
