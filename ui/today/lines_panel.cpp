// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/today/lines_panel.h"

#include "core/today/due_day.h"
#include "core/today/proposed_action.h"
#include "storage/today_store.h"
#include "ui/change_notifier.h"
#include "ui/perform.h"
#include "ui/today/aside_panel.h"
#include "ui/today/line_delegate.h"
#include "ui/today/lines_model.h"
#include "ui/words.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QListView>
#include <QPushButton>
#include <QVBoxLayout>

#include <algorithm>

namespace levelbar::ui {

namespace {

constexpr int kLongestBecause = 200;
constexpr const char* kUsualPause = "14";

} // namespace

LinesPanel::LinesPanel(Workspace& workspace, QWidget* parent)
    : QWidget(parent)
    , m_workspace(workspace)
    , m_model(new LinesModel(this))
    , m_summary(new QLabel(this))
    , m_view(new QListView(this))
    , m_aside(new AsidePanel(workspace, this))
    , m_editor(new QWidget(this))
    , m_question(new QLabel(m_editor))
    , m_typed(new QLineEdit(m_editor))
    , m_refusal(new QLabel(m_editor))
{
    m_summary->setObjectName(QStringLiteral("todaySummary"));
    m_summary->setWordWrap(true);
    m_summary->setAlignment(Qt::AlignLeft | Qt::AlignTop);
    m_view->setObjectName(QStringLiteral("todayLines"));
    m_view->setAccessibleName(tr("Who needs attention, one line a person"));
    m_view->setModel(m_model);
    m_view->setItemDelegate(new LineDelegate(m_view));
    m_view->setEditTriggers(QAbstractItemView::NoEditTriggers);
    m_view->setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    m_view->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_view->setAlternatingRowColors(true);
    m_view->setResizeMode(QListView::Adjust); // heights follow the width
    m_view->installEventFilter(this);
    m_editor->setObjectName(QStringLiteral("todayEditor"));
    m_typed->setObjectName(QStringLiteral("todayTyped"));
    m_typed->installEventFilter(this);
    m_refusal->setObjectName(QStringLiteral("todayRefusal"));
    m_refusal->setWordWrap(true);
    makeLayout();
    connect(m_view, &QListView::doubleClicked, this, &LinesPanel::openCurrent);
    connect(m_typed, &QLineEdit::returnPressed, this, &LinesPanel::keepTyped);
    setFocusProxy(m_view);
}

void LinesPanel::makeLayout()
{
    auto* editor = new QVBoxLayout(m_editor);
    editor->setContentsMargins(0, 0, 0, 0);
    auto* line = new QHBoxLayout;
    line->addWidget(m_question);
    line->addWidget(m_typed, 1);
    editor->addLayout(line);
    editor->addWidget(m_refusal);
    m_question->setBuddy(m_typed);
    m_editor->hide();
    m_aside->hide();
    connect(m_aside, &AsidePanel::left, this, &LinesPanel::focusLines);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(m_summary);
    layout->addWidget(m_view, 1);
    layout->addWidget(m_aside);
    layout->addWidget(m_editor);
    layout->addWidget(makeButtons());
}

QWidget* LinesPanel::makeButtons()
{
    auto* strip = new QWidget(this);
    auto* layout = new QHBoxLayout(strip);
    layout->setContentsMargins(0, 0, 0, 0);
    const auto add = [&](const char* name, const QString& text, const auto& slot) {
        auto* button = new QPushButton(text, strip);
        button->setObjectName(QLatin1String(name));
        button->setAutoDefault(false);
        connect(button, &QPushButton::clicked, this, slot);
        layout->addWidget(button);
    };
    add("todayOpen", tr("Open (Enter)"), [this] { openCurrent(); });
    add("todayNotBefore", tr("Not before… (N)"), [this] { ask(Asking::NotBefore); });
    add("todaySettled", tr("Settled because… (S)"), [this] { ask(Asking::Settled); });
    add("todayFollowUp", tr("Follow up… (F)"), [this] { wantFollowUp(); });
    add("todayAsideButton", tr("Put aside (A)"), [this] { m_aside->toggle(); });
    layout->addStretch(1);
    return strip;
}

void LinesPanel::focusLines()
{
    m_view->setFocus(Qt::OtherFocusReason);
}

void LinesPanel::show(const ReviewedRosterPointer& roster)
{
    const auto settled = storage::TodayStore(m_workspace.logbook).settled();
    const TodayLine* before = m_model->line(m_view->currentIndex().row());
    const MemberId member = before == nullptr ? MemberId{} : before->member;
    const int row = m_view->currentIndex().row();
    TodayList list = todayList(roster->review, roster->facts.reasons, settled);
    m_model->show(std::move(list));
    // The same person, else whoever moved up to the place of the one that is gone.
    const int same = m_model->rowOf(member);
    const int wanted = std::clamp(same >= 0 ? same : row, 0, std::max(0, m_model->rowCount() - 1));
    m_view->setCurrentIndex(m_model->index(wanted));
    m_aside->show(settled, roster);
    tellSummary(roster);
}

void LinesPanel::tellSummary(const ReviewedRosterPointer& roster)
{
    const TodayList& list = m_model->list();
    QStringList parts;
    if (roster->review.members.empty()) {
        parts << tr("Nobody is in the logbook yet. Take people, sets and tests in from CSV with "
                    "“levelbar-cli import”, or write a class down on the Floor page (Ctrl+4).");
    } else if (list.lines.empty()) {
        parts << tr("Nobody needs you more than the others today.");
    } else {
        parts << tr("Safety first, then what is surest: %n in all.",
                    nullptr,
                    static_cast<int>(list.lines.size()));
    }
    if (list.statistical > 0) {
        parts << tr("Reasons that rest on a probability: %1, of which about %2 are expected to be "
                    "chance.")
                     .arg(list.statistical)
                     .arg(locale().toString(list.expectedFalse, 'f', 1));
    }
    if (list.aside > 0) {
        parts << tr("%n put aside.", nullptr, list.aside);
    }
    m_summary->setText(parts.join(QLatin1Char(' ')));
}

void LinesPanel::openCurrent()
{
    const int row = m_view->currentIndex().row();
    if (m_model->isRest(row)) {
        m_model->showAll();
        m_view->setCurrentIndex(m_model->index(row));
        return;
    }
    if (const TodayLine* line = m_model->line(row)) {
        Q_EMIT opened(line->member, line->reasons.front().exercise.value_or(ExerciseId{}));
    }
}

void LinesPanel::ask(Asking what)
{
    const TodayLine* line = m_model->line(m_view->currentIndex().row());
    if (line == nullptr) {
        return;
    }
    m_asking = what;
    m_about = line->member;
    const QString name = m_view->currentIndex().data(LinesModel::NameRole).toString();
    const bool isDate = what == Asking::NotBefore;
    m_question->setText(isDate ? tr("%1: not before").arg(name)
                               : tr("%1: settled because").arg(name));
    m_typed->setAccessibleName(m_question->text());
    m_typed->setPlaceholderText(isDate ? tr("a date, 2026-12-04, or days, 14")
                                       : tr("a few words, e.g. was on holiday"));
    m_typed->setMaxLength(isDate ? 10 : kLongestBecause);
    m_typed->setText(isDate ? QLatin1String(kUsualPause) : QString());
    m_refusal->setText(isDate
                           ? tr("Enter keeps it, Esc leaves it. New pain is shown all the same.")
                           : tr("Enter keeps it, Esc leaves it. It comes back when something new "
                                "happens."));
    m_editor->show();
    m_typed->selectAll();
    m_typed->setFocus(Qt::OtherFocusReason);
}

void LinesPanel::stopAsking()
{
    m_asking = Asking::Nothing;
    m_editor->hide();
    focusLines();
}

void LinesPanel::keepTyped()
{
    const TodayLine* line = m_model->line(m_model->rowOf(m_about));
    if (line == nullptr || m_asking == Asking::Nothing) {
        stopAsking(); // the line went meanwhile
        return;
    }
    const std::string typed = m_typed->text().trimmed().toStdString();
    if (m_asking == Asking::NotBefore) {
        const auto until = parseDueDay(typed, m_workspace.clock.today());
        if (!until) {
            m_refusal->setText(tr("Not kept: %1.").arg(words(until.error())));
            return;
        }
        keep(*line, *until, {});
        return;
    }
    if (typed.empty()) {
        m_refusal->setText(tr("Not kept: say in a few words why it is settled."));
        return;
    }
    keep(*line, std::nullopt, typed);
}

void LinesPanel::keep(const TodayLine& line, std::optional<Day> until, const std::string& because)
{
    SettledReason settled;
    settled.member = line.member;
    settled.kind = line.reasons.front().kind;
    settled.until = until;
    settled.because = because;
    settled.day = m_workspace.clock.today();
    settled.evidence = newestEvidence(line.reasons, settled.kind);
    const bool isKept = perform(m_workspace.prompter, [&] {
        storage::Action action(
            m_workspace.logbook, storage::ActionKind::SettleReason, m_workspace.clock.now());
        storage::TodayStore::settle(action, settled);
        m_workspace.notifier.announce(action.commit());
    });
    if (isKept) {
        stopAsking();
    }
}

void LinesPanel::wantFollowUp()
{
    if (const TodayLine* line = m_model->line(m_view->currentIndex().row())) {
        Q_EMIT followUpWanted(line->member,
                              m_view->currentIndex().data(LinesModel::NameRole).toString());
    }
}

bool LinesPanel::eventFilter(QObject* watched, QEvent* event)
{
    if (event->type() != QEvent::KeyPress) {
        return QWidget::eventFilter(watched, event);
    }
    const auto* key = static_cast<QKeyEvent*>(event);
    if (watched == m_typed && key->key() == Qt::Key_Escape) {
        stopAsking();
        return true;
    }
    const bool isPlain = (key->modifiers() & ~Qt::KeypadModifier) == Qt::NoModifier;
    if (watched != m_view || !isPlain || key->isAutoRepeat()) {
        return QWidget::eventFilter(watched, event);
    }
    switch (key->key()) {
    case Qt::Key_Return:
    case Qt::Key_Enter:
        openCurrent();
        return true;
    case Qt::Key_N:
        ask(Asking::NotBefore);
        return true;
    case Qt::Key_S:
        ask(Asking::Settled);
        return true;
    case Qt::Key_F:
        wantFollowUp();
        return true;
    case Qt::Key_A:
        m_aside->toggle();
        return true;
    default:
        return QWidget::eventFilter(watched, event);
    }
}

} // namespace levelbar::ui
