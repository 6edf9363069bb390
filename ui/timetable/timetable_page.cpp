// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/timetable/timetable_page.h"

#include "core/plan/class_week.h"
#include "storage/member_store.h"
#include "ui/perform.h"
#include "ui/timetable/days_form.h"
#include "ui/timetable/meeting_panel.h"
#include "ui/words.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QShortcut>
#include <QSplitter>
#include <QStackedWidget>
#include <QVBoxLayout>

#include <algorithm>
#include <map>

namespace levelbar::ui {

namespace {

using storage::Action;
using storage::ActionKind;
using storage::BookingStore;
using storage::TimetableStore;

constexpr int kDays = 7;

QString nameOf(const Member& member)
{
    return member.name.empty()
               ? plain(member.code)
               : TimetablePage::tr("%1 (%2)").arg(plain(member.name), plain(member.code));
}

} // namespace

TimetablePage::TimetablePage(Workspace& workspace, QWidget* parent)
    : QWidget(parent)
    , m_workspace(workspace)
    , m_monday(mondayOf(workspace.clock.today()))
    , m_title(new QLabel(this))
    , m_grid(new WeekGrid(this))
    , m_hint(new QLabel(this))
    , m_said(new QLabel(this))
    , m_side(new QStackedWidget(this))
    , m_meeting(new MeetingPanel(this))
    , m_hour(new HourForm(this))
    , m_days(new DaysForm(this))
{
    setObjectName(QStringLiteral("timetablePage"));
    setAccessibleName(tr("Timetable"));
    makeLayout();
    connectParts();
    setFocusProxy(m_grid);
}

void TimetablePage::makeLayout()
{
    m_title->setObjectName(QStringLiteral("timetableTitle"));
    QFont font = m_title->font();
    font.setPointSizeF(font.pointSizeF() * 1.5);
    font.setBold(true);
    m_title->setFont(font);
    m_hint->setObjectName(QStringLiteral("timetableHint"));
    m_hint->setWordWrap(true);
    m_said->setObjectName(QStringLiteral("timetableSaid"));
    m_said->setWordWrap(true);
    m_side->setObjectName(QStringLiteral("timetableSide"));
    for (QWidget* side : {static_cast<QWidget*>(m_meeting),
                          static_cast<QWidget*>(m_hour),
                          static_cast<QWidget*>(m_days)}) {
        m_side->addWidget(side);
    }
    const int unit = fontMetrics().horizontalAdvance(QLatin1Char('0'));
    m_side->setMinimumWidth(34 * unit);
    auto* left = new QWidget(this);
    auto* column = new QVBoxLayout(left);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(m_hint);
    column->addWidget(m_grid, 1);
    auto* parts = new QSplitter(this);
    parts->addWidget(left);
    parts->addWidget(m_side);
    parts->setStretchFactor(0, 1);
    parts->setChildrenCollapsible(false);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(16, 14, 16, 10);
    layout->addLayout(makeTop());
    layout->addWidget(parts, 1);
    layout->addWidget(m_said);
}

QHBoxLayout* TimetablePage::makeTop()
{
    auto* top = new QHBoxLayout;
    top->addWidget(m_title, 1);
    const auto add = [&](const QString& text, const char* name, QKeySequence key, auto work) {
        auto* button = new QPushButton(text, this);
        button->setObjectName(QLatin1String(name));
        button->setToolTip(key.toString(QKeySequence::NativeText));
        top->addWidget(button);
        auto* shortcut = new QShortcut(key, this);
        shortcut->setContext(Qt::WidgetWithChildrenShortcut);
        connect(button, &QPushButton::clicked, this, work);
        connect(shortcut, &QShortcut::activated, this, work);
    };
    add(tr("Week before"), "weekBefore", Qt::ALT | Qt::Key_Left, [this] {
        goToWeek(m_monday - kDays);
    });
    add(tr("This week"), "weekNow", Qt::ALT | Qt::Key_Home, [this] {
        goToWeek(m_workspace.clock.today());
    });
    add(tr("Week after"), "weekAfter", Qt::ALT | Qt::Key_Right, [this] {
        goToWeek(m_monday + kDays);
    });
    add(tr("Weekly class …"), "weekAddSlot", Qt::CTRL | Qt::Key_N, [this] {
        openSide(m_hour);
        m_hour->openNew(true, m_workspace.clock.today());
    });
    add(tr("Extra meeting …"), "weekAddExtra", Qt::CTRL | Qt::Key_E, [this] {
        openSide(m_hour);
        m_hour->openNew(false, std::max(m_monday, m_workspace.clock.today()));
    });
    add(tr("Terms and holidays …"), "weekDays", Qt::CTRL | Qt::Key_H, [this] {
        openSide(m_days);
        m_days->open(std::max(m_monday, m_workspace.clock.today()));
    });
    return top;
}

void TimetablePage::connectParts()
{
    connect(&m_workspace.notifier, &ChangeNotifier::changed, this, [this](const auto& change) {
        if (!change.touchesClasses && !change.touchesRoster) {
            return;
        }
        m_isStale = true;
        if (isVisible()) {
            perform(m_workspace.prompter, [this] { refresh(); });
        }
    });
    connect(m_grid, &WeekGrid::moved, this, [this] {
        perform(m_workspace.prompter, [this] { showChosen(); });
    });
    connect(m_grid, &WeekGrid::opened, this, [this] {
        openSide(m_meeting);
        m_meeting->focusFirst();
    });
    const auto backToMeeting = [this] {
        openSide(m_meeting);
        m_grid->setFocus();
    };
    connect(m_hour, &HourForm::closed, this, backToMeeting);
    connect(m_days, &DaysForm::closed, this, backToMeeting);
    auto* escape = new QShortcut(Qt::Key_Escape, this);
    escape->setContext(Qt::WidgetWithChildrenShortcut);
    connect(escape, &QShortcut::activated, this, backToMeeting);
    connect(m_hour, &HourForm::kept, this, &TimetablePage::keepHour);
    connect(m_hour, &HourForm::removeWanted, this, [this, backToMeeting](storage::SlotId slot) {
        if (write(ActionKind::EditTimetable,
                  tr("The weekly class is removed; what was written down stays."),
                  [&](Action& action) { TimetableStore::remove(action, slot); })) {
            backToMeeting();
        }
    });
    connect(m_days, &DaysForm::added, this, &TimetablePage::keepDays);
    connect(m_days, &DaysForm::removeWanted, this, [this](storage::DaysId days) {
        write(ActionKind::EditTimetable, tr("Removed."), [&](Action& action) {
            TimetableStore::remove(action, days);
        });
    });
    connect(m_meeting, &MeetingPanel::weeklyWanted, this, &TimetablePage::openWeekly);
    connect(m_meeting, &MeetingPanel::placesWanted, this, &TimetablePage::keepPlaces);
    connect(m_meeting, &MeetingPanel::roomWanted, this, [this](const QString& room) {
        change([&](MeetingChange& one) { one.room = room.toStdString(); }, tr("The room is kept."));
    });
    connect(m_meeting, &MeetingPanel::coverWanted, this, [this](const QString& initials) {
        change([&](MeetingChange& one) { one.cover = initials.toStdString(); },
               tr("The instructor is kept."));
    });
    connect(m_meeting, &MeetingPanel::cancelWanted, this, [this](const QString& reason) {
        change(
            [&](MeetingChange& one) {
                one.cancelled =
                    reason.isEmpty() ? std::nullopt : std::optional(reason.toStdString());
            },
            reason.isEmpty() ? tr("It takes place.") : tr("Cancelled: tell those who booked."));
    });
}

void TimetablePage::goToWeek(Day day)
{
    m_monday = mondayOf(day);
    perform(m_workspace.prompter, [this] { refresh(); });
}

void TimetablePage::showEvent(QShowEvent* event)
{
    QWidget::showEvent(event);
    if (m_isStale) {
        perform(m_workspace.prompter, [this] { refresh(); });
    }
}

void TimetablePage::openSide(QWidget* side)
{
    m_side->setCurrentWidget(side);
    m_said->clear();
}

void TimetablePage::refresh()
{
    const storage::Logbook& logbook = m_workspace.logbook;
    const TimetableStore store(logbook);
    const BookingStore bookings(logbook);
    const DayRange days{m_monday, m_monday + (kDays - 1)};
    const Timetable timetable = store.timetable(days);
    const auto classes = storage::ClassStore(logbook).all();
    std::map<ClassId, QString> names;
    for (const storage::GroupClass& one : classes) {
        names[one.id] = plain(one.name);
    }
    std::map<MemberId, QString> people;
    for (const Member& member : storage::MemberStore(logbook).all(false)) {
        people[member.id] = nameOf(member);
    }
    std::vector<WeekMeeting> meetings;
    for (TimetabledMeeting& meeting : meetingsOf(timetable, days)) {
        WeekMeeting one;
        one.className = names[meeting.key.groupClass];
        one.places = bookings.placesOf(
            meeting.key.groupClass, store.rowOf(meeting.key), meeting.plan.capacity);
        one.meeting = std::move(meeting);
        meetings.push_back(std::move(one));
    }
    m_isStale = false;
    m_title->setText(tr("%1 to %2").arg(plain(shortText(days.first)), plain(shortText(days.last))));
    m_hint->setText(meetings.empty() ? tr("No class this week. Weekly class (Ctrl+N) adds one.")
                                     : QString());
    m_hint->setVisible(meetings.empty());
    m_hour->setClasses(classes);
    m_days->setDays(store.days());
    m_meeting->setPeople(std::move(people));
    m_grid->show(m_monday, timetable, std::move(meetings), m_workspace.clock.today());
}

void TimetablePage::showChosen()
{
    const WeekMeeting* chosen = m_grid->chosen();
    if (chosen == nullptr) {
        m_meeting->clear();
        return;
    }
    const auto row = TimetableStore(m_workspace.logbook).rowOf(chosen->meeting.key);
    m_meeting->show(*chosen,
                    row ? BookingStore(m_workspace.logbook).cancelledOf(*row)
                        : std::vector<MemberId>{});
}

template <typename Work>
bool TimetablePage::write(ActionKind kind, const QString& sentence, const Work& work)
{
    return perform(m_workspace.prompter, [&] {
        Action action(m_workspace.logbook, kind, m_workspace.clock.now());
        work(action);
        m_workspace.notifier.announce(action.commit());
        m_said->setText(sentence);
    });
}

template <typename Edit> void TimetablePage::change(const Edit& edit, const QString& sentence)
{
    const WeekMeeting* chosen = m_grid->chosen();
    if (chosen == nullptr) {
        return;
    }
    const MeetingKey key = chosen->meeting.key;
    write(ActionKind::ChangeMeeting, sentence, [&](Action& action) {
        MeetingChange wanted = TimetableStore(m_workspace.logbook).changeOf(key);
        edit(wanted);
        TimetableStore::change(action, wanted);
    });
}

void TimetablePage::keepPlaces(const MeetingPlaces& places, const QString& sentence)
{
    const WeekMeeting* chosen = m_grid->chosen();
    if (chosen == nullptr) {
        return;
    }
    const MeetingKey key = chosen->meeting.key;
    write(ActionKind::BookPlace, sentence, [&](Action& action) {
        BookingStore::setPlaces(action, TimetableStore::rowFor(action, key), places);
    });
}

void TimetablePage::openWeekly()
{
    const WeekMeeting* chosen = m_grid->chosen();
    if (chosen == nullptr) {
        return;
    }
    const MeetingKey key = chosen->meeting.key;
    perform(m_workspace.prompter, [&] {
        for (const storage::StoredSlot& stored : TimetableStore(m_workspace.logbook).slots()) {
            const WeeklySlot& slot = stored.slot;
            const bool isOfDay =
                (!slot.from || *slot.from <= key.day) && (!slot.until || key.day <= *slot.until);
            if (slot.groupClass == key.groupClass && slot.start == key.start &&
                slot.weekday == isoWeekday(key.day) && isOfDay) {
                openSide(m_hour);
                m_hour->openSlot(stored);
                return;
            }
        }
    });
}

std::optional<QString> TimetablePage::faultWith(std::optional<storage::SlotId> replaced,
                                                const TypedHour& typed,
                                                std::optional<ClassId> groupClass) const
{
    const TimetableStore store(m_workspace.logbook);
    const ClassId of = groupClass.value_or(ClassId{});
    Timetable wanted;
    if (typed.isWeekly) {
        for (const storage::StoredSlot& stored : store.slots()) {
            if (stored.id != replaced) {
                wanted.slots.push_back(stored.slot);
            }
        }
        wanted.slots.push_back(typed.slot);
        wanted.slots.back().groupClass = of;
    } else {
        const DayRange day{typed.day, typed.day};
        for (const TimetabledMeeting& meeting : meetingsOf(store.timetable(day), day)) {
            wanted.extras.push_back({meeting.key, meeting.plan});
        }
        wanted.extras.push_back({{typed.day, typed.slot.start, of}, typed.slot.plan});
    }
    const auto checked = checkTimetable(wanted);
    return checked ? std::nullopt : std::optional(words(checked.error()));
}

void TimetablePage::keepHour(const TypedHour& typed)
{
    perform(m_workspace.prompter, [&] {
        const std::string name = typed.className.toStdString();
        const auto known = storage::ClassStore(m_workspace.logbook).find(name);
        auto groupClass = known ? std::optional(known->id) : std::nullopt;
        const auto replaced = m_hour->slotId();
        if (const auto fault = faultWith(replaced, typed, groupClass)) {
            m_hour->refuse(*fault);
            return;
        }
        const auto kind = typed.isWeekly ? ActionKind::EditTimetable : ActionKind::ChangeMeeting;
        const bool isKept = write(kind, tr("Kept: %1.").arg(typed.className), [&](Action& action) {
            if (!groupClass) {
                groupClass = storage::ClassStore::add(action, name);
            }
            WeeklySlot slot = typed.slot;
            slot.groupClass = *groupClass;
            if (!typed.isWeekly) {
                TimetableStore::add(action, {{typed.day, slot.start, *groupClass}, slot.plan});
            } else if (replaced) {
                TimetableStore::update(action, *replaced, slot);
            } else {
                TimetableStore::add(action, slot);
            }
        });
        if (isKept) {
            m_side->setCurrentWidget(m_meeting);
            m_grid->setFocus();
        }
    });
}

void TimetablePage::keepDays(storage::DaysKind kind, const NamedDays& days)
{
    Timetable wanted;
    wanted.terms.push_back(days);
    if (const auto checked = checkTimetable(wanted); !checked) {
        m_days->refuse(words(checked.error()));
        return;
    }
    write(ActionKind::EditTimetable, tr("Kept: %1.").arg(plain(days.name)), [&](Action& action) {
        TimetableStore::add(action, kind, days);
    });
}

} // namespace levelbar::ui
