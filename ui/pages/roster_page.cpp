// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/roster_page.h"

#include "storage/class_store.h"
#include "ui/pages/person_editor.h"
#include "ui/pages/roster_delegate.h"
#include "ui/pages/roster_model.h"
#include "ui/pages/words_filter.h"
#include "ui/perform.h"
#include "ui/words.h"

#include <QHBoxLayout>
#include <QHeaderView>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QShortcut>
#include <QSortFilterProxyModel>
#include <QTableView>
#include <QVBoxLayout>

#include <array>

namespace levelbar::ui {

namespace {

std::map<MemberId, QString> classNames(const storage::Logbook& logbook)
{
    std::map<MemberId, QString> names;
    const storage::ClassStore store(logbook);
    for (const storage::GroupClass& groupClass : store.all()) {
        for (const MemberId member : store.membersOf(groupClass.id)) {
            names[member] += plain(groupClass.name) + QLatin1Char('\n');
        }
    }
    return names;
}

} // namespace

RosterPage::RosterPage(Workspace& workspace, BackgroundReview& review, QWidget* parent)
    : QWidget(parent)
    , m_workspace(workspace)
    , m_model(new RosterModel(this))
    , m_proxy(new WordsFilter(RosterModel::SearchRole, this))
    , m_filter(new QLineEdit(this))
    , m_count(new QLabel(this))
    , m_table(new QTableView(this))
{
    setObjectName(QStringLiteral("rosterPage"));
    setAccessibleName(tr("People"));
    m_filter->setObjectName(QStringLiteral("rosterFilter"));
    m_filter->setAccessibleName(tr("Filter people"));
    m_filter->setPlaceholderText(tr("Filter by name, id, class or flag (Ctrl+F)"));
    m_filter->setClearButtonEnabled(true);
    m_filter->installEventFilter(this);
    m_count->setObjectName(QStringLiteral("rosterCount"));
    m_proxy->setSourceModel(m_model);
    m_proxy->setSortRole(RosterModel::SortRole);
    m_table->setObjectName(QStringLiteral("rosterTable"));
    m_table->setAccessibleName(tr("People, one row each"));
    m_table->setModel(m_proxy);
    m_table->setItemDelegate(new RosterDelegate(m_table));
    m_table->setSelectionBehavior(QAbstractItemView::SelectRows);
    m_table->setSelectionMode(QAbstractItemView::SingleSelection);
    m_table->setEditTriggers(QAbstractItemView::NoEditTriggers);
    m_table->setShowGrid(false);
    m_table->setAlternatingRowColors(true);
    m_table->setSortingEnabled(true);
    m_table->setTabKeyNavigation(false);
    m_table->verticalHeader()->hide();
    m_table->verticalHeader()->setDefaultSectionSize(50);
    m_table->horizontalHeader()->setStretchLastSection(true);
    m_table->horizontalHeader()->setHighlightSections(false);
    m_table->horizontalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
    constexpr std::array<int, RosterModel::ColumnCount> kWidths = {205, 115, 115, 285, 255, 200};
    for (int column = 0; column < RosterModel::ColumnCount; ++column) {
        m_table->setColumnWidth(column, kWidths.at(static_cast<std::size_t>(column)));
    }
    m_table->sortByColumn(RosterModel::Flags, Qt::DescendingOrder);
    m_table->installEventFilter(this);

    auto* add = new QPushButton(tr("New person (Ctrl+N)"), this);
    add->setObjectName(QStringLiteral("rosterNew"));
    connect(add, &QPushButton::clicked, this, &RosterPage::addPerson);
    auto* shortcut = new QShortcut(QKeySequence::New, this);
    shortcut->setContext(Qt::WidgetWithChildrenShortcut);
    connect(shortcut, &QShortcut::activated, this, &RosterPage::addPerson);
    auto* top = new QHBoxLayout;
    top->addWidget(m_filter, 1);
    top->addWidget(m_count);
    top->addWidget(add);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(16, 14, 16, 10);
    layout->addLayout(top);
    layout->addWidget(m_table, 1);

    connect(m_filter, &QLineEdit::textChanged, this, [this](const QString& text) {
        static_cast<WordsFilter*>(m_proxy)->setWords(text);
        m_table->selectRow(0);
        countShown();
    });
    connect(m_table, &QTableView::doubleClicked, this, &RosterPage::openCurrent);
    connect(&review, &BackgroundReview::ready, this, &RosterPage::take);
    if (review.current()) {
        take(review.current());
    }
}

void RosterPage::focusFilter()
{
    m_filter->setFocus(Qt::ShortcutFocusReason);
    m_filter->selectAll();
}

void RosterPage::take(const ReviewedRosterPointer& roster)
{
    perform(m_workspace.prompter, [&] { m_model->show(roster, classNames(m_workspace.logbook)); });
    if (!m_table->currentIndex().isValid()) {
        m_table->selectRow(0);
    }
    countShown();
}

void RosterPage::countShown()
{
    const int all = m_model->rowCount();
    const int shown = m_proxy->rowCount();
    m_count->setText(shown == all
                         ? tr("%n people", nullptr, all)
                         : tr("%1 of %n people", nullptr, all).arg(locale().toString(shown)));
}

void RosterPage::addPerson()
{
    if (m_editor == nullptr) {
        m_editor = new PersonEditor(m_workspace, this);
        connect(m_editor, &PersonEditor::kept, this, &RosterPage::opened);
    }
    perform(m_workspace.prompter, [this] { m_editor->startNew(); });
}

void RosterPage::openCurrent()
{
    const QModelIndex current = m_table->currentIndex();
    if (current.isValid()) {
        Q_EMIT opened(MemberId{current.data(RosterModel::MemberRole).toLongLong()});
    }
}

bool RosterPage::eventFilter(QObject* watched, QEvent* event)
{
    if (event->type() == QEvent::KeyPress) {
        const auto* key = static_cast<QKeyEvent*>(event);
        const bool isEnter = key->key() == Qt::Key_Return || key->key() == Qt::Key_Enter;
        if (isEnter && !key->isAutoRepeat()) {
            openCurrent();
            return true;
        }
        if (watched == m_filter && (key->key() == Qt::Key_Down || key->key() == Qt::Key_Up)) {
            m_table->setFocus(Qt::OtherFocusReason);
            return true;
        }
    }
    return QWidget::eventFilter(watched, event);
}

} // namespace levelbar::ui
