// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/today/today_page.h"

#include "core/review/calibration_words.h"
#include "storage/answered_plans.h"
#include "ui/change_notifier.h"
#include "ui/perform.h"
#include "ui/theme.h"
#include "ui/today/brief_panel.h"
#include "ui/today/follow_up_panel.h"
#include "ui/today/lines_panel.h"
#include "ui/words.h"

#include <QDate>
#include <QHBoxLayout>
#include <QLabel>
#include <QLocale>
#include <QVBoxLayout>

namespace levelbar::ui {

namespace {

constexpr int kLeftShare = 2; // of five parts of the width
constexpr int kRightShare = 3;
constexpr int kHowRightDays = 56;

QLabel* heading(const QString& text, double scale, QWidget* parent)
{
    auto* label = new QLabel(text, parent);
    QFont font = label->font();
    font.setPointSizeF(font.pointSizeF() * scale);
    font.setBold(true);
    label->setFont(font);
    return label;
}

QString longText(Day day)
{
    const CivilDate date = civilDate(day);
    return QLocale().toString(QDate(date.year, date.month, date.day), TodayPage::tr("dddd d MMMM"));
}

} // namespace

TodayPage::TodayPage(Workspace& workspace, BackgroundReview& review, QWidget* parent)
    : QWidget(parent)
    , m_workspace(workspace)
    , m_review(review)
    , m_title(heading({}, 1.5, this))
    , m_brief(new BriefPanel(workspace, this))
    , m_followUps(new FollowUpPanel(workspace, this))
    , m_lines(new LinesPanel(workspace, this))
    , m_howRight(new QLabel(this))
{
    setObjectName(QStringLiteral("todayPage"));
    setAccessibleName(tr("Today"));
    makeLayout();
    connect(m_lines, &LinesPanel::opened, this, &TodayPage::opened);
    connect(m_brief, &BriefPanel::opened, this, [this](MemberId member) {
        Q_EMIT opened(member, ExerciseId{});
    });
    connect(m_lines, &LinesPanel::followUpWanted, m_followUps, &FollowUpPanel::writeAbout);
    connect(&review, &BackgroundReview::ready, this, &TodayPage::refresh);
    connect(&workspace.notifier, &ChangeNotifier::changed, this, [this](const auto& change) {
        if (change.touchesToday || change.touchesClasses) {
            refresh(); // at once; what needs the histories follows with the review
        }
    });
    setFocusProxy(m_lines);
}

void TodayPage::showEvent(QShowEvent* event)
{
    QWidget::showEvent(event);
    if (m_isStale) {
        refresh();
    }
}

void TodayPage::makeLayout()
{
    m_title->setObjectName(QStringLiteral("todayTitle"));
    m_howRight->setObjectName(QStringLiteral("todayHowRight"));
    m_howRight->setWordWrap(true);
    m_howRight->setTextFormat(Qt::PlainText);
    auto* left = new QVBoxLayout;
    left->addWidget(m_title);
    left->addWidget(m_brief, 3);
    left->addWidget(m_followUps, 2);
    auto* right = new QVBoxLayout;
    right->addWidget(heading(tr("Who needs you"), 1.0, this));
    right->addWidget(m_lines, 1);
    right->addSpacing(6);
    right->addWidget(heading(tr("How right were we, the last eight weeks"), 1.0, this));
    right->addWidget(m_howRight);
    auto* layout = new QHBoxLayout(this);
    layout->setContentsMargins(16, 14, 16, 10);
    layout->setSpacing(20);
    layout->addLayout(left, kLeftShare);
    layout->addLayout(right, kRightShare);
}

void TodayPage::refresh()
{
    m_isStale = !isVisible();
    if (m_isStale) {
        return;
    }
    m_title->setText(longText(m_workspace.clock.today()));
    const auto roster = m_review.current();
    perform(m_workspace.prompter, [&] {
        m_followUps->show(roster);
        if (roster) {
            m_brief->show(roster);
            m_lines->show(roster);
            showHowRight();
        }
    });
}

void TodayPage::showHowRight()
{
    const Day today = m_workspace.clock.today();
    const auto answered =
        storage::answeredPlans(m_workspace.logbook, today - (kHowRightDays - 1), today);
    m_howRight->setText(words(calibrationPhrases(calibrationOf(answered))));
}

} // namespace levelbar::ui
