// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/tests_panel.h"

#include "core/review/test_words.h"
#include "ui/charts/test_chart.h"
#include "ui/words.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QListWidget>
#include <QVBoxLayout>

#include <algorithm>

namespace levelbar::ui {

namespace {

constexpr int kListWidth = 250;

QString testName(const TestReview& review, const TestKind& test)
{
    return review.side == Side::Both
               ? plain(test.name)
               : TestsPanel::tr("%1, %2").arg(plain(test.name), word(sideWord(review.side)));
}

} // namespace

TestsPanel::TestsPanel(QWidget* parent)
    : QWidget(parent)
    , m_list(new QListWidget(this))
    , m_words(new QLabel(this))
    , m_chart(new TestChart(this))
{
    setObjectName(QStringLiteral("memberTestsPanel"));
    m_list->setObjectName(QStringLiteral("memberTests"));
    m_list->setAccessibleName(tr("Tests"));
    m_list->setFixedWidth(kListWidth);
    m_list->setWordWrap(true);
    m_list->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_list->setAlternatingRowColors(true);
    m_words->setObjectName(QStringLiteral("memberTestWords"));
    m_words->setTextFormat(Qt::PlainText);
    m_words->setWordWrap(true);
    auto* right = new QVBoxLayout;
    right->addWidget(m_words);
    right->addWidget(m_chart, 1);
    auto* layout = new QHBoxLayout(this);
    layout->setContentsMargins(0, 4, 0, 0);
    layout->addWidget(m_list);
    layout->addLayout(right, 1);
    connect(m_list, &QListWidget::currentRowChanged, this, &TestsPanel::showTest);
}

void TestsPanel::show(const MemberHistory& history, const ReviewedRosterPointer& roster)
{
    m_roster = roster;
    m_review = nullptr;
    m_results.clear();
    if (roster) {
        const auto& members = roster->review.members;
        const auto found = std::find_if(members.begin(), members.end(), [&](const auto& member) {
            return member.member.id == history.member.id;
        });
        m_review = found == members.end() ? nullptr : &*found;
        m_results = testResults(history, roster->library, roster->review.asOf);
    }
    fillList();
    showTest();
}

void TestsPanel::fillList()
{
    const QSignalBlocker blocker(m_list);
    const QString before =
        m_list->currentItem() == nullptr ? QString() : m_list->currentItem()->toolTip();
    m_list->clear();
    if (m_review == nullptr || m_review->tests.empty()) {
        return;
    }
    int wanted = 0;
    for (const TestReview& review : m_review->tests) {
        const TestKind& test = *m_roster->library.test(review.test);
        const QString name = testName(review, test);
        auto* item = new QListWidgetItem(tr("%1\n%2, %3")
                                             .arg(name,
                                                  plain(testValue(review.last.value, test)),
                                                  words(shortPhrase(review, test))),
                                         m_list);
        item->setToolTip(name);
        if (name == before) {
            wanted = m_list->count() - 1;
        }
    }
    m_list->setCurrentRow(wanted);
}

void TestsPanel::showTest()
{
    const int row = m_list->currentRow();
    const bool isThere =
        m_review != nullptr && row >= 0 && row < static_cast<int>(m_review->tests.size());
    m_list->setEnabled(isThere);
    m_chart->setVisible(isThere);
    if (!isThere) {
        m_words->setText(tr("Nothing tested yet."));
        return;
    }
    const TestReview& review = m_review->tests[static_cast<std::size_t>(row)];
    const TestKind& test = *m_roster->library.test(review.test);
    const Day today = m_roster->review.asOf;
    const Phrase ago = agoPhrase(today - review.last.day);
    const QString name = testName(review, test);
    const QString trend = words(phrases(review, test));
    m_words->setText(tr("%1: %2, %3. %4")
                         .arg(name, plain(testValue(review.last.value, test)), words(ago), trend));
    m_chart->show(
        testFigure(
            m_results, m_roster->library, m_roster->review.testNoise, review.test, review.side),
        today,
        tr("%1: %2").arg(name, trend));
}

} // namespace levelbar::ui
