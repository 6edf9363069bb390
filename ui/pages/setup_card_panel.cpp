// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/setup_card_panel.h"

#include "core/bodyweight/push_up_review.h"
#include "core/bodyweight/push_up_words.h"
#include "storage/exercise_detail_store.h"
#include "storage/setup_store.h"
#include "ui/change_notifier.h"
#include "ui/perform.h"
#include "ui/words.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>
#include <QToolButton>
#include <QVBoxLayout>

#include <algorithm>

namespace levelbar::ui {

namespace {

constexpr int kAngleStep = 5;

// The next angle that a bench here has; any step while nobody has said what benches there are.
int steppedAngle(const std::vector<int>& angles, int angle, int direction)
{
    if (angles.empty()) {
        return angle + direction * kAngleStep;
    }
    if (direction > 0) {
        const auto next = std::upper_bound(angles.begin(), angles.end(), angle);
        return next == angles.end() ? angle : *next;
    }
    const auto next = std::lower_bound(angles.begin(), angles.end(), angle);
    return next == angles.begin() ? angle : *std::prev(next);
}

} // namespace

SetupCardPanel::SetupCardPanel(Workspace& workspace, QWidget* parent)
    : QFrame(parent)
    , m_workspace(workspace)
    , m_state(new QLabel(this))
    , m_rack(new QComboBox(this))
    , m_list(new QListWidget(this))
    , m_grip(new QLineEdit(this))
    , m_feet(new QLineEdit(this))
    , m_note(new QLineEdit(this))
{
    setObjectName(QStringLiteral("setupCard"));
    setAccessibleName(tr("Set-up"));
    setFrameShape(QFrame::StyledPanel);
    makeLayout();
    m_list->installEventFilter(this);
    connect(m_rack, &QComboBox::activated, this, &SetupCardPanel::fillLines);
    for (QLineEdit* edit : {m_grip, m_feet, m_note}) {
        connect(edit, &QLineEdit::editingFinished, this, &SetupCardPanel::keepTexts);
    }
}

void SetupCardPanel::makeLayout()
{
    m_state->setObjectName(QStringLiteral("setupState"));
    m_state->setWordWrap(true);
    m_state->setTextFormat(Qt::PlainText);
    m_rack->setObjectName(QStringLiteral("setupRack"));
    m_rack->setAccessibleName(tr("Rack"));
    m_list->setObjectName(QStringLiteral("setupLines"));
    m_list->setAccessibleName(tr("Holes and bench: + and - change, Enter confirms"));
    m_list->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_grip->setObjectName(QStringLiteral("setupGrip"));
    m_grip->setAccessibleName(tr("Grip mark"));
    m_grip->setPlaceholderText(tr("grip mark"));
    m_feet->setObjectName(QStringLiteral("setupFeet"));
    m_feet->setAccessibleName(tr("Foot position"));
    m_feet->setPlaceholderText(tr("feet"));
    m_note->setObjectName(QStringLiteral("setupNote"));
    m_note->setAccessibleName(tr("Note on the set-up"));
    m_note->setPlaceholderText(tr("note"));
    auto* title = new QLabel(tr("Set-up"), this);
    QFont bold = title->font();
    bold.setBold(true);
    title->setFont(bold);
    auto* head = new QHBoxLayout;
    head->addWidget(title);
    head->addWidget(m_rack, 1);
    auto* keys = new QHBoxLayout;
    for (const int direction : {-1, 1}) {
        auto* button = new QToolButton(this);
        button->setObjectName(direction < 0 ? QStringLiteral("setupLower")
                                            : QStringLiteral("setupHigher"));
        button->setAccessibleName(direction < 0 ? tr("One lower") : tr("One higher"));
        button->setText(direction < 0 ? tr("−") : tr("+"));
        button->setMinimumSize(32, 32);
        connect(button, &QToolButton::clicked, this, [this, direction] { step(direction); });
        keys->addWidget(button);
    }
    auto* confirmButton = new QPushButton(tr("Confirm"), this);
    confirmButton->setObjectName(QStringLiteral("setupConfirm"));
    confirmButton->setToolTip(tr("It was tried and is right (Enter in the list)"));
    connect(confirmButton, &QPushButton::clicked, this, &SetupCardPanel::confirm);
    keys->addStretch(1);
    keys->addWidget(confirmButton);
    auto* marks = new QHBoxLayout;
    marks->addWidget(m_grip);
    marks->addWidget(m_feet);
    marks->addWidget(m_note);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(10, 6, 10, 6);
    layout->setSpacing(4);
    layout->addLayout(head);
    layout->addWidget(m_list);
    layout->addLayout(keys);
    layout->addWidget(m_state);
    layout->addLayout(marks);
}

void SetupCardPanel::show(const MemberHistory& history, const Library& library, ExerciseId exercise)
{
    const Exercise* known = library.exercise(exercise);
    if (known == nullptr) {
        hide();
        return;
    }
    m_exercise = *known;
    perform(m_workspace.prompter, [&] { load(history, library); });
}

void SetupCardPanel::load(const MemberHistory& history, const Library& library)
{
    const auto mass = bodyMassOn(history, library, m_workspace.clock.today());
    m_body = bodySizeOf(history.member, mass ? std::optional(mass->mass) : std::nullopt);
    m_usualAngle = storage::ExerciseDetailStore(m_workspace.logbook).find(m_exercise.id).benchAngle;
    const auto stored =
        storage::SetupStore(m_workspace.logbook).find(history.member.id, m_exercise.id);
    m_isStored = stored.has_value();
    m_card = stored.value_or(SetupCard{});
    m_card.member = history.member.id;
    m_card.exercise = m_exercise.id;
    const bool isNeeded =
        m_isStored || stationHeights(m_exercise, m_usualAngle, m_body) || m_usualAngle.has_value();
    setVisible(isNeeded);
    if (!isNeeded) {
        return;
    }
    m_sources = readSetupSources(m_workspace.logbook, m_exercise.id, m_card.member);
    fillRacks();
    fillLines();
    m_grip->setText(plain(m_card.gripMark));
    m_feet->setText(plain(m_card.footPosition));
    m_note->setText(plain(m_card.note));
}

void SetupCardPanel::fillRacks()
{
    const QSignalBlocker blocker(m_rack);
    m_rack->clear();
    int wanted = 0;
    for (const Rack& rack : m_sources.racks) {
        wanted = m_card.rack == rack.id ? m_rack->count() : wanted;
        m_rack->addItem(plain(rack.name));
    }
    m_rack->setCurrentIndex(wanted);
    m_rack->setVisible(m_sources.racks.size() > 1);
}

const Rack& SetupCardPanel::chosenRack() const
{
    const int place = std::max(0, m_rack->currentIndex());
    return m_sources.racks.at(static_cast<std::size_t>(place));
}

const std::vector<SetupExample>& SetupCardPanel::examplesOf(Part part) const
{
    return part == Part::Hook ? m_sources.hooks : m_sources.safeties;
}

std::optional<HoleProposal> SetupCardPanel::proposal(Part part) const
{
    const SetupQuestion question{m_exercise,
                                 m_card.benchAngle ? m_card.benchAngle : m_usualAngle,
                                 m_body,
                                 chosenRack().holes};
    return proposeHole(
        question, part == Part::Hook ? SetupPart::Hook : SetupPart::Safety, examplesOf(part));
}

QString SetupCardPanel::readStored(Line& line, int stored) const
{
    const RackHoles& holes = chosenRack().holes;
    const auto own = std::find_if(m_sources.racks.begin(),
                                  m_sources.racks.end(),
                                  [this](const Rack& rack) { return m_card.rack == rack.id; });
    if (own != m_sources.racks.end() && own->id != chosenRack().id) {
        line.value = sameHeightHole(own->holes, stored, holes);
        line.detail = tr("as high as hole %1 of %2").arg(stored).arg(plain(own->name));
        return tr("by height");
    }
    line.value = std::min(stored, holes.count);
    if (own == m_sources.racks.end() && !m_sources.isAssumed) {
        return tr("of which rack?");
    }
    return m_card.isConfirmed ? QString() : tr("not confirmed");
}

void SetupCardPanel::addHole(Part part, const std::optional<int>& stored)
{
    const QString what = part == Part::Hook ? tr("Hooks") : tr("Safeties");
    Line line;
    line.part = part;
    QString mark;
    if (stored) {
        mark = readStored(line, *stored);
    } else if (const auto proposed = proposal(part)) {
        line.value = proposed->hole;
        line.detail = tr("%1 %2 to %3").arg(what).arg(proposed->lowest).arg(proposed->highest);
        mark = tr("proposed");
    } else {
        return;
    }
    line.text = tr("%1: hole %2 (%3)")
                    .arg(what)
                    .arg(line.value)
                    .arg(plain(centimetres(chosenRack().holes.height(line.value))));
    if (!mark.isEmpty()) {
        line.text = tr("%1, %2").arg(line.text, mark);
    }
    m_lines.push_back(line);
}

void SetupCardPanel::addAngle()
{
    const auto proposed = proposeBenchAngle(m_usualAngle, m_sources.otherAngles, m_sources.angles);
    const std::optional<int> angle = m_card.benchAngle ? m_card.benchAngle : proposed;
    if (!angle) {
        return;
    }
    const QString mark = !m_card.benchAngle   ? tr(", proposed")
                         : m_card.isConfirmed ? QString()
                                              : tr(", not confirmed");
    m_lines.push_back({Part::Angle, *angle, tr("Bench: %1°%2").arg(*angle).arg(mark), {}});
}

void SetupCardPanel::fillLines()
{
    const int row = std::max(0, m_list->currentRow());
    m_lines.clear();
    addHole(Part::Hook, m_card.hookHole);
    addHole(Part::Safety, m_card.safetyHole);
    addAngle();
    m_list->clear();
    for (const Line& line : m_lines) {
        m_list->addItem(line.text);
        m_list->item(m_list->count() - 1)->setToolTip(line.detail);
    }
    m_list->setCurrentRow(std::min(row, m_list->count() - 1));
    m_list->setFixedHeight(m_list->count() * (m_list->fontMetrics().height() + 6) + 4);
    m_state->setText(stateText());
}

bool SetupCardPanel::hasHoles() const
{
    return std::any_of(
        m_lines.begin(), m_lines.end(), [](const Line& line) { return line.part != Part::Angle; });
}

QString SetupCardPanel::stateText() const
{
    QStringList details;
    for (const Line& line : m_lines) {
        if (!line.detail.isEmpty()) {
            details << line.detail;
        }
    }
    const QString doubt = details.isEmpty()
                              ? QString()
                              : tr(" Nine in ten: %1.").arg(details.join(QStringLiteral(", ")));
    const auto count = static_cast<int>(m_sources.hooks.size());
    QString state;
    if (m_card.isConfirmed) {
        state = tr("Confirmed: it was tried.");
    } else if (m_isStored) {
        state = tr("Changed, not tried yet. Enter confirms.");
    } else if (!hasHoles()) {
        state = tr("The exercise's own angle. Enter confirms.");
    } else if (count > 0) {
        state = tr("From stature and %n cards here.", nullptr, count) + doubt;
    } else {
        state = (m_body.stature ? tr("From stature.") : tr("A rough guess: no stature.")) + doubt;
    }
    if (m_sources.isAssumed && hasHoles()) {
        state += QLatin1Char(' ') + tr("Holes are assumed: see Gym.");
    }
    return state;
}

// The card with what the lines show.
SetupCard SetupCardPanel::asShown() const
{
    SetupCard card = m_card;
    card.rack = hasHoles() && !m_sources.isAssumed ? std::optional(chosenRack().id) : card.rack;
    for (const Line& line : m_lines) {
        (line.part == Part::Hook     ? card.hookHole
         : line.part == Part::Safety ? card.safetyHole
                                     : card.benchAngle) = line.value;
    }
    return card;
}

void SetupCardPanel::step(int direction)
{
    const int row = m_list->currentRow();
    if (row < 0 || row >= static_cast<int>(m_lines.size())) {
        return;
    }
    Line& line = m_lines[static_cast<std::size_t>(row)];
    line.value = line.part == Part::Angle
                     ? steppedAngle(m_sources.angles, line.value, direction)
                     : std::clamp(line.value + direction, 1, chosenRack().holes.count);
    SetupCard card = asShown();
    card.isConfirmed = false;
    keep(card);
}

void SetupCardPanel::confirm()
{
    SetupCard card = asShown();
    card.isConfirmed = true;
    keep(card);
}

void SetupCardPanel::keepTexts()
{
    SetupCard card = m_isStored ? m_card : asShown();
    card.gripMark = m_grip->text().trimmed().toStdString();
    card.footPosition = m_feet->text().trimmed().toStdString();
    card.note = m_note->text().trimmed().toStdString();
    const bool isSame = card.gripMark == m_card.gripMark &&
                        card.footPosition == m_card.footPosition && card.note == m_card.note;
    if (!isSame) {
        keep(card);
    }
}

void SetupCardPanel::keep(const SetupCard& card)
{
    const auto checked = checkSetupCard(card);
    if (!checked) {
        m_state->setText(tr("Not kept: %1.").arg(words(checked.error())));
        return;
    }
    perform(m_workspace.prompter, [&] {
        storage::Action action(
            m_workspace.logbook, storage::ActionKind::EditSetupCard, m_workspace.clock.now());
        storage::SetupStore::put(action, *checked);
        const storage::Change change = action.commit();
        m_card = *checked;
        m_isStored = true;
        fillLines();
        m_workspace.notifier.announce(change);
    });
}

bool SetupCardPanel::eventFilter(QObject* watched, QEvent* event)
{
    if (watched != m_list || event->type() != QEvent::KeyPress) {
        return QFrame::eventFilter(watched, event);
    }
    switch (static_cast<QKeyEvent*>(event)->key()) {
    case Qt::Key_Plus:
    case Qt::Key_Equal: // plus without shift
        step(1);
        return true;
    case Qt::Key_Minus:
        step(-1);
        return true;
    case Qt::Key_Return:
    case Qt::Key_Enter:
        confirm();
        return true;
    default:
        return QFrame::eventFilter(watched, event);
    }
}

} // namespace levelbar::ui
