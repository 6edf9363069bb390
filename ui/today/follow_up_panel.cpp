// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/today/follow_up_panel.h"

#include "core/member/member.h"
#include "core/today/due_day.h"
#include "storage/today_store.h"
#include "ui/change_notifier.h"
#include "ui/perform.h"
#include "ui/words.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>
#include <QVBoxLayout>

#include <algorithm>

namespace levelbar::ui {

namespace {

constexpr int kShownWhenDoneDays = 2;
constexpr int kLongestOwner = 20;
constexpr const char* kUsualDays = "7";

} // namespace

FollowUpPanel::FollowUpPanel(Workspace& workspace, QWidget* parent)
    : QWidget(parent)
    , m_workspace(workspace)
    , m_person(new QLabel(this))
    , m_text(new QLineEdit(this))
    , m_due(new QLineEdit(QLatin1String(kUsualDays), this))
    , m_owner(new QLineEdit(this))
    , m_refusal(new QLabel(this))
    , m_list(new QListWidget(this))
{
    m_text->setObjectName(QStringLiteral("followUpText"));
    m_text->setAccessibleName(tr("New follow-up"));
    m_text->setPlaceholderText(tr("What to do"));
    m_text->setMaxLength(kLongestFollowUp);
    m_due->setObjectName(QStringLiteral("followUpDue"));
    m_due->setAccessibleName(tr("Due: a date, or days from today"));
    m_due->setToolTip(m_due->accessibleName());
    m_owner->setObjectName(QStringLiteral("followUpOwner"));
    m_owner->setAccessibleName(tr("Who does it"));
    m_owner->setPlaceholderText(tr("who"));
    m_owner->setMaxLength(kLongestOwner);
    m_refusal->setObjectName(QStringLiteral("followUpRefusal"));
    m_refusal->setWordWrap(true);
    m_refusal->hide();
    m_person->setObjectName(QStringLiteral("followUpPerson"));
    m_person->hide();
    m_list->setObjectName(QStringLiteral("followUpList"));
    m_list->setAccessibleName(tr("Follow-ups; the space bar says done"));
    m_list->setWordWrap(true);
    m_list->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    makeLayout();
    for (QLineEdit* edit : {m_text, m_due, m_owner}) {
        edit->installEventFilter(this);
        connect(edit, &QLineEdit::returnPressed, this, &FollowUpPanel::keepTyped);
    }
    connect(m_list, &QListWidget::itemChanged, this, &FollowUpPanel::setDone);
}

void FollowUpPanel::makeLayout()
{
    auto* title = new QLabel(tr("Follow-ups"), this);
    QFont bold = title->font();
    bold.setBold(true);
    title->setFont(bold);
    auto* line = new QHBoxLayout;
    m_due->setFixedWidth(fontMetrics().horizontalAdvance(QStringLiteral("2026-12-04")) + 16);
    m_owner->setFixedWidth(fontMetrics().horizontalAdvance(QStringLiteral("who ab")) + 16);
    auto* due = new QLabel(tr("due (date or days)"), this);
    due->setBuddy(m_due);
    line->addWidget(m_text, 1);
    line->addWidget(due);
    line->addWidget(m_due);
    line->addWidget(m_owner);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(title);
    layout->addWidget(m_person);
    layout->addLayout(line);
    layout->addWidget(m_refusal);
    layout->addWidget(m_list, 1);
}

QString FollowUpPanel::wordsOf(const FollowUp& followUp, const ReviewedRosterPointer& roster) const
{
    QString text = plain(followUp.text);
    if (followUp.member && roster) {
        for (const MemberReview& member : roster->review.members) {
            if (member.member.id == *followUp.member) {
                const auto& [code, name] = std::pair(member.member.code, member.member.name);
                text = tr("%1: %2").arg(plain(name.empty() ? code : name), text);
            }
        }
    }
    const Day today = m_workspace.clock.today();
    const QString day = plain(shortText(followUp.done.value_or(followUp.due)));
    const QString when = followUp.done           ? tr("done %1").arg(day)
                         : followUp.due < today  ? tr("overdue since %1").arg(day)
                         : followUp.due == today ? tr("due today")
                                                 : tr("due %1").arg(day);
    const QString who = plain(followUp.owner);
    return who.isEmpty() ? tr("%1 (%2)").arg(text, when) : tr("%1 (%2, %3)").arg(text, who, when);
}

void FollowUpPanel::show(const ReviewedRosterPointer& roster)
{
    const int row = m_list->currentRow();
    m_all = storage::TodayStore(m_workspace.logbook)
                .followUps(m_workspace.clock.today() - kShownWhenDoneDays);
    const QSignalBlocker blocker(m_list);
    m_list->clear();
    for (const FollowUp& followUp : m_all) {
        auto* item = new QListWidgetItem(wordsOf(followUp, roster), m_list);
        item->setFlags(Qt::ItemIsEnabled | Qt::ItemIsSelectable | Qt::ItemIsUserCheckable);
        item->setCheckState(followUp.done ? Qt::Checked : Qt::Unchecked);
    }
    if (m_all.empty()) {
        auto* none = new QListWidgetItem(
            tr("None. Write one above, or press F on somebody's line."), m_list);
        none->setFlags(Qt::ItemIsEnabled);
        return;
    }
    m_list->setCurrentRow(std::clamp(row, 0, m_list->count() - 1));
}

void FollowUpPanel::writeAbout(MemberId member, const QString& name)
{
    m_about = member;
    m_person->setText(tr("About %1 (Esc: about nobody)").arg(name));
    m_person->show();
    m_text->setFocus(Qt::OtherFocusReason);
}

void FollowUpPanel::forgetPerson()
{
    m_about = {};
    m_person->hide();
}

void FollowUpPanel::refuse(const QString& sentence)
{
    m_refusal->setText(tr("Not kept: %1.").arg(sentence));
    m_refusal->show();
}

void FollowUpPanel::keepTyped()
{
    const Day today = m_workspace.clock.today();
    const auto text = checkName(m_text->text().trimmed().toStdString(), kLongestFollowUp);
    const auto due = parseDueDay(m_due->text().trimmed().toStdString(), today);
    if (!text || text->empty()) {
        refuse(text ? tr("say what there is to do") : words(text.error()));
        return;
    }
    if (!due) {
        refuse(words(due.error()));
        return;
    }
    FollowUp followUp;
    followUp.text = *text;
    followUp.owner = m_owner->text().trimmed().toStdString();
    followUp.written = today;
    followUp.due = *due;
    if (m_about.isStored()) {
        followUp.member = m_about;
    }
    const bool isKept = perform(m_workspace.prompter, [&] {
        storage::Action action(
            m_workspace.logbook, storage::ActionKind::WriteFollowUp, m_workspace.clock.now());
        storage::TodayStore::write(action, followUp);
        m_workspace.notifier.announce(action.commit());
    });
    if (isKept) {
        m_refusal->hide();
        m_text->clear();
        m_due->setText(QLatin1String(kUsualDays));
        forgetPerson();
        m_text->setFocus(Qt::OtherFocusReason);
    }
}

void FollowUpPanel::setDone(const QListWidgetItem* item)
{
    const auto row = static_cast<std::size_t>(m_list->row(item));
    if (row >= m_all.size()) {
        return;
    }
    const bool isDone = item->checkState() == Qt::Checked;
    perform(m_workspace.prompter, [&] {
        storage::Action action(
            m_workspace.logbook, storage::ActionKind::FinishFollowUp, m_workspace.clock.now());
        storage::TodayStore::setDone(action,
                                     m_all[row].id,
                                     isDone ? std::optional(m_workspace.clock.today())
                                            : std::nullopt);
        const storage::Change change = action.commit();
        // Later: the list is made anew, and must not be while an item of it is in hand.
        QMetaObject::invokeMethod(
            this, [this, change] { m_workspace.notifier.announce(change); }, Qt::QueuedConnection);
    });
}

bool FollowUpPanel::eventFilter(QObject* watched, QEvent* event)
{
    if (event->type() == QEvent::KeyPress &&
        static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape && m_about.isStored()) {
        forgetPerson();
        return true;
    }
    return QWidget::eventFilter(watched, event);
}

} // namespace levelbar::ui
