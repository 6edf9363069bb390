// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/plan/week_editor.h"

#include "ui/plan/plan_reader.h"
#include "ui/words.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QListWidget>
#include <QLocale>
#include <QPushButton>
#include <QShortcut>
#include <QTableWidget>
#include <QVBoxLayout>

#include <algorithm>

namespace levelbar::ui {

namespace {

constexpr int kDaysOfAWeek = 7;
constexpr int kExerciseRole = Qt::UserRole + 1;

enum Column { Name, Block, Sets, Reps, Left, Work, Rest, BlockMinutes, Halves, ColumnCount };

QTableWidgetItem* cell(std::optional<int> value)
{
    auto* item = new QTableWidgetItem(value ? QString::number(*value) : QString());
    item->setTextAlignment(Qt::AlignCenter);
    return item;
}

} // namespace

WeekEditor::WeekEditor(QWidget* parent)
    : QWidget(parent)
    , m_list(new QListWidget(this))
    , m_table(new QTableWidget(0, ColumnCount, this))
    , m_exercise(new QComboBox(this))
    , m_lighter(new QPushButton(this))
    , m_copy(new QPushButton(tr("&Copy to the week after"), this))
    , m_asTemplate(new QPushButton(tr("&As the template"), this))
    , m_changes(new QLabel(this))
{
    setObjectName(QStringLiteral("weekEditor"));
    m_list->setObjectName(QStringLiteral("planWeeks"));
    m_list->setAccessibleName(tr("Template and weeks"));
    m_table->setObjectName(QStringLiteral("planItems"));
    m_table->setAccessibleName(tr("Exercises"));
    m_table->setHorizontalHeaderLabels({tr("Exercise"),
                                        tr("Block"),
                                        tr("Sets"),
                                        tr("Reps"),
                                        tr("Left"),
                                        tr("Work s"),
                                        tr("Rest s"),
                                        tr("Block min"),
                                        tr("Halves")});
    m_table->horizontalHeaderItem(Left)->setToolTip(tr("Reps left in reserve"));
    m_table->horizontalHeaderItem(Halves)->setToolTip(
        tr("2: the halves of the class take turns and swap"));
    m_table->verticalHeader()->hide();
    m_table->horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    m_table->horizontalHeader()->setSectionResizeMode(Name, QHeaderView::Stretch);
    m_table->setTabKeyNavigation(false);
    m_exercise->setObjectName(QStringLiteral("planExercise"));
    m_exercise->setAccessibleName(tr("Exercise to add"));
    m_exercise->setEditable(true);
    m_exercise->setInsertPolicy(QComboBox::NoInsert);
    m_changes->setObjectName(QStringLiteral("planChanges"));
    m_changes->setWordWrap(true);
    m_changes->setTextFormat(Qt::PlainText);
    makeLayout();
}

void WeekEditor::makeLayout()
{
    auto* addButton = new QPushButton(tr("A&dd"), this);
    auto* removeButton = new QPushButton(tr("&Remove"), this);
    auto* keepButton = new QPushButton(tr("&Keep"), this);
    addButton->setObjectName(QStringLiteral("planAdd"));
    removeButton->setObjectName(QStringLiteral("planRemove"));
    keepButton->setObjectName(QStringLiteral("planKeep"));
    m_lighter->setObjectName(QStringLiteral("planLighter"));
    m_copy->setObjectName(QStringLiteral("planCopy"));
    m_asTemplate->setObjectName(QStringLiteral("planAsTemplate"));
    auto* adding = new QHBoxLayout;
    adding->addWidget(m_exercise, 1);
    adding->addWidget(addButton);
    adding->addWidget(removeButton);
    adding->addWidget(keepButton);
    auto* weeks = new QHBoxLayout;
    weeks->addWidget(m_lighter);
    weeks->addWidget(m_copy);
    weeks->addWidget(m_asTemplate);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(m_list, 2);
    layout->addLayout(weeks);
    layout->addWidget(m_table, 3);
    layout->addLayout(adding);
    layout->addWidget(m_changes);
    auto* save = new QShortcut(QKeySequence::Save, this);
    save->setContext(Qt::WidgetWithChildrenShortcut);
    connect(save, &QShortcut::activated, this, &WeekEditor::keep);
    connect(m_list, &QListWidget::currentRowChanged, this, &WeekEditor::showChosen);
    connect(addButton, &QPushButton::clicked, this, &WeekEditor::addExercise);
    connect(removeButton, &QPushButton::clicked, this, &WeekEditor::removeRow);
    connect(keepButton, &QPushButton::clicked, this, &WeekEditor::keep);
    connect(m_lighter, &QPushButton::clicked, this, &WeekEditor::toggleLighter);
    connect(m_copy, &QPushButton::clicked, this, &WeekEditor::copyToNext);
    connect(m_asTemplate, &QPushButton::clicked, this, [this] {
        if (const auto monday = chosenMonday()) {
            Q_EMIT weekRemoved(*monday);
        }
    });
}

void WeekEditor::show(const ClassPlan& plan, Day today)
{
    if (m_exercise->count() == 0) {
        for (const Exercise& exercise : plan.library.exercises) {
            m_exercise->addItem(plain(exercise.name), static_cast<qlonglong>(exercise.id.value));
        }
        m_exercise->model()->sort(0);
        m_exercise->setCurrentIndex(-1);
    }
    m_library = plan.library;
    m_usual = plan.usual;
    m_proposedFrom = plan.proposedFrom;
    m_blocks = plan.blocks;
    m_weeks = plan.weeks;
    m_today = today;
    const int row = std::max(0, m_list->currentRow());
    {
        const QSignalBlocker blocker(m_list);
        fillWeeks();
        m_list->setCurrentRow(row);
    }
    showChosen();
}

void WeekEditor::fillWeeks()
{
    m_list->clear();
    m_list->addItem(m_proposedFrom == 0
                        ? tr("Template")
                        : tr("Template, proposed from the last %n meetings; Keep makes it the "
                             "class's own",
                             nullptr,
                             m_proposedFrom));
    for (int week = 0; week < kPlanWeeks; ++week) {
        const Day monday = mondayOf(m_today) + week * kDaysOfAWeek;
        const ClassWeek known = weekOf(monday);
        QString line = week == 0 ? tr("This week, from %1").arg(plain(shortText(monday)))
                                 : tr("Week from %1").arg(plain(shortText(monday)));
        line += known.items.empty() ? tr(": as the template") : tr(": its own plan");
        if (known.kind == WeekKind::Lighter) {
            line += tr(", lighter");
        }
        m_list->addItem(line);
    }
}

std::optional<Day> WeekEditor::chosenMonday() const
{
    const int row = m_list->currentRow();
    return row < 1 ? std::nullopt : std::optional(mondayOf(m_today) + (row - 1) * kDaysOfAWeek);
}

ClassWeek WeekEditor::weekOf(Day monday) const
{
    const auto found = std::find_if(
        m_weeks.begin(), m_weeks.end(), [&](const auto& week) { return week.monday == monday; });
    return found == m_weeks.end() ? ClassWeek{monday, WeekKind::Usual, {}, {}} : *found;
}

void WeekEditor::showChosen()
{
    const auto monday = chosenMonday();
    const ClassWeek week = weekOf(monday.value_or(Day{}));
    setRows(monday && !week.items.empty() ? week.items : m_usual);
    m_lighter->setText(week.kind == WeekKind::Lighter ? tr("As hard as &usual")
                                                      : tr("&Lighter week"));
    for (QPushButton* button : {m_lighter, m_copy, m_asTemplate}) {
        button->setEnabled(monday.has_value());
    }
    showChanges();
}

// A week beside the one before it, both as they will be done.
void WeekEditor::showChanges()
{
    const auto monday = chosenMonday();
    if (!monday) {
        m_changes->setText(
            tr("Sets times reps, reps left in reserve, seconds of work and rest; the "
               "block's minutes and halves count in its first row."));
        return;
    }
    const auto before = itemsIn(*monday - kDaysOfAWeek, m_usual, m_weeks);
    QStringList lines;
    for (const ItemChange& change : changesBetween(before, itemsIn(*monday, m_usual, m_weeks))) {
        const QString name = exerciseName(m_library, change.exercise);
        if (change.news == ItemNews::Added) {
            lines << tr("%1: new, %2").arg(name, itemText(*change.after));
        } else if (change.news == ItemNews::Removed) {
            lines << tr("%1: not any more").arg(name);
        } else {
            lines << tr("%1: %2, was %3")
                         .arg(name, itemText(*change.after), itemText(*change.before));
        }
    }
    m_changes->setText(lines.isEmpty() ? tr("The same as the week before; loads follow each "
                                            "person's progress.")
                                       : tr("Beside the week before:") + QLatin1Char('\n') +
                                             lines.join(QLatin1Char('\n')));
}

QString WeekEditor::itemText(const PlanItem& item) const
{
    const QString reps = item.what.reps ? QString::number(*item.what.reps) : tr("as last time");
    return tr("%1 × %2 with %3 left")
        .arg(item.what.sets)
        .arg(reps, QLocale().toString(item.reserve.value_or(kPlanReserve).reps()));
}

void WeekEditor::setRows(const std::vector<PlanItem>& items)
{
    m_table->setRowCount(static_cast<int>(items.size()));
    int block = 0;
    for (int row = 0; row < m_table->rowCount(); ++row) {
        const PlanItem& item = items[static_cast<std::size_t>(row)];
        auto* name = new QTableWidgetItem(exerciseName(m_library, item.what.exercise));
        name->setData(kExerciseRole, static_cast<qlonglong>(item.what.exercise.value));
        name->setFlags(name->flags() & ~Qt::ItemIsEditable);
        m_table->setItem(row, Name, name);
        m_table->setItem(row, Block, cell(item.block));
        m_table->setItem(row, Sets, cell(item.what.sets));
        m_table->setItem(row, Reps, cell(item.what.reps));
        m_table->setItem(
            row,
            Left,
            cell(item.reserve ? std::optional(item.reserve->tenths / 10) : std::nullopt));
        m_table->setItem(row, Work, cell(item.workSeconds));
        m_table->setItem(row, Rest, cell(item.restSeconds));
        std::optional<PlanBlock> known;
        for (const PlanBlock& one : m_blocks) {
            if (one.number == item.block && block != item.block) {
                known = one;
            }
        }
        block = item.block;
        m_table->setItem(
            row, BlockMinutes, cell(known ? std::optional(known->minutes) : std::nullopt));
        m_table->setItem(row, Halves, cell(known ? std::optional(known->halves) : std::nullopt));
    }
}

std::vector<PlanItem> WeekEditor::typedItems() const
{
    const auto number = [this](int row, Column column, int least, int most) {
        bool isNumber = false;
        const int value = m_table->item(row, column)->text().toInt(&isNumber);
        return isNumber ? std::optional(std::clamp(value, least, most)) : std::nullopt;
    };
    std::vector<PlanItem> items;
    for (int row = 0; row < m_table->rowCount(); ++row) {
        PlanItem item;
        item.what.exercise = ExerciseId{m_table->item(row, Name)->data(kExerciseRole).toLongLong()};
        item.block = number(row, Block, 1, 20).value_or(1);
        item.what.sets = number(row, Sets, 1, 20).value_or(3);
        item.what.reps = number(row, Reps, 1, kMostTargetReps);
        if (const auto left = number(row, Left, 0, kMostTargetReserve)) {
            item.reserve = Reserve{10 * *left};
        }
        item.workSeconds = number(row, Work, 1, 3600);
        item.restSeconds = number(row, Rest, 0, 3600);
        items.push_back(item);
    }
    return items;
}

std::vector<PlanBlock> WeekEditor::typedBlocks(const std::vector<PlanItem>& items) const
{
    std::vector<PlanBlock> blocks;
    for (std::size_t place = 0; place < items.size(); ++place) {
        const int row = static_cast<int>(place);
        const int number = items[place].block;
        const bool isKnown = std::any_of(blocks.begin(), blocks.end(), [number](const auto& one) {
            return one.number == number;
        });
        const int minutes = m_table->item(row, BlockMinutes)->text().toInt();
        if (!isKnown && minutes > 0) {
            const int halves = m_table->item(row, Halves)->text().toInt();
            blocks.push_back({number, std::min(minutes, 600), halves == 2 ? 2 : 1});
        }
    }
    std::sort(blocks.begin(), blocks.end(), [](const auto& a, const auto& b) {
        return a.number < b.number;
    });
    return blocks;
}

void WeekEditor::addExercise()
{
    const int index =
        m_exercise->findText(m_exercise->currentText().trimmed(), Qt::MatchFixedString);
    if (index < 0) {
        m_exercise->setFocus();
        return;
    }
    std::vector<PlanItem> items = typedItems();
    PlanItem item;
    item.what.exercise = ExerciseId{m_exercise->itemData(index).toLongLong()};
    item.block = items.empty() ? 1 : items.back().block;
    items.push_back(item);
    setRows(items);
    m_table->setCurrentCell(m_table->rowCount() - 1, Sets);
    m_exercise->setCurrentIndex(-1);
}

void WeekEditor::removeRow()
{
    if (m_table->currentRow() >= 0) {
        m_table->removeRow(m_table->currentRow());
    }
}

void WeekEditor::keep()
{
    const std::vector<PlanItem> items = typedItems();
    const auto monday = chosenMonday();
    if (!monday) {
        Q_EMIT templateKept(items, typedBlocks(items));
        return;
    }
    ClassWeek week = weekOf(*monday);
    week.items = items == m_usual ? std::vector<PlanItem>{} : items;
    Q_EMIT weekKept(week);
}

void WeekEditor::toggleLighter()
{
    if (const auto monday = chosenMonday()) {
        ClassWeek week = weekOf(*monday);
        week.kind = week.kind == WeekKind::Lighter ? WeekKind::Usual : WeekKind::Lighter;
        Q_EMIT weekKept(week);
    }
}

// The week's own plan, or the template made its own, so that one thing can be changed in it.
void WeekEditor::copyToNext()
{
    const auto monday = chosenMonday();
    if (!monday) {
        return;
    }
    ClassWeek next = weekOf(*monday);
    if (next.items.empty()) {
        next.items = m_usual;
    }
    next.monday = *monday + kDaysOfAWeek;
    next.kind = WeekKind::Usual;
    const int row = std::min(m_list->currentRow() + 1, m_list->count() - 1);
    Q_EMIT weekKept(next);
    m_list->setCurrentRow(row);
}

} // namespace levelbar::ui
