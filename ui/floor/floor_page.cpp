// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/floor/floor_page.h"

#include "storage/today_store.h"
#include "ui/floor/attendance_list.h"
#include "ui/floor/closing_panel.h"
#include "ui/floor/floor_attempt.h"
#include "ui/floor/floor_bar.h"
#include "ui/floor/floor_grid.h"
#include "ui/floor/floor_status.h"
#include "ui/floor/pad_line.h"
#include "ui/floor/template_editor.h"
#include "ui/floor/wall_window.h"

#include <QKeyEvent>
#include <QLabel>
#include <QPushButton>
#include <QShortcut>
#include <QSignalBlocker>
#include <QSplitter>
#include <QVBoxLayout>

#include <algorithm>
#include <array>

namespace levelbar::ui {

FloorPage::FloorPage(Workspace& workspace, QWidget* parent)
    : QWidget(parent)
    , m_workspace(workspace)
    , m_writer(workspace)
    , m_entry(m_model, m_writer, workspace.clock)
    , m_pad(m_model, m_writer, m_entry, workspace)
    , m_bar(new FloorBar(workspace.clock.today()))
    , m_attendance(new AttendanceList)
    , m_grid(new FloorGrid(m_model, m_entry))
    , m_hint(new QLabel)
    , m_template(new TemplateEditor)
    , m_closing(new ClosingPanel(workspace))
    , m_padLine(new PadLine)
    , m_status(new FloorStatus)
{
    setObjectName(QStringLiteral("floorPage"));
    setAccessibleName(tr("Class floor"));
    m_writer.setInitials(m_bar->initials());
    build();
    connectParts();
}

// The grid works on members of this page, which end before its child widgets do.
FloorPage::~FloorPage()
{
    delete m_grid;
}

void FloorPage::build()
{
    m_hint->setObjectName(QStringLiteral("floorHint"));
    m_hint->setWordWrap(true);
    m_hint->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    auto* middle = new QWidget;
    auto* column = new QVBoxLayout(middle);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(m_hint);
    column->addWidget(m_grid, 1);
    column->addWidget(new KnownLegend);

    auto* parts = new QSplitter;
    parts->setObjectName(QStringLiteral("floorParts"));
    parts->addWidget(m_attendance);
    parts->addWidget(middle);
    parts->addWidget(m_template);
    parts->addWidget(m_closing);
    parts->setStretchFactor(1, 1);
    const int unit = fontMetrics().horizontalAdvance(QLatin1Char('0'));
    parts->setSizes({24 * unit, 110 * unit, 34 * unit, 44 * unit});
    m_attendance->setMinimumWidth(18 * unit);
    m_template->setMinimumWidth(30 * unit);
    m_template->hide();
    m_closing->setMinimumWidth(38 * unit);
    m_closing->hide();

    auto* layout = new QVBoxLayout(this);
    layout->addWidget(m_bar);
    layout->addWidget(parts, 1);
    layout->addWidget(m_status);
    layout->addWidget(m_padLine);
    setFocusProxy(m_padLine);
}

void FloorPage::connectParts()
{
    connect(&m_workspace.notifier, &ChangeNotifier::changed, this, &FloorPage::heed);
    connect(m_bar, &FloorBar::chosen, this, [this] { refresh(false); });
    connect(m_bar, &FloorBar::classWanted, this, &FloorPage::addClass);
    connect(m_bar, &FloorBar::initialsChanged, this, [this](const std::string& initials) {
        m_writer.setInitials(initials);
    });
    connect(m_bar->templateButton(), &QPushButton::toggled, m_template, &QWidget::setVisible);
    connect(m_attendance, &AttendanceList::markWanted, this, &FloorPage::mark);
    connect(m_attendance, &AttendanceList::left, this, [this] { m_padLine->setFocus(); });
    connect(m_template, &TemplateEditor::kept, this, &FloorPage::keepTemplate);
    connect(m_grid, &FloorGrid::cursorMoved, this, [this] {
        if (const auto key = m_grid->currentKey()) {
            m_pad.pointAt(*key);
        }
        showPlace();
    });
    connectPad();
    connect(m_grid, &FloorGrid::nothingLeft, this, [this] {
        m_status->say(tr("Every planned set is known."), false);
    });
    connect(&m_entry, &FloorEntry::said, this, [this](const QString& sentence) {
        m_status->say(sentence, false);
    });
    connect(&m_entry, &FloorEntry::refused, this, [this](const QString& sentence) {
        m_status->say(sentence, true);
    });
    const auto shortcut = [this](int key, void (FloorPage::*slot)()) {
        auto* made = new QShortcut(QKeySequence(key), this);
        made->setContext(Qt::WidgetWithChildrenShortcut);
        connect(made, &QShortcut::activated, this, slot);
    };
    shortcut(Qt::Key_F11, &FloorPage::toggleWall);
    shortcut(Qt::Key_F9, &FloorPage::toggleTimer);
    shortcut(Qt::Key_F8, &FloorPage::toggleClosing);
    connect(m_bar, &FloorBar::closingWanted, this, &FloorPage::toggleClosing);
    connect(m_closing, &ClosingPanel::left, this, &FloorPage::toggleClosing);
    connect(m_bar, &FloorBar::wallWanted, this, &FloorPage::toggleWall);
    auto* next = new QShortcut(Qt::Key_F6, this);
    next->setContext(Qt::WidgetWithChildrenShortcut);
    connect(next, &QShortcut::activated, this, &FloorPage::nextPart);
}

void FloorPage::connectPad()
{
    m_pad.setRacks(m_bar->racks());
    connect(m_bar, &FloorBar::racksChanged, this, [this](int racks) {
        m_pad.setRacks(racks);
        refresh(false);
    });
    connect(m_padLine, &PadLine::pressed, this, [this](const PadKey& key) { m_pad.press(key); });
    connect(m_padLine, &PadLine::takeBackWanted, this, [this] { m_pad.takeBack(); });
    connect(m_grid, &FloorGrid::takeBackWanted, this, [this] { m_pad.takeBack(); });
    connect(m_grid, &FloorGrid::leftToPad, this, [this] { m_padLine->setFocus(); });
    connect(&m_pad, &FloorPad::typedChanged, this, &FloorPage::showTyped);
    connect(&m_pad, &FloorPad::hourChanged, this, [this] {
        refresh(false);
        followPad();
    });
    connect(&m_pad, &FloorPad::cursorMoved, this, &FloorPage::followPad);
    connect(&m_pad, &FloorPad::said, this, [this](const QString& sentence) {
        m_status->say(sentence, false);
    });
    connect(&m_pad, &FloorPad::refused, this, [this](const QString& sentence) {
        m_status->say(sentence, true);
    });
}

void FloorPage::toggleWall()
{
    if (m_wall == nullptr) {
        m_wall = new WallWindow(this);
    }
    m_wall->setVisible(!m_wall->isVisible());
    showWall();
}

void FloorPage::toggleClosing()
{
    const bool isOpening = m_closing->isHidden();
    m_closing->setVisible(isOpening);
    if (isOpening) {
        m_closing->show(m_model.sheet(), m_model.reference());
        m_closing->begin();
    } else {
        m_padLine->setFocus(Qt::OtherFocusReason);
    }
}

void FloorPage::toggleTimer()
{
    if (m_wall == nullptr || !m_wall->isVisible()) {
        toggleWall();
    }
    m_wall->timer().toggle();
}

void FloorPage::showWall()
{
    if (m_wall != nullptr && m_wall->isVisible()) {
        m_wall->showRacks(wallOf(m_pad.pad().floor, m_pad.book(), m_pad.holes()));
    }
}

void FloorPage::showTyped()
{
    const QString typed = QString::fromStdString(m_pad.pad().typed);
    const QString question = m_pad.questionText();
    m_padLine->showTyped(typed, question.isEmpty() ? codesFor(typed) : question);
}

// The grid's cursor stands where the pad's does.
void FloorPage::followPad()
{
    if (const auto key = m_pad.cursor()) {
        m_grid->goTo(m_model.indexOf(*key));
    }
    showPlace();
}

void FloorPage::openClass(ClassId groupClass, Day day)
{
    if (m_isStale) {
        refresh(true);
    }
    m_isChosen = true;
    m_bar->choose(groupClass, day);
}

void FloorPage::setRoster(const ReviewedRosterPointer& roster)
{
    m_roster = roster;
    if (!m_sidesToday.setRoster(roster)) {
        return;
    }
    if (isVisible()) {
        refresh(false);
    } else {
        m_isStale = true;
    }
}

void FloorPage::showEvent(QShowEvent* event)
{
    QWidget::showEvent(event);
    if (m_isStale) {
        refresh(true);
    }
}

void FloorPage::heed(const storage::Change& change)
{
    if (!isVisible()) {
        m_isStale = true;
        return;
    }
    if (change.touchesLibrary) {
        m_pad.forgetBooks();
    }
    refresh(change.touchesRoster || change.touchesLibrary);
}

void FloorPage::refresh(bool withReference)
{
    const auto cursor = m_grid->currentKey();
    const QSignalBlocker quiet(m_grid); // the grid's cursor is put back, not moved by hand
    const bool went = succeeds(failureOf([&] {
        const storage::Logbook& logbook = m_workspace.logbook;
        const storage::ClassStore classes(logbook);
        if (withReference || m_isStale) {
            m_model.setReference(readReference(logbook, m_workspace.clock.today()));
        }
        m_bar->setClasses(classes.all());
        chooseFirst();
        const auto groupClass = m_bar->chosenClass();
        FloorSheet sheet;
        std::vector<MemberId> members;
        if (groupClass) {
            takeRacks(*groupClass);
            sheet = readSheet(logbook, m_model.reference(), *groupClass, m_bar->chosenDay());
            m_sidesToday.lay(logbook, m_model.reference(), sheet);
            m_pad.take(sheet, m_model.reference());
            members = classes.membersOf(*groupClass);
        }
        m_isStale = false;
        m_model.setSheet(std::move(sheet));
        m_attendance->setPeople(m_model.reference(), m_model.sheet(), members);
    }));
    if (!went) {
        return;
    }
    m_template->setTemplate(m_model.reference(), m_model.sheet().groupClass, m_model.sheet().items);
    if (!m_closing->isHidden()) {
        m_closing->show(m_model.sheet(), m_model.reference());
    }
    restoreCursor(cursor);
    showTyped();
    showHint();
    showPlace();
    showProgress();
    if (m_padLine->hasFocus()) {
        followPad();
    }
}

void FloorPage::chooseFirst()
{
    if (m_isChosen) {
        return;
    }
    m_isChosen = true;
    const Day today = m_workspace.clock.today();
    const auto meetings = storage::TodayStore(m_workspace.logbook).meetingsOn(today);
    const auto next = std::find_if(
        meetings.begin(), meetings.end(), [](const auto& meeting) { return !meeting.isLogged; });
    if (next != meetings.end()) {
        const QSignalBlocker quiet(m_bar);
        m_bar->choose(next->groupClass, today);
    }
}

void FloorPage::takeRacks(ClassId groupClass)
{
    const std::pair of(groupClass, m_bar->chosenDay());
    if (m_racksOf == of) {
        return;
    }
    m_racksOf = of;
    if (const auto racks = writtenRacks(m_workspace.logbook, of.second)) {
        m_bar->showRacks(*racks);
        m_pad.setRacks(*racks);
    }
}

MemberId FloorPage::memberUnderCursor() const
{
    const auto key = m_grid->currentKey();
    return key ? key->member : MemberId{};
}

// A reset forgets the cursor: it goes back to its cell, or to the first open one.
void FloorPage::restoreCursor(const std::optional<CellKey>& key)
{
    if (m_grid->currentKey()) {
        return;
    }
    QModelIndex place = key ? m_model.indexOf(*key) : QModelIndex();
    if (!place.isValid()) {
        place = m_model.nextOpen({});
    }
    if (!place.isValid() && m_model.rowCount() > 0 && m_model.columnCount() > 0) {
        place = m_model.index(0, 0);
    }
    m_grid->goTo(place);
}

void FloorPage::keyPressEvent(QKeyEvent* event)
{
    if (event->matches(QKeySequence::Undo)) {
        if (!event->isAutoRepeat()) {
            m_pad.takeBack();
        }
        event->accept();
        return;
    }
    if (event->key() == Qt::Key_Escape) {
        m_padLine->setFocus();
        event->accept();
        return;
    }
    QWidget::keyPressEvent(event);
}

void FloorPage::nextPart()
{
    std::vector<QWidget*> parts{m_padLine, m_bar, m_attendance, m_grid};
    if (m_template->isVisible()) {
        parts.push_back(m_template);
    }
    std::size_t at = 0;
    for (std::size_t place = 0; place < parts.size(); ++place) {
        const QWidget* focus = focusWidget();
        if (focus != nullptr && (focus == parts[place] || parts[place]->isAncestorOf(focus))) {
            at = place;
        }
    }
    QWidget* next = parts[(at + 1) % parts.size()];
    if (next == m_attendance) {
        next = m_attendance->filterField();
    } else if (next != m_grid && next != m_padLine) {
        next = next->findChild<QWidget*>(next == m_bar ? QStringLiteral("floorClass")
                                                       : QStringLiteral("templateList"));
    }
    next->setFocus(Qt::TabFocusReason);
}

bool FloorPage::succeeds(const std::optional<QString>& failure)
{
    if (failure) {
        m_status->say(*failure, true);
    }
    return !failure.has_value();
}

} // namespace levelbar::ui
