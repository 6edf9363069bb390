// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/floor/closing_panel.h"

#include "core/floor/catch_up.h"
#include "core/today/due_day.h"
#include "core/today/follow_up.h"
#include "storage/session_store.h"
#include "storage/today_store.h"
#include "ui/floor/side_words.h"
#include "ui/perform.h"
#include "ui/words.h"

#include <QFormLayout>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QSignalBlocker>
#include <QSpinBox>
#include <QVBoxLayout>

#include <algorithm>

namespace levelbar::ui {

namespace {

constexpr int kHardest = 10;
constexpr int kMostClassMinutes = 600;
constexpr const char* kFollowUpDays = "7";

std::map<MemberId, ClosingCount> countsOf(const FloorSheet& sheet)
{
    std::map<MemberId, ClosingCount> counts;
    for (const FloorRow& row : sheet.rows) {
        for (const FloorCell& cell : row.cells) {
            if (cell.planned || cell.done) {
                countCell(counts[row.member],
                          cell.done ? std::optional(cell.done->performed.known) : std::nullopt,
                          cell.isOpen());
            }
        }
    }
    return counts;
}

ClosingCount sumOf(const std::map<MemberId, ClosingCount>& counts)
{
    ClosingCount sum;
    for (const auto& [member, count] : counts) {
        sum.counted += count.counted;
        sum.accepted += count.accepted;
        sum.group += count.group;
        sum.unknown += count.unknown;
        sum.setAside += count.setAside;
    }
    return sum;
}

QStringList notAskedOf(const FloorRow& row)
{
    QStringList reasons;
    for (const FloorCell& cell : row.cells) {
        const bool isHurt = cell.sides.isOver || cell.sides.notToday == SideRule::PainEnds;
        if (!cell.isPlannedOnly() || !(cell.notAsked || isHurt)) {
            continue;
        }
        const QString reason = notAskedText(cell.notAsked.value_or(NotAsked::Pain));
        if (!reasons.contains(reason)) {
            reasons << reason;
        }
    }
    return reasons;
}

} // namespace

ClosingPanel::ClosingPanel(Workspace& workspace, QWidget* parent)
    : QWidget(parent)
    , m_workspace(workspace)
    , m_count(new QLabel(this))
    , m_list(new QListWidget(this))
    , m_minutes(new QSpinBox(this))
    , m_followUp(new QLineEdit(this))
    , m_due(new QLineEdit(QLatin1String(kFollowUpDays), this))
    , m_said(new QLabel(this))
{
    setObjectName(QStringLiteral("closingPanel"));
    m_count->setObjectName(QStringLiteral("closingCount"));
    m_count->setWordWrap(true);
    m_list->setObjectName(QStringLiteral("closingPeople"));
    m_list->setAccessibleName(tr("Who came, with their session rating"));
    m_list->installEventFilter(this);
    m_minutes->setObjectName(QStringLiteral("closingMinutes"));
    m_minutes->setAccessibleName(tr("How long the class lasted, minutes"));
    m_minutes->setRange(0, kMostClassMinutes);
    m_minutes->setSpecialValueText(tr("not said"));
    m_minutes->setKeyboardTracking(false);
    m_followUp->setObjectName(QStringLiteral("closingFollowUp"));
    m_followUp->setAccessibleName(tr("What to do about this person afterwards"));
    m_followUp->setMaxLength(kLongestFollowUp);
    m_due->setObjectName(QStringLiteral("closingDue"));
    m_due->setAccessibleName(tr("By when: days from today, or a date"));
    m_said->setObjectName(QStringLiteral("closingSaid"));
    m_said->setWordWrap(true);
    makeLayout();
    connect(m_minutes, &QSpinBox::valueChanged, this, &ClosingPanel::keepMinutes);
    for (QLineEdit* edit : {m_followUp, m_due}) {
        connect(edit, &QLineEdit::returnPressed, this, &ClosingPanel::keepFollowUp);
        edit->installEventFilter(this);
    }
}

void ClosingPanel::makeLayout()
{
    auto* help = new QLabel(tr("How hard was it? A digit, 0 easy to 9; + is 10, as hard as can be. "
                               "Delete takes it away, "
                               "the arrows move, Esc goes back to the floor."),
                            this);
    help->setWordWrap(true);
    auto* next = new QHBoxLayout;
    next->addWidget(m_followUp, 3);
    next->addWidget(m_due, 1);
    auto* form = new QFormLayout;
    form->addRow(tr("&Minutes it lasted"), m_minutes);
    auto* about =
        new QLabel(tr("Follow-up about this person, and in how many days (Enter keeps)"), this);
    about->setWordWrap(true);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(m_count);
    layout->addWidget(help);
    layout->addWidget(m_list, 1);
    layout->addLayout(form);
    layout->addWidget(about);
    layout->addLayout(next);
    layout->addWidget(m_said);
}

void ClosingPanel::show(const FloorSheet& sheet, const FloorReference& reference)
{
    const auto counts = countsOf(sheet);
    m_counted = tr("%1 What is not known was not missed: nothing is concluded from it.")
                    .arg(words(closingPhrase(sumOf(counts))));
    m_meeting = sheet.meeting ? std::optional(sheet.meeting->id) : std::nullopt;
    perform(m_workspace.prompter, [&] {
        fillPeople(sheet, reference);
        for (Person& person : m_people) {
            const auto count = counts.find(person.member);
            person.notKnown = count == counts.end() ? 0 : count->second.unknown;
        }
        for (const FloorRow& row : sheet.rows) {
            const auto person =
                std::find_if(m_people.begin(), m_people.end(), [&row](const Person& one) {
                    return one.member == row.member;
                });
            if (person != m_people.end()) {
                person->bib = row.bib;
                person->notAsked = notAskedOf(row);
            }
        }
        std::sort(m_people.begin(), m_people.end(), [](const Person& a, const Person& b) {
            const auto place = [](const Person& one) { return std::pair(one.bib == 0, one.bib); };
            return place(a) != place(b) ? place(a) < place(b)
                                        : QString::localeAwareCompare(a.name, b.name) < 0;
        });
        const QSignalBlocker quiet(m_minutes);
        const storage::SessionStore store(m_workspace.logbook);
        m_minutes->setValue(m_meeting ? store.minutesOf(*m_meeting).value_or(0) : 0);
    });
    m_minutes->setEnabled(m_meeting.has_value());
    showPeople();
}

void ClosingPanel::fillPeople(const FloorSheet& sheet, const FloorReference& reference)
{
    m_people.clear();
    if (!m_meeting) {
        return;
    }
    const auto ratings = storage::SessionStore(m_workspace.logbook).ratingsOf(*m_meeting);
    for (const storage::Attendance& attendance : sheet.attendance) {
        const auto found = reference.people.find(attendance.member);
        if (attendance.came != true || found == reference.people.end()) {
            continue;
        }
        const Member& member = found->second;
        const auto rating = ratings.find(member.id);
        m_people.push_back(
            {member.id,
             0,
             plain(member.name.empty() ? member.code : member.name),
             0,
             {},
             rating == ratings.end() ? std::nullopt : std::optional(rating->second)});
    }
}

void ClosingPanel::showCount()
{
    const auto rated = std::count_if(m_people.begin(), m_people.end(), [](const Person& person) {
        return person.rating.has_value();
    });
    const auto all = static_cast<qsizetype>(m_people.size());
    m_count->setText(all == 0 ? m_counted
                     : rated == all
                         ? tr("%1 Everybody has said how hard it was.").arg(m_counted)
                         : tr("%1 How hard it was: %2 of %3 asked.")
                               .arg(m_counted, locale().toString(rated), locale().toString(all)));
}

void ClosingPanel::showPeople()
{
    showCount();
    const int row = m_list->currentRow();
    m_list->clear();
    for (const Person& person : m_people) {
        const QString name = person.bib > 0
                                 ? tr("%1 %2").arg(locale().toString(person.bib), person.name)
                                 : person.name;
        QString text = person.rating ? tr("%1   %2").arg(*person.rating, 2).arg(name)
                                     : tr(" –   %1").arg(name);
        QStringList more;
        if (person.notKnown > 0) {
            more << tr("%n sets not known", nullptr, person.notKnown);
        }
        if (!person.notAsked.isEmpty()) {
            more << tr("not asked for: %1").arg(person.notAsked.join(QStringLiteral(", ")));
        }
        m_list->addItem(more.isEmpty() ? text
                                       : tr("%1 (%2)").arg(text, more.join(QStringLiteral("; "))));
    }
    if (m_people.empty()) {
        auto* none = new QListWidgetItem(tr("Nobody is marked as having come."), m_list);
        none->setFlags(Qt::ItemIsEnabled);
    }
    m_list->setCurrentRow(std::clamp(row, 0, m_list->count() - 1));
}

void ClosingPanel::begin()
{
    const auto first = std::find_if(
        m_people.begin(), m_people.end(), [](const Person& person) { return !person.rating; });
    m_list->setCurrentRow(first == m_people.end() ? 0 : static_cast<int>(first - m_people.begin()));
    m_list->setFocus(Qt::OtherFocusReason);
}

const ClosingPanel::Person* ClosingPanel::current() const
{
    const auto row = static_cast<std::size_t>(m_list->currentRow());
    return m_list->currentRow() < 0 || row >= m_people.size() ? nullptr : &m_people[row];
}

template <typename Work> bool ClosingPanel::write(storage::ActionKind kind, const Work& work)
{
    return perform(m_workspace.prompter, [&] {
        storage::Action action(m_workspace.logbook, kind, m_workspace.clock.now());
        work(action);
        m_workspace.notifier.announce(action.commit());
    });
}

void ClosingPanel::rate(std::optional<int> rating)
{
    const Person* person = current();
    if (person == nullptr || !m_meeting) {
        return;
    }
    const int row = m_list->currentRow();
    const MemberId member = person->member;
    const bool isKept = write(storage::ActionKind::RateSession, [&](storage::Action& action) {
        storage::SessionStore::setRating(action, *m_meeting, member, rating);
    });
    if (isKept && rating) {
        m_list->setCurrentRow(std::min(row + 1, m_list->count() - 1));
    }
}

bool ClosingPanel::takeKey(const QKeyEvent& event)
{
    const int key = event.key();
    if (key >= Qt::Key_0 && key <= Qt::Key_9) {
        rate(key - Qt::Key_0);
        return true;
    }
    switch (key) {
    case Qt::Key_Plus:
        rate(kHardest);
        return true;
    case Qt::Key_Delete:
    case Qt::Key_Backspace:
        rate(std::nullopt);
        return true;
    default:
        return false;
    }
}

bool ClosingPanel::eventFilter(QObject* watched, QEvent* event)
{
    if (event->type() == QEvent::KeyPress) {
        const auto& key = *static_cast<QKeyEvent*>(event);
        if (key.key() == Qt::Key_Escape) {
            Q_EMIT left();
            return true;
        }
        if (watched == m_list && takeKey(key)) {
            return true;
        }
    }
    return QWidget::eventFilter(watched, event);
}

void ClosingPanel::keepMinutes()
{
    if (!m_meeting) {
        return;
    }
    const int minutes = m_minutes->value();
    write(storage::ActionKind::CloseMeeting, [&](storage::Action& action) {
        storage::SessionStore::setMinutes(
            action, *m_meeting, minutes > 0 ? std::optional(minutes) : std::nullopt);
    });
}

void ClosingPanel::keepFollowUp()
{
    const Person* person = current();
    const Day today = m_workspace.clock.today();
    FollowUp followUp;
    followUp.text = m_followUp->text().simplified().toStdString();
    const auto due = parseDueDay(m_due->text().trimmed().toStdString(), today);
    if (person == nullptr || followUp.text.empty() || !due) {
        m_said->setText(person == nullptr       ? tr("Not kept: nobody is chosen.")
                        : followUp.text.empty() ? tr("Not kept: say what there is to do.")
                                                : tr("Not kept: %1.").arg(words(due.error())));
        return;
    }
    followUp.written = today;
    followUp.due = *due;
    followUp.member = person->member;
    followUp.meeting = m_meeting;
    const QString name = person->name;
    const bool isKept = write(storage::ActionKind::WriteFollowUp, [&](storage::Action& action) {
        storage::TodayStore::write(action, followUp);
    });
    if (isKept) {
        m_followUp->clear();
        m_said->setText(tr("Kept for %1: it stands on Today.").arg(name));
        m_list->setFocus(Qt::OtherFocusReason);
    }
}

} // namespace levelbar::ui
