// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/goal_editor.h"

#include "core/today/due_day.h"
#include "storage/goal_store.h"
#include "ui/change_notifier.h"
#include "ui/perform.h"
#include "ui/words.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>

#include <algorithm>

namespace levelbar::ui {

namespace {

// "80", "80 kg", "175lb", with a point or a comma.
Result<Mass> typedLoad(QString text, MassUnit unit)
{
    text = text.trimmed().toLower();
    for (const MassUnit known : {MassUnit::Kilogram, MassUnit::Pound}) {
        const QString word = plain(unitWord(known));
        if (text.endsWith(word)) {
            unit = known;
            text = text.chopped(word.size()).trimmed();
            break;
        }
    }
    return parseMass(text.replace(QLatin1Char(','), QLatin1Char('.')).toStdString(), unit);
}

} // namespace

GoalEditor::GoalEditor(Workspace& workspace, QWidget* parent)
    : QWidget(parent)
    , m_workspace(workspace)
    , m_load(new QLineEdit(this))
    , m_by(new QLineEdit(this))
    , m_drop(new QPushButton(tr("No goal"), this))
    , m_refusal(new QLabel(this))
{
    setObjectName(QStringLiteral("memberGoal"));
    m_load->setObjectName(QStringLiteral("goalLoad"));
    m_load->setAccessibleName(tr("Goal: the load for one repetition"));
    m_by->setObjectName(QStringLiteral("goalBy"));
    m_by->setAccessibleName(tr("By when: a date, or days from today; may be empty"));
    m_by->setToolTip(m_by->accessibleName());
    m_by->setPlaceholderText(tr("no day"));
    m_drop->setObjectName(QStringLiteral("goalDrop"));
    m_refusal->setObjectName(QStringLiteral("goalRefusal"));
    m_refusal->setWordWrap(true);
    m_refusal->setTextFormat(Qt::PlainText);
    makeLayout();
    for (QLineEdit* edit : {m_load, m_by}) {
        connect(edit, &QLineEdit::returnPressed, this, &GoalEditor::keep);
    }
    connect(m_drop, &QPushButton::clicked, this, &GoalEditor::drop);
    hide();
}

void GoalEditor::makeLayout()
{
    auto* keep = new QPushButton(tr("Keep (Enter)"), this);
    keep->setObjectName(QStringLiteral("goalKeep"));
    connect(keep, &QPushButton::clicked, this, &GoalEditor::keep);
    auto* goal = new QLabel(tr("Goal, one repetition:"), this);
    goal->setBuddy(m_load);
    auto* by = new QLabel(tr("by (date or days):"), this);
    by->setBuddy(m_by);
    auto* line = new QHBoxLayout;
    line->addWidget(goal);
    line->addWidget(m_load, 1);
    line->addWidget(by);
    line->addWidget(m_by, 1);
    line->addWidget(keep);
    line->addWidget(m_drop);
    auto* caution = new QLabel(
        tr("A goal is not a load to try: the next load is on the card beside the chart."), this);
    caution->setWordWrap(true);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addLayout(line);
    layout->addWidget(m_refusal);
    layout->addWidget(caution);
}

void GoalEditor::show(MemberId member, ExerciseId exercise, Side side, MassUnit unit)
{
    const bool isAnother = member != m_member || exercise != m_exercise || side != m_side;
    m_member = member;
    m_exercise = exercise;
    m_side = side;
    m_unit = unit;
    const auto goals = storage::GoalStore(m_workspace.logbook).ofMember(member);
    const auto found = std::find_if(goals.begin(), goals.end(), [&](const StrengthGoal& goal) {
        return goal.exercise == exercise && goal.side == side;
    });
    const auto stored = found == goals.end() ? std::nullopt : std::optional(*found);
    const bool isChanged = stored != m_goal;
    m_goal = stored;
    if (isAnother) {
        hide();
    }
    if (isAnother || isChanged) {
        fill();
    }
}

void GoalEditor::fill()
{
    m_load->clear();
    m_by->clear();
    if (m_goal) {
        m_load->setText(
            plain(m_goal->load.number() + " " + std::string(unitWord(m_goal->load.unit()))));
        m_by->setText(m_goal->by ? plain(isoText(*m_goal->by)) : QString());
    }
    m_load->setPlaceholderText(m_unit == MassUnit::Pound ? tr("lb") : tr("kg"));
    m_drop->setEnabled(m_goal.has_value());
    m_refusal->hide();
}

void GoalEditor::open()
{
    if (!m_exercise.isStored()) {
        return;
    }
    fill();
    setVisible(true);
    m_load->setFocus(Qt::OtherFocusReason);
    m_load->selectAll();
}

Result<StrengthGoal> GoalEditor::typed() const
{
    StrengthGoal goal;
    goal.exercise = m_exercise;
    goal.side = m_side;
    goal.setOn = m_workspace.clock.today();
    const auto load = typedLoad(m_load->text(), m_unit);
    if (!load) {
        return tl::unexpected(load.error());
    }
    goal.load = *load;
    const QString by = m_by->text().trimmed();
    const bool isKept = m_goal && m_goal->by && by == plain(isoText(*m_goal->by));
    if (isKept) {
        goal.by = m_goal->by; // a day that is over may stay while the load is put right
        goal.setOn = m_goal->setOn;
    } else if (!by.isEmpty()) {
        const auto day = parseDueDay(by.toStdString(), goal.setOn);
        if (!day) {
            return tl::unexpected(day.error());
        }
        goal.by = *day;
    }
    return checkGoal(goal);
}

void GoalEditor::keep()
{
    const auto goal = typed();
    if (!goal) {
        m_refusal->setText(tr("Not kept: %1.").arg(words(goal.error())));
        m_refusal->show();
        return;
    }
    write(*goal);
}

void GoalEditor::drop()
{
    write(std::nullopt);
}

void GoalEditor::write(const std::optional<StrengthGoal>& goal)
{
    const bool isDone = perform(m_workspace.prompter, [&] {
        storage::Action action(
            m_workspace.logbook, storage::ActionKind::EditGoal, m_workspace.clock.now());
        if (goal) {
            storage::GoalStore::put(action, m_member, *goal);
        } else {
            storage::GoalStore::remove(action, m_member, m_exercise, m_side);
        }
        m_workspace.notifier.announce(action.commit());
    });
    if (isDone) {
        hide();
        Q_EMIT changed();
    }
}

void GoalEditor::keyPressEvent(QKeyEvent* event)
{
    if (event->key() == Qt::Key_Escape) {
        fill();
        hide();
        Q_EMIT changed();
        return;
    }
    QWidget::keyPressEvent(event);
}

} // namespace levelbar::ui
