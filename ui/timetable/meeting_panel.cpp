// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/timetable/meeting_panel.h"

#include "ui/words.h"

#include <QComboBox>
#include <QCompleter>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QLocale>
#include <QPushButton>
#include <QShortcut>
#include <QVBoxLayout>

#include <algorithm>

namespace levelbar::ui {

namespace {

constexpr int kMemberRole = Qt::UserRole + 1;
constexpr int kLongestText = 100;

QPushButton* button(const QString& text, const char* name, QWidget* parent)
{
    auto* made = new QPushButton(text, parent);
    made->setObjectName(QLatin1String(name));
    return made;
}

} // namespace

MeetingPanel::MeetingPanel(QWidget* parent)
    : QWidget(parent)
    , m_title(new QLabel(this))
    , m_body(new QWidget(this))
    , m_room(new QLineEdit(m_body))
    , m_instructor(new QLineEdit(m_body))
    , m_reason(new QLineEdit(m_body))
    , m_cancel(button(tr("Cancel this &one"), "meetingCancel", m_body))
    , m_weekly(button(tr("Every &week …"), "meetingWeekly", m_body))
    , m_count(new QLabel(m_body))
    , m_places(new QListWidget(m_body))
    , m_person(new QComboBox(m_body))
    , m_said(new QLabel(this))
{
    setObjectName(QStringLiteral("meetingPanel"));
    m_title->setObjectName(QStringLiteral("meetingTitle"));
    m_title->setWordWrap(true);
    QFont bold = m_title->font();
    bold.setBold(true);
    m_title->setFont(bold);
    m_room->setObjectName(QStringLiteral("meetingRoom"));
    m_room->setAccessibleName(tr("Room of this meeting"));
    m_instructor->setObjectName(QStringLiteral("meetingInstructor"));
    m_instructor->setAccessibleName(tr("Instructor of this meeting, initials"));
    m_reason->setObjectName(QStringLiteral("meetingReason"));
    m_reason->setAccessibleName(tr("Why it is cancelled"));
    for (QLineEdit* edit : {m_room, m_instructor, m_reason}) {
        edit->setMaxLength(kLongestText);
    }
    m_count->setObjectName(QStringLiteral("meetingCount"));
    m_places->setObjectName(QStringLiteral("meetingPlaces"));
    m_places->setAccessibleName(tr("Who has a place"));
    m_person->setObjectName(QStringLiteral("meetingPerson"));
    m_person->setAccessibleName(tr("Person to book"));
    m_person->setEditable(true);
    m_person->setInsertPolicy(QComboBox::NoInsert);
    m_person->completer()->setFilterMode(Qt::MatchContains);
    m_person->completer()->setCompletionMode(QCompleter::PopupCompletion);
    m_said->setObjectName(QStringLiteral("meetingSaid"));
    m_said->setWordWrap(true);
    makeLayout();
    clear();
}

void MeetingPanel::makeLayout()
{
    auto* body = new QVBoxLayout(m_body);
    body->setContentsMargins(0, 0, 0, 0);
    makeDetails(*body);
    makePlaces(*body);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(m_title);
    layout->addWidget(m_body, 1);
    layout->addWidget(m_said);
    layout->addStretch(0);
}

void MeetingPanel::makeDetails(QVBoxLayout& layout)
{
    auto* form = new QFormLayout;
    form->addRow(tr("&Room"), m_room);
    form->addRow(tr("&Instructor"), m_instructor);
    form->addRow(tr("Ca&ncelled because"), m_reason);
    auto* buttons = new QHBoxLayout;
    buttons->addWidget(m_cancel);
    buttons->addWidget(m_weekly);
    layout.addLayout(form);
    layout.addLayout(buttons);
    layout.addSpacing(8);
    connect(m_room, &QLineEdit::returnPressed, this, [this] {
        Q_EMIT roomWanted(m_room->text().trimmed());
    });
    connect(m_instructor, &QLineEdit::returnPressed, this, [this] {
        Q_EMIT coverWanted(m_instructor->text().trimmed());
    });
    connect(m_reason, &QLineEdit::returnPressed, this, [this] {
        if (m_meeting && !m_meeting->meeting.cancelled) {
            cancelOrTakeUp();
        }
    });
    connect(m_cancel, &QPushButton::clicked, this, &MeetingPanel::cancelOrTakeUp);
    connect(m_weekly, &QPushButton::clicked, this, &MeetingPanel::weeklyWanted);
}

void MeetingPanel::makePlaces(QVBoxLayout& layout)
{
    auto* bookButton = button(tr("&Book"), "meetingBook", m_body);
    auto* letInButton = button(tr("Let &in unbooked"), "meetingLetIn", m_body);
    auto* back = button(tr("&Give the place back"), "meetingGiveBack", m_body);
    auto* buttons = new QHBoxLayout;
    buttons->addWidget(bookButton);
    buttons->addWidget(letInButton);
    layout.addWidget(m_count);
    layout.addWidget(m_places, 1);
    layout.addWidget(back);
    layout.addWidget(m_person);
    layout.addLayout(buttons);
    auto* deleteKey = new QShortcut(QKeySequence::Delete, m_places);
    deleteKey->setContext(Qt::WidgetShortcut);
    connect(deleteKey, &QShortcut::activated, this, &MeetingPanel::giveChosenBack);
    connect(back, &QPushButton::clicked, this, &MeetingPanel::giveChosenBack);
    connect(bookButton, &QPushButton::clicked, this, &MeetingPanel::bookTyped);
    connect(letInButton, &QPushButton::clicked, this, &MeetingPanel::letTypedIn);
    connect(m_person->lineEdit(), &QLineEdit::returnPressed, this, &MeetingPanel::bookTyped);
}

void MeetingPanel::setPeople(std::map<MemberId, QString> names)
{
    if (names == m_names) {
        return;
    }
    m_names = std::move(names);
    m_person->clear();
    for (const auto& [member, name] : m_names) {
        m_person->addItem(name, static_cast<qlonglong>(member.value));
    }
    m_person->model()->sort(0);
    m_person->setCurrentIndex(-1);
}

void MeetingPanel::clear()
{
    m_meeting.reset();
    m_title->setText(tr("Choose a class in the week, or add one."));
    m_body->hide();
    m_said->clear();
}

void MeetingPanel::show(const WeekMeeting& meeting, const std::vector<MemberId>& cancelled)
{
    const bool isSame = m_meeting && m_meeting->meeting.key == meeting.meeting.key;
    m_meeting = meeting;
    const TimetabledMeeting& of = meeting.meeting;
    m_title->setText(tr("%1, %2 %3, %4")
                         .arg(meeting.className,
                              QLocale().dayName(isoWeekday(of.key.day)),
                              plain(shortText(of.key.day)),
                              plain(text(of.key.start))));
    m_body->setVisible(true);
    m_room->setText(plain(of.plan.room));
    m_instructor->setText(plain(of.plan.instructor));
    m_reason->setText(of.cancelled ? plain(*of.cancelled) : QString());
    m_cancel->setText(of.cancelled ? tr("Takes place after &all") : tr("Cancel this &one"));
    m_weekly->setVisible(!of.isExtra);
    m_count->setText(placesText(meeting.places));
    const int row = m_places->currentRow();
    m_places->clear();
    const auto add = [this](MemberId member, const QString& line) {
        auto* item = new QListWidgetItem(line, m_places);
        item->setData(kMemberRole, static_cast<qlonglong>(member.value));
    };
    for (const MemberId member : meeting.places.booked) {
        add(member, nameOf(member));
    }
    for (const MemberId member : meeting.places.dropIns) {
        add(member, tr("%1 (came unbooked)").arg(nameOf(member)));
    }
    int place = 0;
    for (const MemberId member : meeting.places.waiting) {
        add(member, tr("%1 (waiting, place %2)").arg(nameOf(member)).arg(++place));
    }
    for (const MemberId member : cancelled) {
        add(member, tr("%1 (gave the place back)").arg(nameOf(member)));
    }
    m_places->setCurrentRow(isSame ? std::min(row, m_places->count() - 1) : -1);
    if (!isSame) {
        m_said->clear();
    }
}

void MeetingPanel::refuse(const QString& sentence)
{
    m_said->setText(sentence);
}

void MeetingPanel::focusFirst()
{
    m_person->setFocus();
}

void MeetingPanel::cancelOrTakeUp()
{
    if (!m_meeting) {
        return;
    }
    if (m_meeting->meeting.cancelled) {
        Q_EMIT cancelWanted(QString());
        return;
    }
    const QString reason = m_reason->text().trimmed();
    if (reason.isEmpty()) {
        refuse(tr("Why? People will ask: write the reason first."));
        m_reason->setFocus();
        return;
    }
    Q_EMIT cancelWanted(reason);
}

std::optional<MemberId> MeetingPanel::typedPerson()
{
    const int index = m_person->findText(m_person->currentText().trimmed(), Qt::MatchFixedString);
    if (index < 0 || !m_meeting) {
        refuse(tr("Nobody by that name. Type a part of it and choose."));
        return std::nullopt;
    }
    return MemberId{m_person->itemData(index).toLongLong()};
}

void MeetingPanel::bookTyped()
{
    const auto member = typedPerson();
    if (!member) {
        return;
    }
    const MeetingPlaces places = book(m_meeting->places, *member);
    const QString name = nameOf(*member);
    if (places == m_meeting->places) {
        refuse(tr("%1 has a place already.").arg(name));
        return;
    }
    const bool isWaiting = placeOf(places, *member) == PlaceKind::Waiting;
    m_person->setCurrentIndex(-1);
    Q_EMIT placesWanted(
        places, isWaiting ? tr("Full: %1 waits.").arg(name) : tr("%1 is booked.").arg(name));
}

void MeetingPanel::letTypedIn()
{
    const auto member = typedPerson();
    if (!member) {
        return;
    }
    const MeetingPlaces places = letIn(m_meeting->places, *member);
    const QString name = nameOf(*member);
    if (places == m_meeting->places) {
        refuse(tr("%1 has a place already.").arg(name));
        return;
    }
    m_person->setCurrentIndex(-1);
    Q_EMIT placesWanted(places, tr("%1 is let in.").arg(name));
}

void MeetingPanel::giveChosenBack()
{
    const QListWidgetItem* item = m_places->currentItem();
    if (item == nullptr || !m_meeting) {
        refuse(tr("Choose a person in the list first."));
        return;
    }
    const MemberId member{item->data(kMemberRole).toLongLong()};
    const MovedUp after = giveBack(m_meeting->places, member);
    if (after.places == m_meeting->places) {
        refuse(tr("%1 has no place any more.").arg(nameOf(member)));
        return;
    }
    QStringList moved;
    for (const MemberId one : after.moved) {
        moved << nameOf(one);
    }
    QString sentence = tr("%1 gave the place back.").arg(nameOf(member));
    if (!moved.isEmpty()) {
        sentence +=
            QLatin1Char(' ') + tr("Moved up, tell them: %1.").arg(moved.join(QStringLiteral(", ")));
    }
    Q_EMIT placesWanted(after.places, sentence);
}

QString MeetingPanel::nameOf(MemberId member) const
{
    const auto found = m_names.find(member);
    return found == m_names.end() ? tr("somebody") : found->second;
}

} // namespace levelbar::ui
