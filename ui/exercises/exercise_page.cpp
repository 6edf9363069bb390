// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/exercises/exercise_page.h"

#include "storage/exercise_detail_store.h"
#include "storage/ladder_store.h"
#include "storage/library_store.h"
#include "ui/change_notifier.h"
#include "ui/exercises/exercise_text.h"
#include "ui/exercises/ladder_editor.h"
#include "ui/perform.h"
#include "ui/words.h"

#include <QCheckBox>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollArea>
#include <QShortcut>
#include <QSplitter>
#include <QStackedWidget>
#include <QTextBrowser>
#include <QTreeWidget>
#include <QVBoxLayout>

#include <algorithm>
#include <memory>

namespace levelbar::ui {

namespace {

constexpr int kIdRole = Qt::UserRole + 1;
constexpr int kPatterns = 10;

// Every word typed stands somewhere in name, pattern or kit.
bool matches(const Exercise& exercise, const QStringList& wanted)
{
    const QString all = QStringLiteral("%1 %2 %3")
                            .arg(plain(exercise.name),
                                 word(patternWord(exercise.pattern)),
                                 word(implementWord(exercise.implement)));
    return std::all_of(wanted.begin(), wanted.end(), [&all](const QString& part) {
        return all.contains(part, Qt::CaseInsensitive);
    });
}

} // namespace

ExercisePage::ExercisePage(Workspace& workspace, QWidget* parent)
    : QWidget(parent)
    , m_workspace(workspace)
    , m_filter(new QLineEdit(this))
    , m_withHidden(new QCheckBox(tr("Show hidden"), this))
    , m_list(new QTreeWidget(this))
    , m_count(new QLabel(this))
    , m_sides(new QStackedWidget(this))
    , m_name(new QLabel(this))
    , m_text(new QTextBrowser(this))
    , m_hide(new QPushButton(this))
    , m_editor(new ExerciseEditor(this))
    , m_ladderEditor(new LadderEditor(this))
{
    setObjectName(QStringLiteral("exercisePage"));
    setAccessibleName(tr("Exercises"));
    makeLayout();
    connect(m_filter, &QLineEdit::textChanged, this, &ExercisePage::fillList);
    connect(m_withHidden, &QCheckBox::toggled, this, &ExercisePage::fillList);
    connect(m_list, &QTreeWidget::currentItemChanged, this, &ExercisePage::showChosen);
    connect(m_list, &QTreeWidget::itemActivated, this, &ExercisePage::startChange);
    connect(m_editor, &ExerciseEditor::kept, this, &ExercisePage::keep);
    connect(m_editor, &ExerciseEditor::cancelled, this, &ExercisePage::leaveEditor);
    connect(m_ladderEditor, &LadderEditor::kept, this, &ExercisePage::keepLadder);
    connect(m_ladderEditor, &LadderEditor::shippedWanted, this, &ExercisePage::dropLadder);
    connect(m_ladderEditor, &LadderEditor::cancelled, this, &ExercisePage::leaveEditor);
    connect(&workspace.notifier, &ChangeNotifier::changed, this, [this](const auto& change) {
        if (change.touchesLibrary) {
            refresh();
        }
    });
    setFocusProxy(m_filter);
    refresh();
}

void ExercisePage::makeLayout()
{
    auto* halves = new QSplitter(Qt::Horizontal, this);
    halves->addWidget(makeList());
    m_sides->addWidget(makeDetail());
    auto* scroll = new QScrollArea(this);
    scroll->setWidgetResizable(true);
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setWidget(m_editor);
    m_sides->addWidget(scroll);
    m_sides->addWidget(m_ladderEditor);
    halves->addWidget(m_sides);
    halves->setChildrenCollapsible(false);
    halves->setStretchFactor(0, 2);
    halves->setStretchFactor(1, 3);
    halves->setSizes({420, 760});
    auto* layout = new QHBoxLayout(this);
    layout->setContentsMargins(16, 14, 16, 10);
    layout->addWidget(halves);
}

QWidget* ExercisePage::makeList()
{
    m_filter->setObjectName(QStringLiteral("exerciseFilter"));
    m_filter->setAccessibleName(tr("Filter the exercises"));
    m_filter->setPlaceholderText(tr("Type to filter: name, pattern or kit"));
    m_filter->setClearButtonEnabled(true);
    m_withHidden->setObjectName(QStringLiteral("exerciseWithHidden"));
    m_list->setObjectName(QStringLiteral("exerciseList"));
    m_list->setAccessibleName(tr("Exercises by pattern"));
    m_list->setColumnCount(2);
    m_list->setHeaderHidden(true);
    m_list->header()->setStretchLastSection(true);
    m_list->header()->setSectionResizeMode(0, QHeaderView::ResizeToContents);
    m_list->setUniformRowHeights(true);
    m_list->setAlternatingRowColors(true);
    m_count->setObjectName(QStringLiteral("exerciseCount"));
    auto* down = new QShortcut(Qt::Key_Down, m_filter);
    down->setContext(Qt::WidgetShortcut);
    connect(
        down, &QShortcut::activated, m_list, [this] { m_list->setFocus(Qt::OtherFocusReason); });
    auto* add = new QPushButton(tr("New exercise (Ctrl+N)"), this);
    add->setObjectName(QStringLiteral("exerciseNew"));
    connect(add, &QPushButton::clicked, this, &ExercisePage::startNew);
    auto* shortcut = new QShortcut(QKeySequence::New, this);
    shortcut->setContext(Qt::WidgetWithChildrenShortcut);
    connect(shortcut, &QShortcut::activated, this, &ExercisePage::startNew);
    auto* below = new QHBoxLayout;
    below->addWidget(add);
    below->addStretch(1);
    below->addWidget(m_withHidden);
    auto* half = new QWidget(this);
    auto* layout = new QVBoxLayout(half);
    layout->setContentsMargins(0, 0, 10, 0);
    layout->addWidget(m_filter);
    layout->addWidget(m_list, 1);
    layout->addWidget(m_count);
    layout->addLayout(below);
    return half;
}

QWidget* ExercisePage::makeDetail()
{
    QFont large = m_name->font();
    large.setPointSizeF(large.pointSizeF() * 1.5);
    large.setBold(true);
    m_name->setFont(large);
    m_name->setWordWrap(true);
    m_name->setTextFormat(Qt::PlainText);
    m_name->setObjectName(QStringLiteral("exerciseTitle"));
    m_text->setObjectName(QStringLiteral("exerciseText"));
    m_text->setAccessibleName(tr("What is known of the exercise"));
    m_text->setFrameShape(QFrame::NoFrame);
    auto* change = new QPushButton(tr("Change (F2)"), this);
    change->setObjectName(QStringLiteral("exerciseChange"));
    connect(change, &QPushButton::clicked, this, &ExercisePage::startChange);
    auto* shortcut = new QShortcut(Qt::Key_F2, this);
    shortcut->setContext(Qt::WidgetWithChildrenShortcut);
    connect(shortcut, &QShortcut::activated, this, &ExercisePage::startChange);
    m_hide->setObjectName(QStringLiteral("exerciseHide"));
    connect(m_hide, &QPushButton::clicked, this, &ExercisePage::hideChosen);
    auto* ladder = new QPushButton(tr("Ladder (F4)"), this);
    ladder->setObjectName(QStringLiteral("exerciseEditLadder"));
    connect(ladder, &QPushButton::clicked, this, &ExercisePage::startLadder);
    auto* rungs = new QShortcut(Qt::Key_F4, this);
    rungs->setContext(Qt::WidgetWithChildrenShortcut);
    connect(rungs, &QShortcut::activated, this, &ExercisePage::startLadder);
    auto* buttons = new QHBoxLayout;
    buttons->addWidget(change);
    buttons->addWidget(ladder);
    buttons->addWidget(m_hide);
    buttons->addStretch(1);
    auto* half = new QWidget(this);
    auto* layout = new QVBoxLayout(half);
    layout->setContentsMargins(6, 0, 0, 0);
    layout->addWidget(m_name);
    layout->addWidget(m_text, 1);
    layout->addLayout(buttons);
    return half;
}

void ExercisePage::refresh()
{
    perform(m_workspace.prompter, [&] {
        m_library = storage::LibraryStore(m_workspace.logbook).all();
        m_ladders = storage::LadderStore(m_workspace.logbook).all();
        fillList();
    });
}

QTreeWidgetItem* ExercisePage::groupOf(int pattern, const QStringList& wanted) const
{
    auto group = std::make_unique<QTreeWidgetItem>(
        QStringList{word(patternWord(static_cast<Pattern>(pattern)))});
    group->setFlags(Qt::ItemIsEnabled);
    for (const Exercise& exercise : m_library.exercises) {
        const bool isShown = static_cast<int>(exercise.pattern) == pattern &&
                             (!exercise.isHidden || m_withHidden->isChecked()) &&
                             matches(exercise, wanted);
        if (!isShown) {
            continue;
        }
        const QString implement = word(implementWord(exercise.implement));
        auto* item = new QTreeWidgetItem(
            group.get(),
            {plain(exercise.name), exercise.isShipped ? implement : tr("%1, own").arg(implement)});
        item->setData(0, kIdRole, static_cast<qlonglong>(exercise.id.value));
    }
    return group->childCount() == 0 ? nullptr : group.release();
}

void ExercisePage::fillList()
{
    const ExerciseId kept = chosenId();
    const QStringList wanted = m_filter->text().split(QLatin1Char(' '), Qt::SkipEmptyParts);
    {
        const QSignalBlocker blocker(m_list);
        m_list->clear();
        int count = 0;
        QFont bold = m_list->font();
        bold.setBold(true);
        for (int pattern = 1; pattern <= kPatterns; ++pattern) {
            QTreeWidgetItem* group = groupOf(pattern, wanted);
            if (group == nullptr) {
                continue;
            }
            m_list->addTopLevelItem(group);
            group->setFont(0, bold);
            group->setFirstColumnSpanned(true);
            group->setExpanded(true);
            count += group->childCount();
        }
        if (QTreeWidgetItem* first = m_list->topLevelItem(0)) {
            m_list->setCurrentItem(first->child(0));
        }
        choose(kept);
        m_count->setText(tr("%n exercises", nullptr, count));
    }
    showChosen();
}

void ExercisePage::choose(ExerciseId exercise)
{
    for (int group = 0; group < m_list->topLevelItemCount(); ++group) {
        QTreeWidgetItem* pattern = m_list->topLevelItem(group);
        for (int row = 0; row < pattern->childCount(); ++row) {
            if (pattern->child(row)->data(0, kIdRole).toLongLong() == exercise.value) {
                m_list->setCurrentItem(pattern->child(row));
            }
        }
    }
}

ExerciseId ExercisePage::chosenId() const
{
    const QTreeWidgetItem* item = m_list->currentItem();
    return item == nullptr ? ExerciseId{} : ExerciseId{item->data(0, kIdRole).toLongLong()};
}

const Exercise* ExercisePage::chosen() const
{
    return m_library.exercise(chosenId());
}

void ExercisePage::showChosen()
{
    const Exercise* exercise = chosen();
    m_hide->setEnabled(exercise != nullptr);
    if (exercise == nullptr) {
        m_name->setText(tr("Nothing matches."));
        m_text->clear();
        return;
    }
    perform(m_workspace.prompter, [&] {
        const auto detail = storage::ExerciseDetailStore(m_workspace.logbook).find(exercise->id);
        m_name->setText(plain(exercise->name));
        m_text->setHtml(exerciseHtml(*exercise, detail, m_library, m_ladders));
        m_hide->setText(exercise->isHidden ? tr("Offer it again") : tr("Hide"));
    });
}

void ExercisePage::startNew()
{
    Exercise exercise;
    exercise.isShipped = false;
    if (const Exercise* like = chosen()) {
        exercise.pattern = like->pattern;
        exercise.implement = like->implement;
        exercise.sidedness = like->sidedness;
        exercise.amount = like->amount;
        exercise.load = like->load;
    }
    m_sides->setCurrentIndex(1);
    m_editor->start(exercise, {}, m_library, m_ladders);
}

void ExercisePage::startChange()
{
    const Exercise* exercise = chosen();
    if (exercise == nullptr) {
        return;
    }
    perform(m_workspace.prompter, [&] {
        const auto detail = storage::ExerciseDetailStore(m_workspace.logbook).find(exercise->id);
        m_sides->setCurrentIndex(1);
        m_editor->start(*exercise, detail, m_library, m_ladders);
    });
}

void ExercisePage::startLadder()
{
    const Exercise* exercise = chosen();
    if (exercise == nullptr || m_ladders.empty()) {
        return;
    }
    m_sides->setCurrentIndex(2);
    m_ladderEditor->start(*exercise, m_library, m_ladders);
}

void ExercisePage::leaveEditor()
{
    m_sides->setCurrentIndex(0);
    m_list->setFocus(Qt::OtherFocusReason);
}

} // namespace levelbar::ui
