// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/sides_page.h"

#include "storage/class_store.h"
#include "storage/side_store.h"
#include "ui/charts/sides_chart.h"
#include "ui/pages/side_card.h"
#include "ui/pages/sides_bar.h"
#include "ui/perform.h"
#include "ui/side_text.h"
#include "ui/words.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QListWidget>
#include <QVBoxLayout>

#include <algorithm>

namespace levelbar::ui {

namespace {

constexpr int kListsWidth = 410;
constexpr int kMemberRole = Qt::UserRole + 1;
constexpr int kMeasureRole = Qt::UserRole + 2;

std::map<QString, std::set<MemberId>> classMembers(const storage::Logbook& logbook)
{
    std::map<QString, std::set<MemberId>> found;
    const storage::ClassStore store(logbook);
    for (const storage::GroupClass& groupClass : store.all()) {
        const auto members = store.membersOf(groupClass.id);
        found[plain(groupClass.name)].insert(members.begin(), members.end());
    }
    return found;
}

// How probably the entry is false for its list. Nobody is sent on by odds.
double chanceOf(const SideReview& side)
{
    switch (side.tier) {
    case SideTier::Act:
        return 1.0 - side.probabilityBeyondThreshold;
    case SideTier::Look:
        return 1.0 - side.probabilityBeyondFive;
    case SideTier::SendOn:
    case SideTier::None:
        break;
    }
    return 0.0;
}

QString titleOf(SideTier tier)
{
    switch (tier) {
    case SideTier::Act:
        return SidesPage::tr("Work on it: weaker side first");
    case SideTier::SendOn:
        return SidesPage::tr("Send on: new, sudden or painful");
    case SideTier::Look:
    case SideTier::None:
        break;
    }
    return SidesPage::tr("Check again: starting side swapped");
}

} // namespace

SidesPage::SidesPage(Workspace& workspace, BackgroundReview& review, QWidget* parent)
    : QWidget(parent)
    , m_workspace(workspace)
    , m_bar(new SidesBar(this))
    , m_chart(new SidesChart(this))
    , m_card(new SideCard(this))
    , m_count(new QLabel(this))
{
    setObjectName(QStringLiteral("sidesPage"));
    setAccessibleName(tr("Sides"));
    m_chart->setObjectName(QStringLiteral("sidesChart"));
    m_chart->setAccessibleName(tr("Left and right differences, one row a person"));
    m_chart->setToolTip({});
    m_count->setObjectName(QStringLiteral("sidesCount"));
    m_lists = {makeList(SideTier::Act, QStringLiteral("workOnItList"), tr("Work on it")),
               makeList(SideTier::Look, QStringLiteral("checkAgainList"), tr("Check again")),
               makeList(SideTier::SendOn, QStringLiteral("sendOnList"), tr("Send on"))};
    makeLayout();
    connectParts();
    connect(&review, &BackgroundReview::ready, this, &SidesPage::take);
    if (review.current()) {
        take(review.current());
    }
}

void SidesPage::makeLayout()
{
    auto* caution = new QLabel(tr("This informs a trained instructor and does not diagnose. Pain "
                                  "stops the set; new, sudden or painful differences are not ours "
                                  "to train."),
                               this);
    caution->setObjectName(QStringLiteral("sidesCaution"));
    caution->setWordWrap(true);
    auto* left = new QVBoxLayout;
    left->addWidget(m_bar);
    left->addWidget(m_chart, 1);
    left->addWidget(m_count);
    left->addWidget(m_card);
    auto* right = new QVBoxLayout;
    constexpr std::array<int, 3> kShares = {3, 4, 2};
    for (std::size_t place = 0; place < m_lists.size(); ++place) {
        right->addWidget(m_lists.at(place).title);
        right->addWidget(m_lists.at(place).list, kShares.at(place));
    }
    right->addWidget(caution);
    right->setContentsMargins(8, 0, 0, 0);
    auto* lists = new QWidget(this);
    lists->setLayout(right);
    lists->setFixedWidth(kListsWidth);
    auto* layout = new QHBoxLayout(this);
    layout->setContentsMargins(16, 14, 16, 10);
    layout->addLayout(left, 1);
    layout->addWidget(lists);
    setFocusProxy(m_chart);
}

void SidesPage::connectParts()
{
    connect(m_bar, &SidesBar::changed, this, &SidesPage::showAll);
    connect(m_bar, &SidesBar::thresholdWanted, this, &SidesPage::keepThreshold);
    connect(m_chart, &SidesChart::opened, this, &SidesPage::opened);
    connect(m_chart, &SidesChart::chosen, this, &SidesPage::showCard);
    connect(m_chart, &SidesChart::reasonWanted, m_card, &SideCard::beginReason);
    connect(m_card, &SideCard::opened, this, &SidesPage::opened);
    connect(m_card, &SideCard::reasonWanted, this, &SidesPage::addReason);
    connect(m_card, &SideCard::reasonEnded, this, &SidesPage::endReason);
    connect(m_card, &SideCard::extraSetWanted, this, &SidesPage::wantExtraSet);
    connect(m_card, &SideCard::trainingEnded, this, &SidesPage::endTraining);
}

SidesPage::TierList
SidesPage::makeList(SideTier tier, const QString& name, const QString& accessible)
{
    TierList made{tier, new QLabel(this), new QListWidget(this)};
    QFont bold = made.title->font();
    bold.setBold(true);
    made.title->setFont(bold);
    made.title->setWordWrap(true);
    made.title->setObjectName(name + QStringLiteral("Title"));
    made.list->setObjectName(name);
    made.list->setAccessibleName(accessible);
    made.list->setWordWrap(true);
    made.list->setTextElideMode(Qt::ElideNone);
    made.list->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    made.list->setSpacing(1);
    connect(made.list, &QListWidget::itemActivated, this, [this](const QListWidgetItem* item) {
        Q_EMIT opened(MemberId{item->data(kMemberRole).toLongLong()});
    });
    connect(made.list, &QListWidget::currentItemChanged, this, [this](const auto* item) {
        chooseListed(item);
    });
    return made;
}

void SidesPage::take(const ReviewedRosterPointer& roster)
{
    m_roster = roster;
    perform(m_workspace.prompter,
            [&] { m_bar->setChoices(roster->review, classMembers(m_workspace.logbook)); });
    showAll();
}

void SidesPage::showAll()
{
    if (!m_roster) {
        return;
    }
    SidesFigure figure = sidesFigure(m_roster->review, m_bar->measure());
    std::set<MemberId> accepted;
    for (const MemberReview& member : m_roster->review.members) {
        if (m_bar->accepts(member.member)) {
            accepted.insert(member.member.id);
        }
    }
    const auto all = static_cast<int>(figure.rows.size());
    std::erase_if(figure.rows, [&](const SidesRow& row) { return !accepted.contains(row.member); });
    sortRows(figure, m_bar->order());
    const auto shown = static_cast<int>(figure.rows.size());
    m_count->setText(shown == all
                         ? tr("%n people", nullptr, all)
                         : tr("%1 of %n people", nullptr, all).arg(locale().toString(shown)));
    m_bar->setThreshold(figure.thresholdPercent);
    m_chart->show(figure);
    for (const TierList& target : m_lists) {
        fillList(target);
    }
    showCard();
}

void SidesPage::fillList(const TierList& target)
{
    struct Line {
        const MemberReview* member;
        const SideReview* side;
    };

    std::vector<Line> lines;
    for (const MemberReview& member : m_roster->review.members) {
        for (const SideReview& side : member.sides) {
            const bool isHere = !m_bar->isMeasureOnly() || side.measure.name == m_bar->measure();
            if (side.tier == target.tier && isHere && m_bar->accepts(member.member)) {
                lines.push_back({&member, &side});
            }
        }
    }
    std::stable_sort(lines.begin(), lines.end(), [](const Line& a, const Line& b) {
        return chanceOf(*a.side) < chanceOf(*b.side);
    });
    const QSignalBlocker blocker(target.list);
    target.list->clear();
    double chance = 0.0;
    for (const Line& line : lines) {
        const Member& member = line.member->member;
        chance += chanceOf(*line.side);
        auto* item =
            new QListWidgetItem(tr("%1\n%2: %3")
                                    .arg(plain(member.name.empty() ? member.code : member.name),
                                         plain(line.side->measure.name),
                                         listedText(*line.side)),
                                target.list);
        item->setData(kMemberRole, static_cast<qlonglong>(member.id.value));
        item->setData(kMeasureRole, plain(line.side->measure.name));
    }
    QString text =
        tr("%1 (%2)").arg(titleOf(target.tier), locale().toString(static_cast<int>(lines.size())));
    if (!lines.empty() && target.tier != SideTier::SendOn) {
        text += QLatin1Char('\n') +
                tr("about %1 of them expected to be chance").arg(locale().toString(chance, 'f', 1));
    }
    target.title->setText(text);
}

// Who is chosen in a list is shown in the chart, too.
void SidesPage::chooseListed(const QListWidgetItem* item)
{
    if (item == nullptr) {
        return;
    }
    const MemberId member{item->data(kMemberRole).toLongLong()};
    const std::string measure = item->data(kMeasureRole).toString().toStdString();
    if (measure != m_bar->measure()) {
        // The lists are filled anew; the list with the keyboard keeps its line.
        auto* list = item->listWidget();
        const int row = list->row(item);
        m_bar->chooseMeasure(measure);
        const QSignalBlocker blocker(list);
        list->setCurrentRow(row);
    }
    m_chart->choose(member);
}

void SidesPage::showCard()
{
    m_card->show(m_chart->current(), m_roster ? m_roster->review.asOf : Day{}, runningTraining());
}

std::optional<SidePrescription> SidesPage::runningTraining() const
{
    const auto row = m_chart->current();
    if (!row || !row->side.measure.exercise || !m_roster) {
        return std::nullopt;
    }
    const SideRecords records = storage::SideStore(m_workspace.logbook).ofMember(row->member);
    const SidePrescription* running =
        records.prescriptionFor(*row->side.measure.exercise, m_roster->review.asOf);
    return running == nullptr ? std::nullopt : std::optional(*running);
}

void SidesPage::keepTraining(const SidePrescription& prescription)
{
    const auto row = m_chart->current();
    perform(m_workspace.prompter, [&] {
        storage::Action action(m_workspace.logbook,
                               storage::ActionKind::EditSidePrescription,
                               m_workspace.clock.now());
        storage::SideStore::putPrescription(action, row->member, prescription);
        m_workspace.notifier.announce(action.commit());
    });
    showCard();
}

void SidesPage::wantExtraSet(bool isWanted)
{
    const auto row = m_chart->current();
    if (!row || !row->side.measure.exercise) {
        return;
    }
    SidePrescription prescription = runningTraining().value_or(
        SidePrescription{*row->side.measure.exercise, m_workspace.clock.today(), {}, {}, false});
    prescription.wantsExtraSet = isWanted;
    keepTraining(prescription);
}

void SidesPage::endTraining()
{
    if (auto running = runningTraining()) {
        running->ended = m_workspace.clock.today();
        running->why = SideEnd::ByHand;
        keepTraining(*running);
    }
}

void SidesPage::keepThreshold(double percent)
{
    const auto row =
        m_roster ? sidesFigure(m_roster->review, m_bar->measure()).rows : std::vector<SidesRow>{};
    const auto checked = checkThreshold(percent);
    if (row.empty() || !checked) {
        return;
    }
    perform(m_workspace.prompter, [&] {
        storage::Action action(
            m_workspace.logbook, storage::ActionKind::EditSideThreshold, m_workspace.clock.now());
        storage::SideStore::setThreshold(action, row.front().side.measure.key(), *checked);
        m_workspace.notifier.announce(action.commit());
    });
}

void SidesPage::addReason(const QString& text)
{
    const auto row = m_chart->current();
    if (!row) {
        return;
    }
    KnownReason reason;
    reason.measure = row->side.measure.key();
    reason.text = text.toStdString();
    reason.since = m_workspace.clock.today();
    reason.agreedPercent = row->side.differencePercent.value;
    if (row->side.reason) { // other words for the same reason
        reason.since = row->side.reason->since;
        reason.agreedPercent = row->side.reason->agreedPercent;
    }
    keepReason(reason);
}

void SidesPage::endReason()
{
    const auto row = m_chart->current();
    if (row && row->side.reason) {
        KnownReason reason = *row->side.reason;
        reason.ended = m_workspace.clock.today();
        keepReason(reason);
    }
}

void SidesPage::keepReason(const KnownReason& reason)
{
    const auto row = m_chart->current();
    perform(m_workspace.prompter, [&] {
        const auto checked = checkReason(reason);
        if (!checked) {
            m_workspace.prompter.tellFailure(words(checked.error()),
                                             tr("Type the reason in other words."));
            return;
        }
        storage::Action action(
            m_workspace.logbook, storage::ActionKind::EditSideReason, m_workspace.clock.now());
        storage::SideStore::putReason(action, row->member, *checked);
        m_workspace.notifier.announce(action.commit());
    });
    m_chart->setFocus(Qt::OtherFocusReason);
}

} // namespace levelbar::ui
