// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/exercises/ladder_editor.h"

#include "ui/exercises/exercise_text.h"
#include "ui/words.h"

#include <QComboBox>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>
#include <QSpinBox>
#include <QVBoxLayout>

#include <algorithm>
#include <utility>

namespace levelbar::ui {

namespace {

constexpr const char* kGymSource = "this gym";
constexpr std::size_t kFewestRungs = 2;

QSpinBox* gate(QWidget* parent, const char* name, int lowest, int highest)
{
    auto* box = new QSpinBox(parent);
    box->setObjectName(QLatin1String(name));
    box->setRange(lowest, highest);
    return box;
}

bool isOn(const Ladder& ladder, const std::string& key)
{
    return std::any_of(ladder.rungs.begin(), ladder.rungs.end(), [&key](const Rung& rung) {
        return rung.exerciseKey == key;
    });
}

// The first ladder that it stands on; else the first of its pattern, else the first.
int firstFor(const Exercise& exercise, const std::vector<Ladder>& ladders)
{
    auto found = std::find_if(ladders.begin(), ladders.end(), [&exercise](const Ladder& ladder) {
        return isOn(ladder, exercise.key);
    });
    if (found == ladders.end()) {
        found = std::find_if(ladders.begin(), ladders.end(), [&exercise](const Ladder& ladder) {
            return ladder.pattern == exercise.pattern;
        });
    }
    return found == ladders.end() ? 0 : static_cast<int>(found - ladders.begin());
}

} // namespace

LadderEditor::LadderEditor(QWidget* parent)
    : QWidget(parent)
    , m_which(new QComboBox(this))
    , m_line(new QLabel(this))
    , m_rungs(new QListWidget(this))
    , m_exercise(new QComboBox(this))
    , m_remove(new QPushButton(tr("Take out (Delete)"), this))
    , m_shipped(new QPushButton(tr("Back to the shipped one"), this))
    , m_setting(new QLineEdit(this))
    , m_upAmount(gate(this, "ladderUpAmount", 1, 600))
    , m_upSets(gate(this, "ladderUpSets", 1, 10))
    , m_upSessions(gate(this, "ladderUpSessions", 1, 10))
    , m_upLoad(gate(this, "ladderUpLoad", 0, 300))
    , m_downPain(gate(this, "ladderDownPain", 1, 10))
    , m_downDays(gate(this, "ladderDownDays", 1, 365))
    , m_downFewer(gate(this, "ladderDownFewer", 1, 600))
    , m_downSessions(gate(this, "ladderDownSessions", 1, 10))
{
    setObjectName(QStringLiteral("ladderEditor"));
    m_which->setObjectName(QStringLiteral("ladderWhich"));
    m_which->setAccessibleName(tr("Ladder"));
    m_line->setObjectName(QStringLiteral("ladderRefused"));
    m_line->setWordWrap(true);
    m_line->setTextFormat(Qt::PlainText);
    m_rungs->setObjectName(QStringLiteral("ladderRungs"));
    m_rungs->setAccessibleName(
        tr("Rungs from easy to hard; Ctrl with an arrow moves one, Delete takes it out"));
    m_rungs->installEventFilter(this);
    m_exercise->setObjectName(QStringLiteral("ladderExercise"));
    m_exercise->setAccessibleName(tr("Exercise of a new rung"));
    m_remove->setObjectName(QStringLiteral("ladderRemove"));
    m_shipped->setObjectName(QStringLiteral("ladderShipped"));
    m_setting->setObjectName(QStringLiteral("ladderSetting"));
    makeLayout();
    connect(m_which, &QComboBox::currentIndexChanged, this, &LadderEditor::chooseLadder);
    connect(m_rungs, &QListWidget::currentRowChanged, this, &LadderEditor::showRung);
    connect(m_remove, &QPushButton::clicked, this, &LadderEditor::removeRung);
    connect(m_shipped, &QPushButton::clicked, this, [this] { Q_EMIT shippedWanted(m_ladder); });
    connect(m_setting, &QLineEdit::textEdited, this, &LadderEditor::takeGates);
    for (QSpinBox* box : {m_upAmount,
                          m_upSets,
                          m_upSessions,
                          m_upLoad,
                          m_downPain,
                          m_downDays,
                          m_downFewer,
                          m_downSessions}) {
        connect(box, &QSpinBox::valueChanged, this, &LadderEditor::takeGates);
    }
}

void LadderEditor::makeLayout()
{
    auto* keep = new QPushButton(tr("Keep (Ctrl+Enter)"), this);
    keep->setObjectName(QStringLiteral("ladderKeep"));
    auto* leave = new QPushButton(tr("Leave it (Esc)"), this);
    leave->setObjectName(QStringLiteral("ladderCancel"));
    connect(keep, &QPushButton::clicked, this, [this] { Q_EMIT kept(m_ladder); });
    connect(leave, &QPushButton::clicked, this, &LadderEditor::cancelled);
    auto* buttons = new QHBoxLayout;
    buttons->addWidget(m_which, 1);
    buttons->addWidget(keep);
    buttons->addWidget(leave);
    auto* halves = new QHBoxLayout;
    halves->addWidget(makeRungs(), 3);
    halves->addWidget(makeGates(), 2);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addLayout(buttons);
    layout->addWidget(m_line);
    layout->addLayout(halves, 1);
}

QWidget* LadderEditor::makeRungs()
{
    auto* half = new QWidget(this);
    auto* harder = new QPushButton(tr("Harder (Ctrl+Down)"), this);
    harder->setObjectName(QStringLiteral("ladderDown"));
    auto* easier = new QPushButton(tr("Easier (Ctrl+Up)"), this);
    easier->setObjectName(QStringLiteral("ladderUp"));
    connect(harder, &QPushButton::clicked, this, [this] { moveRung(1); });
    connect(easier, &QPushButton::clicked, this, [this] { moveRung(-1); });
    auto* add = new QPushButton(tr("&Add after"), this);
    add->setObjectName(QStringLiteral("ladderAdd"));
    connect(add, &QPushButton::clicked, this, &LadderEditor::addRung);
    auto* moves = new QHBoxLayout;
    moves->addWidget(easier);
    moves->addWidget(harder);
    moves->addWidget(m_remove);
    auto* more = new QHBoxLayout;
    more->addWidget(m_exercise, 1);
    more->addWidget(add);
    auto* layout = new QVBoxLayout(half);
    layout->setContentsMargins(0, 0, 8, 0);
    layout->addWidget(m_rungs, 1);
    layout->addLayout(moves);
    layout->addLayout(more);
    layout->addWidget(m_shipped);
    return half;
}

QWidget* LadderEditor::makeGates()
{
    auto* half = new QWidget(this);
    auto* form = new QFormLayout(half);
    form->setContentsMargins(0, 0, 0, 0);
    form->setRowWrapPolicy(QFormLayout::WrapLongRows);
    const auto add = [form](const QString& label, QWidget* field) {
        field->setAccessibleName(label);
        form->addRow(label, field);
    };
    add(tr("Set up as"), m_setting);
    m_upLoad->setSpecialValueText(tr("any"));
    m_upLoad->setSuffix(tr(" % of body mass"));
    add(tr("Up: clean, in one set"), m_upAmount);
    add(tr("Up: in so many sets"), m_upSets);
    add(tr("Up: sessions in a row"), m_upSessions);
    add(tr("Up: with a load of"), m_upLoad);
    add(tr("Down: pain of 10, at least"), m_downPain);
    add(tr("Down: days away, more than"), m_downDays);
    add(tr("Down: best set fewer than"), m_downFewer);
    add(tr("Down: sessions in a row"), m_downSessions);
    return half;
}

void LadderEditor::start(const Exercise& exercise,
                         const Library& library,
                         const std::vector<Ladder>& ladders)
{
    m_library = library;
    m_ladders = ladders;
    const QSignalBlocker blocker(m_which);
    m_which->clear();
    for (const Ladder& ladder : ladders) {
        m_which->addItem(tr("Ladder: %1").arg(plain(ladder.name)));
    }
    m_which->setCurrentIndex(firstFor(exercise, ladders));
    chooseLadder();
    for (std::size_t rung = 0; rung < m_ladder.rungs.size(); ++rung) {
        if (m_ladder.rungs[rung].exerciseKey == exercise.key) {
            m_rungs->setCurrentRow(static_cast<int>(rung));
            break;
        }
    }
    m_rungs->setFocus(Qt::OtherFocusReason);
}

void LadderEditor::chooseLadder()
{
    const int place = m_which->currentIndex();
    m_ladder = place < 0 ? Ladder{} : m_ladders.at(static_cast<std::size_t>(place));
    m_which->setEnabled(true);
    m_line->clear();
    m_shipped->setVisible(!m_ladder.isShipped);
    m_exercise->clear();
    for (const Exercise& exercise : m_library.exercises) {
        if (exercise.pattern == m_ladder.pattern && !exercise.isHidden) {
            m_exercise->addItem(plain(exercise.name), plain(exercise.key));
        }
    }
    fillRungs(0);
}

void LadderEditor::fillRungs(int row)
{
    {
        const QSignalBlocker blocker(m_rungs);
        m_rungs->clear();
        for (std::size_t i = 0; i < m_ladder.rungs.size(); ++i) {
            m_rungs->addItem(
                QStringLiteral("%1. %2").arg(i + 1).arg(rungName(m_ladder.rungs[i], m_library)));
        }
        m_rungs->setCurrentRow(std::clamp(row, 0, std::max(0, m_rungs->count() - 1)));
    }
    m_remove->setEnabled(m_ladder.rungs.size() > kFewestRungs);
    m_remove->setToolTip(m_remove->isEnabled() ? QString() : tr("A ladder has two rungs or more."));
    showRung();
}

Rung* LadderEditor::chosenRung()
{
    const int row = m_rungs->currentRow();
    const bool isThere = row >= 0 && static_cast<std::size_t>(row) < m_ladder.rungs.size();
    return isThere ? &m_ladder.rungs[static_cast<std::size_t>(row)] : nullptr;
}

void LadderEditor::showRung()
{
    const Rung* rung = chosenRung();
    if (rung == nullptr) {
        return;
    }
    m_isFilling = true;
    m_setting->setText(plain(rung->setting));
    m_upAmount->setValue(rung->up.amount);
    m_upSets->setValue(rung->up.sets);
    m_upSessions->setValue(rung->up.sessions);
    m_upLoad->setValue(rung->up.loadPercent);
    m_downPain->setValue(rung->down.pain);
    m_downDays->setValue(rung->down.daysAway);
    m_downFewer->setMaximum(rung->up.amount);
    m_downFewer->setValue(rung->down.fewerThan);
    m_downSessions->setValue(rung->down.sessions);
    m_isFilling = false;
}

void LadderEditor::takeGates()
{
    Rung* rung = chosenRung();
    if (rung == nullptr || m_isFilling) {
        return;
    }
    Rung typed = *rung;
    typed.setting = m_setting->text().trimmed().toStdString();
    typed.up = {m_upAmount->value(), m_upSets->value(), m_upSessions->value(), m_upLoad->value()};
    typed.down = {m_downPain->value(),
                  m_downDays->value(),
                  std::min(m_downFewer->value(), m_upAmount->value()),
                  m_downSessions->value()};
    if (typed == *rung) {
        return;
    }
    typed.source = kGymSource;
    *rung = std::move(typed);
    {
        const QSignalBlocker blocker(m_downFewer);
        m_downFewer->setMaximum(rung->up.amount);
    }
    m_rungs->currentItem()->setText(
        QStringLiteral("%1. %2").arg(m_rungs->currentRow() + 1).arg(rungName(*rung, m_library)));
    setChanged();
}

void LadderEditor::setChanged()
{
    m_which->setEnabled(false); // another ladder would lose what was changed in this one
    m_line->setText(tr("Changed: keep it or leave it."));
}

void LadderEditor::addRung()
{
    if (m_exercise->currentIndex() < 0) {
        return;
    }
    Rung rung;
    rung.exerciseKey = m_exercise->currentData().toString().toStdString();
    rung.source = kGymSource;
    const int row = m_rungs->currentRow() + 1;
    m_ladder.rungs.insert(m_ladder.rungs.begin() + row, std::move(rung));
    fillRungs(row);
    setChanged();
    m_setting->setFocus(Qt::OtherFocusReason);
}

void LadderEditor::removeRung()
{
    if (chosenRung() == nullptr || m_ladder.rungs.size() <= kFewestRungs) {
        return;
    }
    const int row = m_rungs->currentRow();
    m_ladder.rungs.erase(m_ladder.rungs.begin() + row);
    fillRungs(row);
    setChanged();
}

void LadderEditor::moveRung(int by)
{
    const int row = m_rungs->currentRow();
    const int to = row + by;
    if (chosenRung() == nullptr || to < 0 || to >= m_rungs->count()) {
        return;
    }
    std::swap(m_ladder.rungs[static_cast<std::size_t>(row)],
              m_ladder.rungs[static_cast<std::size_t>(to)]);
    fillRungs(to);
    setChanged();
}

void LadderEditor::refuse(const QString& sentence)
{
    m_line->setText(tr("Not kept: %1.").arg(sentence));
}

bool LadderEditor::eventFilter(QObject* watched, QEvent* event)
{
    if (watched == m_rungs && event->type() == QEvent::KeyPress) {
        const auto* key = static_cast<const QKeyEvent*>(event);
        const bool isMove = key->modifiers().testFlag(Qt::ControlModifier);
        if (isMove && (key->key() == Qt::Key_Up || key->key() == Qt::Key_Down)) {
            moveRung(key->key() == Qt::Key_Up ? -1 : 1);
            return true;
        }
        if (key->key() == Qt::Key_Delete) {
            removeRung();
            return true;
        }
    }
    return QWidget::eventFilter(watched, event);
}

void LadderEditor::keyPressEvent(QKeyEvent* event)
{
    const bool isEnter = event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter;
    if (isEnter && event->modifiers().testFlag(Qt::ControlModifier)) {
        Q_EMIT kept(m_ladder);
    } else if (event->key() == Qt::Key_Escape) {
        Q_EMIT cancelled();
    } else {
        QWidget::keyPressEvent(event);
    }
}

} // namespace levelbar::ui
