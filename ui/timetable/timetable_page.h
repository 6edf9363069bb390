// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/timetable/hour_form.h"
#include "ui/timetable/week_grid.h"
#include "ui/workspace.h"

#include <QWidget>

class QHBoxLayout;
class QLabel;
class QStackedWidget;

namespace levelbar::ui {

class DaysForm;
class MeetingPanel;

// The timetable: the classes of a week, what differs for one of them, and who has a place.
class TimetablePage : public QWidget {
    Q_OBJECT

public:
    explicit TimetablePage(Workspace& workspace, QWidget* parent = nullptr);

    void goToWeek(Day day);

protected:
    void showEvent(QShowEvent* event) override;

private:
    void makeLayout();
    [[nodiscard]] QHBoxLayout* makeTop();
    void connectParts();
    void refresh();
    void showChosen();
    void openSide(QWidget* side);
    void openWeekly();
    void keepHour(const TypedHour& typed);
    void keepDays(storage::DaysKind kind, const NamedDays& days);
    // Changes what differs for the chosen meeting.
    template <typename Edit> void change(const Edit& edit, const QString& sentence);
    void keepPlaces(const MeetingPlaces& places, const QString& sentence);
    // Writes it as one action and says the sentence.
    template <typename Work>
    bool write(storage::ActionKind kind, const QString& sentence, const Work& work);
    // The sentence of what is wrong with the timetable once the slot is in it.
    [[nodiscard]] std::optional<QString> faultWith(std::optional<storage::SlotId> replaced,
                                                   const TypedHour& typed,
                                                   std::optional<ClassId> groupClass) const;

    Workspace& m_workspace;
    Day m_monday;
    bool m_isStale = true;
    QLabel* m_title;
    WeekGrid* m_grid;
    QLabel* m_hint;
    QLabel* m_said;
    QStackedWidget* m_side;
    MeetingPanel* m_meeting;
    HourForm* m_hour;
    DaysForm* m_days;
};

} // namespace levelbar::ui
