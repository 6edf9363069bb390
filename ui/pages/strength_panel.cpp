// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/strength_panel.h"

#include "core/review/body_mass.h"
#include "ui/charts/strength_chart.h"
#include "ui/pages/goal_editor.h"
#include "ui/perform.h"
#include "ui/report/chart_saver.h"
#include "ui/words.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QShortcut>
#include <QStandardItemModel>
#include <QToolButton>
#include <QVBoxLayout>

#include <algorithm>

namespace levelbar::ui {

namespace {

constexpr int kRowRole = Qt::UserRole + 1; // place in MemberReview::strength; -1: none

// Shrinks with the window instead of pushing it wider; what is cut off stands in the list.
void letShrink(QComboBox& box, int characters)
{
    box.setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    box.setMinimumContentsLength(characters);
}

} // namespace

StrengthPanel::StrengthPanel(Workspace& workspace, QWidget* parent)
    : QWidget(parent)
    , m_workspace(workspace)
    , m_exercise(new QComboBox(this))
    , m_beside(new QComboBox(this))
    , m_unit(new QComboBox(this))
    , m_saver(new ChartSaver(workspace, this))
    , m_setGoal(new QToolButton(this))
    , m_words(new QLabel(this))
    , m_goal(new GoalEditor(workspace, this))
    , m_chart(new StrengthChart(this))
{
    setObjectName(QStringLiteral("memberStrengthPanel"));
    m_exercise->setObjectName(QStringLiteral("memberExercise"));
    m_exercise->setAccessibleName(tr("Exercise and side"));
    m_beside->setObjectName(QStringLiteral("memberBeside"));
    m_beside->setAccessibleName(tr("A second exercise in the same chart"));
    m_unit->setObjectName(QStringLiteral("memberUnit"));
    m_unit->setAccessibleName(tr("Unit of the chart"));
    m_words->setObjectName(QStringLiteral("memberStrengthWords"));
    m_words->setWordWrap(true);
    m_words->setTextFormat(Qt::PlainText);
    m_unit->addItem(tr("kg"), static_cast<int>(ChartUnit::Kilograms));
    m_unit->addItem(tr("lb"), static_cast<int>(ChartUnit::Pounds));
    m_unit->addItem(tr("per body mass"), static_cast<int>(ChartUnit::PerBodyMass));
    m_setGoal->setObjectName(QStringLiteral("memberSetGoal"));
    m_setGoal->setText(tr("Goal"));
    m_setGoal->setToolTip(tr("What they work towards in this exercise (Ctrl+G)"));
    makeLayout();
    auto* shortcut = new QShortcut(QKeySequence(Qt::CTRL | Qt::Key_G), this);
    shortcut->setContext(Qt::WindowShortcut);
    connect(shortcut, &QShortcut::activated, m_goal, &GoalEditor::open);
    connect(m_setGoal, &QToolButton::clicked, m_goal, &GoalEditor::open);
    connect(m_goal, &GoalEditor::changed, this, [this] {
        showExercise();
        m_exercise->setFocus(Qt::OtherFocusReason);
    });
    connect(m_exercise, &QComboBox::currentIndexChanged, this, [this] {
        fillBeside();
        showExercise();
    });
    connect(m_beside, &QComboBox::currentIndexChanged, this, &StrengthPanel::showExercise);
    connect(m_unit, &QComboBox::currentIndexChanged, this, &StrengthPanel::showExercise);
}

void StrengthPanel::makeLayout()
{
    letShrink(*m_exercise, 12);
    letShrink(*m_beside, 8);
    letShrink(*m_unit, 5);
    auto* choice = new QHBoxLayout;
    choice->addWidget(m_exercise, 3);
    choice->addWidget(m_beside, 2);
    choice->addWidget(m_unit, 1);
    choice->addWidget(m_setGoal);
    choice->addWidget(m_saver);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 4, 0, 0);
    layout->addLayout(choice);
    layout->addWidget(m_words);
    layout->addWidget(m_goal);
    layout->addWidget(m_chart, 1);
}

void StrengthPanel::show(const MemberHistory& history,
                         const Library& library,
                         const ReviewedRosterPointer& roster,
                         EffortScale effort)
{
    const bool isAnother =
        m_history == nullptr || m_review == nullptr || m_review->member.id != history.member.id;
    m_history = &history;
    m_library = &library;
    m_effort = effort;
    m_roster = roster;
    m_review = nullptr;
    if (roster) {
        const auto& members = roster->review.members;
        const auto found = std::find_if(members.begin(), members.end(), [&](const auto& member) {
            return member.member.id == history.member.id;
        });
        m_review = found == members.end() ? nullptr : &*found;
    }
    if (isAnother) {
        const QSignalBlocker blocker(m_beside);
        m_beside->clear();
    }
    fillChoices();
    fillBeside();
    const bool isWeighed =
        BodyMassCourse(history, library, m_workspace.clock.today()).on({}).has_value();
    const int perMass = m_unit->findData(static_cast<int>(ChartUnit::PerBodyMass));
    qobject_cast<QStandardItemModel*>(m_unit->model())->item(perMass)->setEnabled(isWeighed);
    showExercise();
}

QString StrengthPanel::labelOf(const StrengthReview& review) const
{
    const Exercise* known = m_library->exercise(review.exercise);
    const QString name = known == nullptr ? QString() : plain(known->name);
    return review.side == Side::Both ? name : tr("%1, %2").arg(name, word(sideWord(review.side)));
}

const StrengthReview* StrengthPanel::reviewAt(int row) const
{
    const bool isThere =
        m_review != nullptr && row >= 0 && row < static_cast<int>(m_review->strength.size());
    return isThere ? &m_review->strength[static_cast<std::size_t>(row)] : nullptr;
}

void StrengthPanel::fillChoices()
{
    const QString before = m_exercise->currentText();
    const QSignalBlocker blocker(m_exercise);
    m_exercise->clear();
    if (m_review == nullptr) {
        return;
    }
    const StrengthReview* main = mainStrength(*m_review);
    int wanted = 0;
    for (const StrengthReview& entry : m_review->strength) {
        const int row = m_exercise->count();
        m_exercise->addItem(labelOf(entry));
        m_exercise->setItemData(row, row, kRowRole);
        wanted = &entry == main ? row : wanted;
    }
    const int kept = m_exercise->findText(before);
    m_exercise->setCurrentIndex(kept >= 0 ? kept : wanted);
}

void StrengthPanel::fillBeside()
{
    const QString before = m_beside->currentText();
    const QSignalBlocker blocker(m_beside);
    m_beside->clear();
    m_beside->addItem(tr("alone"));
    m_beside->setItemData(0, -1, kRowRole);
    for (int row = 0; row < m_exercise->count(); ++row) {
        if (row != m_exercise->currentIndex()) {
            m_beside->addItem(tr("beside %1").arg(m_exercise->itemText(row)));
            m_beside->setItemData(m_beside->count() - 1, row, kRowRole);
        }
    }
    m_beside->setCurrentIndex(std::max(0, m_beside->findText(before)));
    m_beside->setEnabled(m_beside->count() > 1);
}

void StrengthPanel::choose(ExerciseId exercise)
{
    for (int row = 0; row < m_exercise->count(); ++row) {
        const StrengthReview* entry = reviewAt(row);
        if (entry != nullptr && entry->exercise == exercise) {
            m_exercise->setCurrentIndex(row);
            return;
        }
    }
}

void StrengthPanel::focusChoice()
{
    m_exercise->setFocus(Qt::OtherFocusReason);
}

MassUnit StrengthPanel::usualUnit() const
{
    return static_cast<ChartUnit>(m_unit->currentData().toInt()) == ChartUnit::Pounds
               ? MassUnit::Pound
               : MassUnit::Kilogram;
}

QString StrengthPanel::goalWords(const StrengthReview& review) const
{
    const auto& goal = m_goal->goal();
    if (!goal) {
        return {};
    }
    const GoalOutlook outlook =
        goalOutlook(*goal, review, m_chart->view().course.forecast, m_workspace.clock.today());
    return QLatin1Char('\n') + words(phrases(*goal, outlook, review.trend));
}

void StrengthPanel::showWords(const StrengthReview* review)
{
    if (review == nullptr) {
        m_words->setText(tr("No strength can be read off the sets yet."));
        m_chart->setSummary(tr("Strength chart: nothing to show."));
        return;
    }
    const QString trend = words(phrases(review->trend));
    m_words->setText(words(phrases(review->strength, m_workspace.clock.today())) +
                     QLatin1Char('\n') + trend + goalWords(*review));
    const QString lower = trend.isEmpty() ? trend : locale().toLower(trend.left(1)) + trend.mid(1);
    m_chart->setSummary(tr("%1: %2 %3").arg(labelOf(*review), lower, chartWords(m_chart->view())));
}

void StrengthPanel::showExercise()
{
    if (m_history == nullptr) {
        return;
    }
    const Day today = m_workspace.clock.today();
    const StrengthReview* review = reviewAt(m_exercise->currentIndex());
    const StrengthReview* beside = reviewAt(m_beside->currentData(kRowRole).toInt());
    StrengthView view;
    view.asOf = today;
    view.effort = m_effort;
    view.scale = {static_cast<ChartUnit>(m_unit->currentData().toInt()),
                  BodyMassCourse(*m_history, *m_library, today)};
    if (review != nullptr) {
        view.course = strengthCourse(*m_history, *m_library, review->exercise, review->side, today);
        view.name = labelOf(*review);
        perform(m_workspace.prompter, [&] {
            m_goal->show(m_history->member.id, review->exercise, review->side, usualUnit());
        });
        view.goal = m_goal->goal();
        if (beside != nullptr && beside != review) {
            view.other =
                strengthCourse(*m_history, *m_library, beside->exercise, beside->side, today);
            view.otherName = labelOf(*beside);
        }
    }
    m_setGoal->setEnabled(review != nullptr);
    m_goal->setVisible(review != nullptr && m_goal->isVisible());
    m_chart->show(std::move(view));
    showWords(review);
    m_saver->setSubject({m_chart->view().course.figure,
                         today,
                         m_exercise->currentText(),
                         plain(m_history->member.code),
                         plain(m_history->member.name)});
    Q_EMIT chosen(review == nullptr ? ExerciseId{} : review->exercise,
                  review == nullptr ? Side::Both : review->side);
}

} // namespace levelbar::ui
