// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/today/brief_panel.h"

#include "core/today/meeting_brief.h"
#include "core/today/plan_brief.h"
#include "storage/spot_store.h"
#include "ui/perform.h"
#include "ui/plan/plan_reader.h"
#include "ui/words.h"

#include <QLabel>
#include <QListWidget>
#include <QVBoxLayout>

#include <algorithm>

namespace levelbar::ui {

namespace {

constexpr int kMemberRole = Qt::UserRole + 1;
constexpr int kMostMeetingsSeen = 6;
constexpr std::size_t kMostPlanLines = 6;

QString nameOf(const Member& member)
{
    return plain(member.name.empty() ? member.code : member.name);
}

const MemberReview* reviewOf(const Review& review, MemberId member)
{
    const auto found =
        std::find_if(review.members.begin(),
                     review.members.end(),
                     [member](const MemberReview& one) { return one.member.id == member; });
    return found == review.members.end() ? nullptr : &*found;
}

QString meetingText(const storage::DayMeeting& meeting)
{
    const QString name = plain(meeting.className);
    const QString when =
        meeting.start ? plain(text(*meeting.start)) + QStringLiteral("  ") + name : name;
    return meeting.isLogged ? BriefPanel::tr("%1 (sets are written down)").arg(when) : when;
}

QLabel* heading(const QString& text, QWidget* parent)
{
    auto* label = new QLabel(text, parent);
    QFont bold = label->font();
    bold.setBold(true);
    label->setFont(bold);
    return label;
}

} // namespace

BriefPanel::BriefPanel(Workspace& workspace, QWidget* parent)
    : QWidget(parent)
    , m_workspace(workspace)
    , m_meetings(new QListWidget(this))
    , m_title(heading(tr("Before the class"), this))
    , m_brief(new QListWidget(this))
{
    m_meetings->setObjectName(QStringLiteral("todayMeetings"));
    m_meetings->setAccessibleName(tr("Classes of the day"));
    m_title->setObjectName(QStringLiteral("todayBriefTitle"));
    m_title->setWordWrap(true);
    m_brief->setObjectName(QStringLiteral("todayBrief"));
    m_brief->setAccessibleName(tr("Before the class: who to know about"));
    for (QListWidget* list : {m_meetings, m_brief}) {
        list->setWordWrap(true);
        list->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    }
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(heading(tr("Classes today"), this));
    layout->addWidget(m_meetings);
    layout->addWidget(m_title);
    layout->addWidget(m_brief, 1);
    layout->addStretch(0); // keeps the list on top while there is no brief
    connect(m_meetings, &QListWidget::currentRowChanged, this, [this] {
        perform(m_workspace.prompter, [this] { showBrief(); });
    });
    connect(m_brief, &QListWidget::itemActivated, this, &BriefPanel::openItem);
}

void BriefPanel::show(const ReviewedRosterPointer& roster)
{
    m_roster = roster;
    showMeetings();
    showBrief();
}

void BriefPanel::showMeetings()
{
    auto meetings = storage::TodayStore(m_workspace.logbook).meetingsOn(m_workspace.clock.today());
    if (meetings == m_all && m_meetings->count() > 0) {
        return;
    }
    m_all = std::move(meetings);
    const QSignalBlocker blocker(m_meetings);
    m_meetings->clear();
    for (const storage::DayMeeting& meeting : m_all) {
        m_meetings->addItem(meetingText(meeting));
    }
    if (m_all.empty()) {
        auto* none = new QListWidgetItem(
            tr("No class today. A class begins on the Floor page (Ctrl+4)."), m_meetings);
        none->setFlags(Qt::ItemIsEnabled);
    }
    // The next: the first of which nothing was written down, else the last.
    const auto next = std::find_if(
        m_all.begin(), m_all.end(), [](const auto& meeting) { return !meeting.isLogged; });
    const auto row =
        next == m_all.end() ? m_all.size() - 1 : static_cast<std::size_t>(next - m_all.begin());
    m_meetings->setCurrentRow(m_all.empty() ? -1 : static_cast<int>(row));
    const int rows = std::clamp(m_meetings->count(), 1, kMostMeetingsSeen);
    const int high = m_all.empty() ? 2 * fontMetrics().height() + 10
                                   : std::max(m_meetings->sizeHintForRow(0), 1);
    m_meetings->setFixedHeight(rows * high + 2 * m_meetings->frameWidth() + 2);
}

void BriefPanel::showBrief()
{
    m_brief->clear();
    const int row = m_meetings->currentRow();
    const bool isChosen = row >= 0 && static_cast<std::size_t>(row) < m_all.size();
    m_title->setVisible(isChosen);
    m_brief->setVisible(isChosen);
    if (!isChosen || !m_roster) {
        return;
    }
    const storage::DayMeeting& meeting = m_all[static_cast<std::size_t>(row)];
    const auto expected = storage::TodayStore(m_workspace.logbook).expectedIn(meeting);
    m_title->setText(
        tr("Before %1 (%2 expected)").arg(plain(meeting.className)).arg(expected.size()));
    addPeople(expected);
    addPlan(meeting);
    addFollowUps(expected, meeting);
    if (m_brief->count() == 0) {
        m_brief->addItem(tr("Nothing out of the ordinary."));
    }
}

void BriefPanel::addPeople(const std::vector<MemberId>& expected)
{
    const Review& review = m_roster->review;
    const auto& cleared = m_roster->facts.clearedUntil;
    const auto left = storage::SpotStore(m_workspace.logbook).leftLastTime(review.asOf);
    std::vector<ExpectedMember> people;
    for (const MemberId member : expected) {
        if (const MemberReview* known = reviewOf(review, member)) {
            const auto end = cleared.find(member);
            const auto early = left.find(member);
            people.push_back({known,
                              end == cleared.end() ? std::nullopt : std::optional(end->second),
                              early == left.end() ? std::nullopt : std::optional(early->second)});
        }
    }
    for (const BriefEntry& entry : meetingBrief(people, review.asOf, !cleared.empty())) {
        const Member& member = reviewOf(review, entry.member)->member;
        auto* item =
            new QListWidgetItem(tr("%1: %2").arg(nameOf(member), words(entry.what)), m_brief);
        item->setData(kMemberRole, static_cast<qlonglong>(entry.member.value));
    }
}

// Kit that is short and loads that change, of a meeting that has not begun.
void BriefPanel::addPlan(const storage::DayMeeting& meeting)
{
    const Day today = m_workspace.clock.today();
    const ClassPlan plan = readClassPlan(m_workspace.logbook, meeting.groupClass, today);
    const bool isNext = !plan.next || (plan.next->key.day == today &&
                                       (!meeting.start || plan.next->key.start == *meeting.start));
    if (meeting.isLogged || !isNext || plan.people.empty()) {
        return;
    }
    const MeetingPlanAnswer answer = planNext(plan, plan.racks, today, false);
    const auto brief =
        planBrief(answer, itemsIn(answer.book.day, plan.usual, plan.weeks), plan.library);
    const auto shown = std::min(brief.size(), kMostPlanLines);
    for (std::size_t i = 0; i < shown; ++i) {
        const auto& [member, what] = brief[i];
        const MemberReview* of = reviewOf(m_roster->review, member);
        auto* item = new QListWidgetItem(
            of == nullptr ? words(what) : tr("%1: %2").arg(nameOf(of->member), words(what)),
            m_brief);
        item->setData(kMemberRole, static_cast<qlonglong>(member.value));
    }
    if (shown < brief.size()) {
        m_brief->addItem(tr("%1 more on the Plan page (Ctrl+5).").arg(brief.size() - shown));
    }
}

void BriefPanel::addFollowUps(const std::vector<MemberId>& expected,
                              const storage::DayMeeting& meeting)
{
    const Day today = m_workspace.clock.today();
    for (const FollowUp& followUp : storage::TodayStore(m_workspace.logbook).followUps(today + 1)) {
        const bool isTheirs =
            followUp.member &&
            std::find(expected.begin(), expected.end(), *followUp.member) != expected.end();
        const bool isOfThis = followUp.meeting && followUp.meeting == meeting.meeting;
        if (followUp.done || followUp.due > today || !(isTheirs || isOfThis)) {
            continue;
        }
        const MemberReview* of =
            followUp.member ? reviewOf(m_roster->review, *followUp.member) : nullptr;
        const QString text = tr("Follow-up: %1").arg(plain(followUp.text));
        auto* item = new QListWidgetItem(
            of == nullptr ? text : tr("%1: %2").arg(nameOf(of->member), text), m_brief);
        item->setData(kMemberRole,
                      static_cast<qlonglong>(followUp.member.value_or(MemberId{}).value));
    }
}

void BriefPanel::openItem(const QListWidgetItem* item)
{
    const MemberId member{item->data(kMemberRole).toLongLong()};
    if (member.isStored()) {
        Q_EMIT opened(member);
    }
}

} // namespace levelbar::ui
