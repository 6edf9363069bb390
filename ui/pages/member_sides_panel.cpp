// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/member_sides_panel.h"

#include "core/review/member_sides_figure.h"
#include "ui/charts/member_sides_chart.h"
#include "ui/side_text.h"
#include "ui/words.h"

#include <QComboBox>
#include <QLabel>
#include <QLocale>
#include <QVBoxLayout>

#include <algorithm>

namespace levelbar::ui {

MemberSidesPanel::MemberSidesPanel(QWidget* parent)
    : QWidget(parent)
    , m_measure(new QComboBox(this))
    , m_words(new QLabel(this))
    , m_chart(new MemberSidesChart(this))
{
    setObjectName(QStringLiteral("memberSidesPanel"));
    m_measure->setObjectName(QStringLiteral("memberSidesMeasure"));
    m_measure->setAccessibleName(tr("Measure of left and right"));
    m_measure->setMinimumWidth(300);
    m_words->setObjectName(QStringLiteral("memberSidesWords"));
    m_words->setTextFormat(Qt::PlainText);
    m_words->setWordWrap(true);
    m_chart->setObjectName(QStringLiteral("memberSidesChart"));
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 4, 0, 0);
    layout->addWidget(m_measure, 0, Qt::AlignLeft);
    layout->addWidget(m_words);
    layout->addWidget(m_chart, 1);
    connect(m_measure, &QComboBox::currentIndexChanged, this, &MemberSidesPanel::showMeasure);
}

void MemberSidesPanel::show(const MemberHistory& history, const ReviewedRosterPointer& roster)
{
    m_history = &history;
    m_roster = roster;
    m_review = nullptr;
    if (roster) {
        const auto& members = roster->review.members;
        const auto found = std::find_if(members.begin(), members.end(), [&](const auto& member) {
            return member.member.id == history.member.id;
        });
        m_review = found == members.end() ? nullptr : &*found;
    }
    fillMeasures(m_review);
    showMeasure();
}

void MemberSidesPanel::choose(int measure)
{
    m_measure->setCurrentIndex(measure);
}

void MemberSidesPanel::fillMeasures(const MemberReview* review)
{
    const QString before = m_measure->currentText();
    const QSignalBlocker blocker(m_measure);
    m_measure->clear();
    if (review == nullptr) {
        return;
    }
    const SideReview* main = mainSide(*review);
    int wanted = 0;
    for (const SideReview& side : review->sides) {
        if (&side == main) {
            wanted = m_measure->count();
        }
        m_measure->addItem(plain(side.measure.name));
    }
    const int kept = m_measure->findText(before);
    m_measure->setCurrentIndex(kept >= 0 ? kept : wanted);
}

void MemberSidesPanel::showEvent(QShowEvent* event)
{
    QWidget::showEvent(event);
    if (m_isStale) {
        showMeasure();
    }
}

void MemberSidesPanel::showMeasure()
{
    m_isStale = !isVisible();
    if (m_isStale) {
        return;
    }
    const int at = m_measure->currentIndex();
    m_measure->setEnabled(m_measure->count() > 0);
    if (m_review == nullptr || at < 0 || at >= static_cast<int>(m_review->sides.size())) {
        m_words->setText(tr("Not measured on both sides on one day in the last four months."));
        m_words->setToolTip({});
        m_chart->show({});
        return;
    }
    const SideReview& side = m_review->sides[static_cast<std::size_t>(at)];
    m_words->setText(sideStory(side, m_roster->review.asOf));
    // The number on demand; none for who is sent on.
    const bool hasOdds = side.weaker && side.tier != SideTier::SendOn;
    m_words->setToolTip(hasOdds ? tr("%1 weaker: %2. By more than %3 %: %4.")
                                      .arg(side.weaker == Side::Left ? tr("Left") : tr("Right"),
                                           plain(inHundred(side.probabilitySide)),
                                           locale().toString(side.thresholdPercent, 'f', 0),
                                           plain(inHundred(side.probabilityBeyondThreshold)))
                                : QString());
    m_chart->show(memberSidesFigure(*m_history, m_roster->library, m_roster->review, side));
}

} // namespace levelbar::ui
