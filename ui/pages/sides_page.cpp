// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/sides_page.h"

#include "core/review/figures.h"
#include "ui/charts/sides_chart.h"
#include "ui/words.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QListWidget>
#include <QVBoxLayout>

#include <algorithm>

namespace levelbar::ui {

namespace {

constexpr int kListsWidth = 410;
constexpr int kMemberRole = Qt::UserRole + 1;

} // namespace

SidesPage::SidesPage(BackgroundReview& review, QWidget* parent)
    : QWidget(parent)
    , m_measure(new QComboBox(this))
    , m_chart(new SidesChart(this))
{
    setObjectName(QStringLiteral("sidesPage"));
    setAccessibleName(tr("Sides"));
    m_measure->setObjectName(QStringLiteral("sidesMeasure"));
    m_measure->setAccessibleName(tr("Measure"));
    m_measure->setMinimumWidth(320);
    m_chart->setObjectName(QStringLiteral("sidesChart"));
    m_chart->setAccessibleName(tr("Left and right differences, one row a person"));
    m_act = makeList(QStringLiteral("workOnItList"), tr("Work on it"));
    m_look = makeList(QStringLiteral("checkAgainList"), tr("Check again"));
    m_sendOn = makeList(QStringLiteral("sendOnList"), tr("Send on"));
    auto* caution = new QLabel(tr("This informs a trained instructor and does not diagnose. Pain "
                                  "stops the set; new, sudden "
                                  "or painful differences are not ours to train."),
                               this);
    caution->setObjectName(QStringLiteral("sidesCaution"));
    caution->setWordWrap(true);

    auto* top = new QHBoxLayout;
    top->addWidget(m_measure);
    top->addStretch(1);
    auto* left = new QVBoxLayout;
    left->addLayout(top);
    left->addWidget(m_chart, 1);
    auto* right = new QVBoxLayout;
    for (const auto& [tier, share] :
         {std::pair(m_act, 3), std::pair(m_look, 4), std::pair(m_sendOn, 2)}) {
        right->addWidget(tier.title);
        right->addWidget(tier.list, share);
    }
    right->addWidget(caution);
    auto* lists = new QWidget(this);
    lists->setLayout(right);
    lists->setFixedWidth(kListsWidth);
    right->setContentsMargins(8, 0, 0, 0);
    auto* layout = new QHBoxLayout(this);
    layout->setContentsMargins(16, 14, 16, 10);
    layout->addLayout(left, 1);
    layout->addWidget(lists);

    connect(m_measure, &QComboBox::currentIndexChanged, this, &SidesPage::showMeasure);
    connect(m_chart, &SidesChart::opened, this, &SidesPage::opened);
    connect(&review, &BackgroundReview::ready, this, &SidesPage::take);
    if (review.current()) {
        take(review.current());
    }
}

SidesPage::TierList SidesPage::makeList(const QString& name, const QString& accessible)
{
    TierList made{new QLabel(this), new QListWidget(this)};
    QFont bold = made.title->font();
    bold.setBold(true);
    made.title->setFont(bold);
    made.title->setWordWrap(true);
    made.list->setObjectName(name);
    made.list->setAccessibleName(accessible);
    made.list->setWordWrap(true);
    made.list->setTextElideMode(Qt::ElideNone);
    made.list->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    connect(made.list, &QListWidget::itemActivated, this, [this](const QListWidgetItem* item) {
        Q_EMIT opened(MemberId{item->data(kMemberRole).toLongLong()});
    });
    return made;
}

void SidesPage::take(const ReviewedRosterPointer& roster)
{
    m_roster = roster;
    const QString before = m_measure->currentText();
    {
        const QSignalBlocker blocker(m_measure);
        m_measure->clear();
        for (const std::string& name : measuresOf(roster->review)) {
            m_measure->addItem(plain(name));
        }
        m_measure->setCurrentIndex(std::max(0, m_measure->findText(before)));
    }
    showMeasure();
    const Review& review = roster->review;
    const auto chance = [this](double expected) {
        return tr("about %1 of them expected to be chance")
            .arg(locale().toString(expected, 'f', 1));
    };
    fillList(
        m_act, SideTier::Act, tr("Work on it: weaker side first"), chance(review.expectedFalseAct));
    fillList(m_look,
             SideTier::Look,
             tr("Check again: both sides, starting side swapped"),
             chance(review.expectedFalseLook - review.expectedFalseAct));
    fillList(m_sendOn, SideTier::SendOn, tr("Send on: new, sudden or painful"), QString());
}

void SidesPage::showMeasure()
{
    if (m_roster) {
        m_chart->show(sidesFigure(m_roster->review, m_measure->currentText().toStdString()));
    }
}

void SidesPage::fillList(const TierList& target,
                         SideTier tier,
                         const QString& title,
                         const QString& chance)
{
    target.list->clear();
    for (const MemberReview& member : m_roster->review.members) {
        for (const SideReview& side : member.sides) {
            if (side.tier != tier) {
                continue;
            }
            const std::string& name =
                member.member.name.empty() ? member.member.code : member.member.name;
            auto* item = new QListWidgetItem(
                tr("%1\n%2: %3").arg(plain(name), plain(side.measure.name), words(phrases(side))),
                target.list);
            item->setData(kMemberRole, static_cast<qlonglong>(member.member.id.value));
        }
    }
    const int count = target.list->count();
    QString text = tr("%1 (%2)").arg(title, locale().toString(count));
    if (count > 0 && !chance.isEmpty()) {
        text += QStringLiteral("\n") + chance;
    }
    target.title->setText(text);
}

} // namespace levelbar::ui
