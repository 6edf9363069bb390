// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/floor/template_editor.h"

#include "ui/words.h"

#include <QCompleter>
#include <QHeaderView>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QStringListModel>
#include <QTableWidget>
#include <QVBoxLayout>

#include <algorithm>

namespace levelbar::ui {

namespace {

constexpr int kFirstSets = 3;
constexpr int kMostSets = 20;

} // namespace

TemplateEditor::TemplateEditor(QWidget* parent)
    : QWidget(parent)
    , m_hint(new QLabel(this))
    , m_table(new QTableWidget(0, 2, this))
    , m_add(new QLineEdit(this))
{
    setObjectName(QStringLiteral("templateEditor"));
    m_hint->setWordWrap(true);
    m_table->setObjectName(QStringLiteral("templateTable"));
    m_table->setAccessibleName(tr("Exercises of the class; plus and minus change the sets"));
    m_table->setHorizontalHeaderLabels({tr("Exercise"), tr("Sets")});
    m_table->horizontalHeader()->setSectionResizeMode(0, QHeaderView::Stretch);
    m_table->horizontalHeader()->setSectionResizeMode(1, QHeaderView::ResizeToContents);
    m_table->verticalHeader()->hide();
    m_table->setSelectionBehavior(QAbstractItemView::SelectRows);
    m_table->setEditTriggers(QAbstractItemView::NoEditTriggers);
    m_table->setTabKeyNavigation(false);
    m_table->installEventFilter(this);
    m_add->setObjectName(QStringLiteral("templateAdd"));
    m_add->setAccessibleName(tr("Add an exercise"));
    m_add->setPlaceholderText(tr("Add an exercise: type and press Enter"));
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(m_hint);
    layout->addWidget(m_table, 1);
    layout->addWidget(m_add);
    connect(m_add, &QLineEdit::returnPressed, this, &TemplateEditor::addTyped);
}

void TemplateEditor::show(const std::vector<TemplateItem>& items,
                          const Library& library,
                          bool isProposed)
{
    m_items = items;
    if (m_library.exercises != library.exercises || m_add->completer() == nullptr) {
        m_library = library;
        QStringList names;
        for (const Exercise& exercise : library.exercises) {
            if (!exercise.isHidden) {
                names << plain(exercise.name);
            }
        }
        names.sort(Qt::CaseInsensitive);
        auto* completer = new QCompleter(names, m_add);
        completer->setCaseSensitivity(Qt::CaseInsensitive);
        completer->setFilterMode(Qt::MatchContains);
        m_add->setCompleter(completer);
    }
    m_hint->setText(isProposed ? tr("Proposed from the last meetings; any change keeps it.")
                               : tr("+ and − change the sets, Delete removes."));
    fill();
}

void TemplateEditor::fill()
{
    const int row = m_table->currentRow();
    m_table->setRowCount(static_cast<int>(m_items.size()));
    for (std::size_t i = 0; i < m_items.size(); ++i) {
        const Exercise* exercise = m_library.exercise(m_items[i].exercise);
        const auto at = static_cast<int>(i);
        m_table->setItem(
            at, 0, new QTableWidgetItem(exercise == nullptr ? QString() : plain(exercise->name)));
        m_table->setItem(at, 1, new QTableWidgetItem(locale().toString(m_items[i].sets)));
    }
    m_table->setCurrentCell(std::clamp(row, 0, std::max(0, m_table->rowCount() - 1)), 0);
}

void TemplateEditor::addTyped()
{
    const QString wanted = m_add->text().trimmed();
    const auto found = std::find_if(
        m_library.exercises.begin(), m_library.exercises.end(), [&](const Exercise& exercise) {
            return plain(exercise.name).compare(wanted, Qt::CaseInsensitive) == 0;
        });
    if (found == m_library.exercises.end()) {
        m_hint->setText(tr("There is no exercise \"%1\"; choose one of the list.").arg(wanted));
        return;
    }
    std::vector<TemplateItem> items = m_items;
    const bool isThere = std::any_of(items.begin(), items.end(), [&](const TemplateItem& item) {
        return item.exercise == found->id;
    });
    if (!isThere) {
        items.push_back({found->id, kFirstSets, std::nullopt});
        Q_EMIT edited(items);
    }
    m_add->clear();
}

bool TemplateEditor::changeRow(int key, bool isControl)
{
    const int row = m_table->currentRow();
    if (row < 0 || row >= static_cast<int>(m_items.size())) {
        return false;
    }
    std::vector<TemplateItem> items = m_items;
    const auto at = items.begin() + row;
    int next = row;
    if (key == Qt::Key_Plus || key == Qt::Key_Minus) {
        at->sets = std::clamp(at->sets + (key == Qt::Key_Plus ? 1 : -1), 1, kMostSets);
    } else if (key == Qt::Key_Delete) {
        items.erase(at);
    } else if (isControl && key == Qt::Key_Up && row > 0) {
        std::iter_swap(at, at - 1);
        next = row - 1;
    } else if (isControl && key == Qt::Key_Down && row + 1 < static_cast<int>(items.size())) {
        std::iter_swap(at, at + 1);
        next = row + 1;
    } else {
        return false;
    }
    Q_EMIT edited(items);
    m_table->setCurrentCell(std::min(next, m_table->rowCount() - 1), 0);
    return true;
}

bool TemplateEditor::eventFilter(QObject* watched, QEvent* event)
{
    if (event->type() == QEvent::KeyPress) {
        const auto* key = static_cast<QKeyEvent*>(event);
        if (changeRow(key->key(), (key->modifiers() & Qt::ControlModifier) != 0)) {
            return true;
        }
    }
    return QWidget::eventFilter(watched, event);
}

} // namespace levelbar::ui
