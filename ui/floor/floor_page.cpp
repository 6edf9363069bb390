// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/floor/floor_page.h"

#include "ui/floor/attendance_list.h"
#include "ui/floor/floor_attempt.h"
#include "ui/floor/floor_bar.h"
#include "ui/floor/floor_grid.h"
#include "ui/floor/floor_status.h"
#include "ui/floor/floor_words.h"
#include "ui/floor/template_editor.h"

#include <QKeyEvent>
#include <QLabel>
#include <QPushButton>
#include <QShortcut>
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
    , m_bar(new FloorBar(workspace.clock.today()))
    , m_attendance(new AttendanceList)
    , m_grid(new FloorGrid(m_model, m_entry))
    , m_hint(new QLabel)
    , m_template(new TemplateEditor)
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
    parts->setStretchFactor(1, 1);
    const int unit = fontMetrics().horizontalAdvance(QLatin1Char('0'));
    parts->setSizes({24 * unit, 110 * unit, 34 * unit});
    m_attendance->setMinimumWidth(18 * unit);
    m_template->setMinimumWidth(30 * unit);
    m_template->hide();

    auto* layout = new QVBoxLayout(this);
    layout->addWidget(m_bar);
    layout->addWidget(parts, 1);
    layout->addWidget(m_status);
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
    connect(m_template, &TemplateEditor::kept, this, &FloorPage::keepTemplate);
    connect(m_grid, &FloorGrid::cursorMoved, this, &FloorPage::showPlace);
    connect(m_grid, &FloorGrid::nothingLeft, this, [this] {
        m_status->say(tr("Every planned set is known."), false);
    });
    connect(&m_entry, &FloorEntry::said, this, [this](const QString& sentence) {
        m_status->say(sentence, false);
    });
    connect(&m_entry, &FloorEntry::refused, this, [this](const QString& sentence) {
        m_status->say(sentence, true);
    });
    auto* next = new QShortcut(Qt::Key_F6, this);
    next->setContext(Qt::WidgetWithChildrenShortcut);
    connect(next, &QShortcut::activated, this, &FloorPage::nextPart);
}

void FloorPage::openClass(ClassId groupClass, Day day)
{
    if (m_isStale) {
        refresh(true);
    }
    m_bar->choose(groupClass, day);
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
    refresh(change.touchesRoster || change.touchesLibrary || change.touchesClasses);
}

void FloorPage::refresh(bool withReference)
{
    const auto cursor = m_grid->currentKey();
    const bool went = succeeds(failureOf([&] {
        const storage::Logbook& logbook = m_workspace.logbook;
        const storage::ClassStore classes(logbook);
        if (withReference || m_isStale) {
            m_model.setReference(readReference(logbook));
            m_bar->setClasses(classes.all());
        }
        const auto groupClass = m_bar->chosenClass();
        FloorSheet sheet;
        std::vector<MemberId> members;
        if (groupClass) {
            sheet = readSheet(logbook, m_model.reference(), *groupClass, m_bar->chosenDay());
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
    restoreCursor(cursor);
    showHint();
    showPlace();
    showProgress();
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

void FloorPage::showHint()
{
    const FloorSheet& sheet = m_model.sheet();
    QString hint;
    if (!m_bar->chosenClass()) {
        hint = tr("There is no class yet: type a name above and add it.");
    } else if (sheet.items.items.empty() && sheet.columns.empty()) {
        hint = tr("This class has no template yet: open Template and add its exercises.");
    } else if (sheet.rows.empty()) {
        hint = tr("Mark who came on the left: Space or Enter. Their sets are planned at what each "
                  "lifted last.");
    }
    if (sheet.items.isProposed) {
        hint += (hint.isEmpty() ? QString() : QStringLiteral(" ")) +
                tr("The exercises are proposed from the last %n meetings; Template keeps or "
                   "changes them.",
                   nullptr,
                   sheet.items.meetingsSeen);
    }
    m_hint->setText(hint);
    m_hint->setVisible(!hint.isEmpty());
}

void FloorPage::showPlace()
{
    const auto key = m_grid->currentKey();
    const auto cell = key ? m_model.cell(*key) : std::nullopt;
    if (!cell) {
        const bool isEmpty = m_model.rowCount() == 0;
        m_status->showPlace({}, isEmpty ? tr("Nobody is marked yet") : tr("Choose a set"), {});
        return;
    }
    const Exercise* exercise = m_model.reference().library.exercise(key->exercise);
    QString plan = tr("nothing planned");
    if (cell->done) {
        plan = tr("done %1").arg(doneText(*cell->done, exercise));
    } else if (cell->planned) {
        plan = tr("plan %1").arg(plannedText(*cell->planned, exercise));
    }
    m_status->showPlace(personName(m_model.reference(), key->member),
                        placeText(m_model.reference(), {key->exercise, key->number, key->side}),
                        plan);
}

void FloorPage::showProgress()
{
    int known = 0;
    int all = 0;
    for (const FloorRow& row : m_model.sheet().rows) {
        for (const FloorCell& cell : row.cells) {
            known += cell.done ? 1 : 0;
            all += cell.done || cell.planned ? 1 : 0;
        }
    }
    m_status->showProgress(known, all);
}

void FloorPage::mark(MemberId member, bool came)
{
    const FloorSheet& sheet = m_model.sheet();
    if (!m_bar->chosenClass()) {
        m_status->say(tr("There is no class yet: type a name above and add it."), true);
        return;
    }
    const QString name = personName(m_model.reference(), member);
    const auto row = std::find_if(
        sheet.rows.begin(), sheet.rows.end(), [&](const auto& r) { return r.member == member; });
    const bool hasDone = row != sheet.rows.end() &&
                         std::any_of(row->cells.begin(), row->cells.end(), [](const auto& cell) {
                             return cell.done.has_value();
                         });
    if (!came && hasDone) {
        m_status->say(tr("%1 has done sets here; take those back first, then the mark.").arg(name),
                      true);
        return;
    }
    const bool went = succeeds(failureOf([&] {
        if (came) {
            m_writer.markCame(sheet, m_model.reference(), member);
        } else {
            m_writer.unmark(sheet, member);
        }
    }));
    if (went) {
        m_status->say(came ? tr("%1 came.").arg(name) : tr("%1 is not marked any more.").arg(name),
                      false);
    }
}

void FloorPage::addClass(const QString& name)
{
    ClassId added;
    const bool went = succeeds(failureOf([&] {
        const storage::ClassStore classes(m_workspace.logbook);
        if (const auto known = classes.find(name.toStdString())) {
            added = known->id;
            return;
        }
        added = m_writer.addClass(name.toStdString());
    }));
    if (went) {
        m_bar->closeNewClass();
        m_bar->choose(added, m_bar->chosenDay());
    }
}

void FloorPage::keepTemplate(const std::vector<TemplateItem>& items)
{
    const FloorSheet& sheet = m_model.sheet();
    if (!m_bar->chosenClass()) {
        return;
    }
    const std::vector<TemplateItem> wanted = items; // the editor is refilled while this runs
    m_template->setEdited(false);
    const bool went =
        succeeds(failureOf([&] { m_writer.setTemplate(sheet, m_model.reference(), wanted); }));
    m_template->setEdited(!went);
    if (went) {
        m_status->say(tr("Template kept: %n exercises.", nullptr, static_cast<int>(wanted.size())),
                      false);
    }
}

void FloorPage::keyPressEvent(QKeyEvent* event)
{
    if (event->matches(QKeySequence::Undo)) {
        if (!event->isAutoRepeat()) {
            m_entry.takeBack();
        }
        event->accept();
        return;
    }
    QWidget::keyPressEvent(event);
}

void FloorPage::nextPart()
{
    std::vector<QWidget*> parts{m_bar, m_attendance, m_grid};
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
    } else if (next != m_grid) {
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
