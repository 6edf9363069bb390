// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/timetable/week_grid.h"

#include "ui/words.h"

#include <QHeaderView>
#include <QKeyEvent>
#include <QLocale>

#include <algorithm>
#include <map>

namespace levelbar::ui {

namespace {

constexpr int kGridDays = 7;
constexpr int kPlaceRole = Qt::UserRole + 1; // index into the meetings

QString cellText(const WeekMeeting& one)
{
    const TimetabledMeeting& meeting = one.meeting;
    QStringList lines{one.className};
    if (meeting.cancelled) {
        lines << WeekGrid::tr("Cancelled: %1").arg(plain(*meeting.cancelled));
        return lines.join(QLatin1Char('\n'));
    }
    QStringList where;
    if (!meeting.plan.room.empty()) {
        const QString room = plain(meeting.plan.room);
        where << (meeting.usualRoom ? WeekGrid::tr("moved to %1").arg(room) : room);
    }
    if (!meeting.plan.instructor.empty()) {
        const QString who = plain(meeting.plan.instructor);
        where << (meeting.usualInstructor ? WeekGrid::tr("%1 covers").arg(who) : who);
    }
    if (meeting.isExtra) {
        where << WeekGrid::tr("extra");
    }
    if (!where.isEmpty()) {
        lines << where.join(QStringLiteral(" · "));
    }
    lines << placesText(one.places);
    return lines.join(QLatin1Char('\n'));
}

} // namespace

QString placesText(const MeetingPlaces& places)
{
    const auto taken = places.booked.size() + places.dropIns.size();
    QString text = places.capacity ? WeekGrid::tr("%1 of %2").arg(taken).arg(*places.capacity)
                                   : WeekGrid::tr("%1 booked").arg(taken);
    if (!places.waiting.empty()) {
        text += WeekGrid::tr(", %1 waiting").arg(places.waiting.size());
    }
    return text;
}

WeekGrid::WeekGrid(QWidget* parent)
    : QTableWidget(parent)
{
    setObjectName(QStringLiteral("weekGrid"));
    setAccessibleName(tr("Classes of the week"));
    setColumnCount(kGridDays);
    setEditTriggers(QAbstractItemView::NoEditTriggers);
    setSelectionMode(QAbstractItemView::SingleSelection);
    setTabKeyNavigation(false);
    setWordWrap(true);
    horizontalHeader()->setSectionResizeMode(QHeaderView::Stretch);
    horizontalHeader()->setSectionsClickable(false);
    horizontalHeader()->setDefaultAlignment(Qt::AlignCenter);
    verticalHeader()->setSectionsClickable(false);
    verticalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    connect(this, &QTableWidget::currentCellChanged, this, &WeekGrid::moved);
    connect(this, &QTableWidget::itemDoubleClicked, this, [this] { Q_EMIT opened(); });
}

void WeekGrid::show(Day monday,
                    const Timetable& timetable,
                    std::vector<WeekMeeting> meetings,
                    Day today)
{
    const WeekMeeting* before = chosen();
    const auto key = before == nullptr ? std::nullopt : std::optional(before->meeting.key);
    m_meetings = std::move(meetings);
    {
        const QSignalBlocker blocker(this);
        setHeads(monday, timetable, today);
        lay();
        if (key) {
            choose(*key);
        }
        if (chosen() == nullptr && !m_meetings.empty()) {
            choose(m_meetings.front().meeting.key);
        }
    }
    Q_EMIT moved();
}

void WeekGrid::setHeads(Day monday, const Timetable& timetable, Day today)
{
    for (int place = 0; place < kGridDays; ++place) {
        const Day day = monday + place;
        QString head = tr("%1 %2").arg(QLocale().dayName(place + 1, QLocale::ShortFormat),
                                       plain(shortText(day)));
        if (day == today) {
            head += QLatin1Char('\n') + tr("today");
        }
        if (const auto holiday = holidayOn(timetable, day)) {
            head += QLatin1Char('\n') + plain(*holiday);
        }
        auto* item = new QTableWidgetItem(head);
        QFont font = item->font();
        font.setBold(day == today);
        item->setFont(font);
        setHorizontalHeaderItem(place, item);
    }
}

// A time takes as many rows as the day with most meetings at it.
void WeekGrid::lay()
{
    clearContents();
    std::map<std::pair<TimeOfDay, Day>, int> counts;
    std::map<TimeOfDay, int> heights;
    for (const WeekMeeting& one : m_meetings) {
        const MeetingKey& key = one.meeting.key;
        const int count = ++counts[{key.start, key.day}];
        heights[key.start] = std::max(heights[key.start], count);
    }
    std::map<TimeOfDay, int> firsts;
    int rows = 0;
    for (const auto& [start, height] : heights) {
        firsts[start] = rows;
        rows += height;
    }
    setRowCount(rows);
    for (const auto& [start, first] : firsts) {
        for (int row = first; row < first + heights[start]; ++row) {
            setVerticalHeaderItem(row, new QTableWidgetItem(plain(text(start))));
        }
    }
    counts.clear();
    for (std::size_t place = 0; place < m_meetings.size(); ++place) {
        const TimetabledMeeting& meeting = m_meetings[place].meeting;
        const MeetingKey& key = meeting.key;
        const int row = firsts[key.start] + counts[{key.start, key.day}]++;
        auto* item = new QTableWidgetItem(cellText(m_meetings[place]));
        item->setTextAlignment(Qt::AlignLeft | Qt::AlignTop);
        item->setData(kPlaceRole, static_cast<int>(place));
        if (meeting.cancelled) {
            QFont font = item->font();
            font.setStrikeOut(true);
            item->setFont(font);
        }
        setItem(row, isoWeekday(key.day) - 1, item);
    }
    resizeRowsToContents();
}

const WeekMeeting* WeekGrid::chosen() const
{
    const QTableWidgetItem* item = currentItem();
    const auto place = item == nullptr ? m_meetings.size()
                                       : static_cast<std::size_t>(item->data(kPlaceRole).toInt());
    return place < m_meetings.size() ? &m_meetings[place] : nullptr;
}

void WeekGrid::choose(const MeetingKey& key)
{
    for (int row = 0; row < rowCount(); ++row) {
        QTableWidgetItem* one = item(row, isoWeekday(key.day) - 1);
        if (one != nullptr &&
            m_meetings[static_cast<std::size_t>(one->data(kPlaceRole).toInt())].meeting.key ==
                key) {
            setCurrentItem(one);
            return;
        }
    }
}

void WeekGrid::keyPressEvent(QKeyEvent* event)
{
    if ((event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) && chosen() != nullptr) {
        Q_EMIT opened();
        event->accept();
        return;
    }
    QTableWidget::keyPressEvent(event);
}

} // namespace levelbar::ui
