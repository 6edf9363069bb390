// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/day.h"
#include "core/timetable/places.h"
#include "core/timetable/timetable.h"

#include <QTableWidget>

#include <optional>
#include <vector>

namespace levelbar::ui {

// A meeting with what stands beside it in the week.
struct WeekMeeting {
    TimetabledMeeting meeting;
    QString className;
    MeetingPlaces places;
};

// The days of a week beside each other, the times at which something begins below each other.
class WeekGrid : public QTableWidget {
    Q_OBJECT

public:
    explicit WeekGrid(QWidget* parent = nullptr);

    // Stays on the meeting that was chosen, when it is still there.
    void show(Day monday, const Timetable& timetable, std::vector<WeekMeeting> meetings, Day today);
    [[nodiscard]] const WeekMeeting* chosen() const;
    void choose(const MeetingKey& key);

    using QTableWidget::show;

Q_SIGNALS:
    void moved();  // another cell is chosen
    void opened(); // Enter or a double click on a meeting

protected:
    void keyPressEvent(QKeyEvent* event) override;

private:
    void lay();
    void setHeads(Day monday, const Timetable& timetable, Day today);

    std::vector<WeekMeeting> m_meetings;
};

// "12 of 14, 2 waiting"; "12 booked" without a limit.
[[nodiscard]] QString placesText(const MeetingPlaces& places);

} // namespace levelbar::ui
