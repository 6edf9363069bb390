// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/sets_panel.h"

#include "ui/pages/sets_model.h"
#include "ui/pages/words_filter.h"

#include <QHBoxLayout>
#include <QHeaderView>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QLocale>
#include <QSet>
#include <QTableView>
#include <QVBoxLayout>

namespace levelbar::ui {

namespace {

constexpr int kRowsMeasured = 200; // for the widths: thousands would hold up the page

} // namespace

SetsPanel::SetsPanel(QWidget* parent)
    : QWidget(parent)
    , m_sets(new SetsModel(this))
    , m_filtered(new WordsFilter(SetsModel::SearchRole, this))
    , m_filter(new QLineEdit(this))
    , m_count(new QLabel(this))
    , m_table(new QTableView(this))
{
    m_filtered->setSourceModel(m_sets);
    m_filter->setObjectName(QStringLiteral("memberSetsFilter"));
    m_filter->setAccessibleName(tr("Filter sets"));
    m_filter->setPlaceholderText(tr("Filter by exercise, day, load, pain or note"));
    m_filter->setClearButtonEnabled(true);
    m_filter->installEventFilter(this);
    m_count->setObjectName(QStringLiteral("memberSetsCount"));
    makeTable();
    auto* top = new QHBoxLayout;
    top->addWidget(m_filter, 1);
    top->addWidget(m_count);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 4, 0, 0);
    layout->addLayout(top);
    layout->addWidget(m_table, 1);
    connect(m_filter, &QLineEdit::textChanged, this, [this](const QString& text) {
        m_filtered->setWords(text);
        tellCount();
    });
}

void SetsPanel::makeTable()
{
    m_table->setObjectName(QStringLiteral("memberSets"));
    m_table->setAccessibleName(tr("Sets, newest first"));
    m_table->setModel(m_filtered);
    m_table->setSelectionBehavior(QAbstractItemView::SelectRows);
    m_table->setAlternatingRowColors(true);
    m_table->setShowGrid(false);
    m_table->setTabKeyNavigation(false);
    m_table->verticalHeader()->hide();
    m_table->verticalHeader()->setDefaultSectionSize(m_table->fontMetrics().height() + 8);
    m_table->horizontalHeader()->setStretchLastSection(true);
    m_table->horizontalHeader()->setResizeContentsPrecision(kRowsMeasured);
}

void SetsPanel::show(std::vector<DoneSet> sets, const Library& library, EffortScale effort)
{
    m_sets->show(std::move(sets), library, effort);
    m_table->resizeColumnsToContents();
    tellCount();
}

void SetsPanel::clearFilter()
{
    m_filter->clear();
}

void SetsPanel::tellCount()
{
    QSet<QString> days;
    const int shown = m_filtered->rowCount();
    for (int row = 0; row < shown; ++row) {
        days << m_filtered->index(row, SetsModel::DayColumn).data().toString();
    }
    const QString all = locale().toString(m_sets->rowCount());
    m_count->setText(
        shown == m_sets->rowCount()
            ? tr("Sets: %1, days: %2").arg(all).arg(days.size())
            : tr("Sets: %1 of %2, days: %3").arg(locale().toString(shown), all).arg(days.size()));
}

bool SetsPanel::eventFilter(QObject* watched, QEvent* event)
{
    if (watched == m_filter && event->type() == QEvent::KeyPress) {
        const int key = static_cast<QKeyEvent*>(event)->key();
        if (key == Qt::Key_Down && m_filtered->rowCount() > 0) {
            m_table->setFocus(Qt::TabFocusReason);
            m_table->selectRow(0);
            return true;
        }
        if (key == Qt::Key_Escape && !m_filter->text().isEmpty()) {
            m_filter->clear(); // the next one leaves the page
            return true;
        }
    }
    return QWidget::eventFilter(watched, event);
}

} // namespace levelbar::ui
