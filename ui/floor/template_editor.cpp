// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/floor/template_editor.h"

#include "ui/floor/floor_words.h"

#include <QFormLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>
#include <QSignalBlocker>
#include <QSpinBox>
#include <QVBoxLayout>

#include <algorithm>

namespace levelbar::ui {

namespace {

constexpr int kMostSets = 20;
constexpr int kMostReps = 200;
constexpr int kMostFound = 12;

bool isEnter(int key)
{
    return key == Qt::Key_Return || key == Qt::Key_Enter;
}

} // namespace

TemplateEditor::TemplateEditor(QWidget* parent)
    : QWidget(parent)
    , m_notice(new QLabel)
    , m_list(new QListWidget)
    , m_sets(new QSpinBox)
    , m_reps(new QSpinBox)
    , m_filter(new QLineEdit)
    , m_found(new QListWidget)
    , m_keep(new QPushButton(tr("&Keep template")))
{
    setObjectName(QStringLiteral("templateEditor"));
    auto* title = new QLabel(tr("What the class does"));
    title->setBuddy(m_list);
    m_notice->setObjectName(QStringLiteral("templateNotice"));
    m_notice->setWordWrap(true);
    m_list->setObjectName(QStringLiteral("templateList"));
    m_list->setAccessibleName(tr("Exercises of the class, in order"));
    m_list->setToolTip(tr("Alt+Up and Alt+Down move an exercise, Delete takes it out."));
    m_list->installEventFilter(this);

    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(title);
    layout->addWidget(m_notice);
    layout->addWidget(m_list, 2);
    layout->addWidget(buildFacts());
    layout->addWidget(buildButtons());
    layout->addWidget(buildAdding(), 1);
    m_keep->setObjectName(QStringLiteral("templateKeep"));
    layout->addWidget(m_keep);
    connect(m_list, &QListWidget::currentRowChanged, this, &TemplateEditor::showCurrent);
    connect(m_keep, &QPushButton::clicked, this, [this] { Q_EMIT kept(m_items); });
    showItems(-1);
}

QWidget* TemplateEditor::buildFacts()
{
    auto* box = new QWidget;
    auto* form = new QFormLayout(box);
    form->setContentsMargins(0, 0, 0, 0);
    m_sets->setObjectName(QStringLiteral("templateSets"));
    m_sets->setAccessibleName(tr("Sets"));
    m_sets->setRange(1, kMostSets);
    m_reps->setObjectName(QStringLiteral("templateReps"));
    m_reps->setAccessibleName(tr("Reps aimed at"));
    m_reps->setRange(0, kMostReps);
    m_reps->setSpecialValueText(tr("as last time"));
    form->addRow(tr("&Sets"), m_sets);
    form->addRow(tr("&Reps"), m_reps);
    connect(m_sets, &QSpinBox::valueChanged, this, &TemplateEditor::changeCurrent);
    connect(m_reps, &QSpinBox::valueChanged, this, &TemplateEditor::changeCurrent);
    return box;
}

QWidget* TemplateEditor::buildButtons()
{
    auto* box = new QWidget;
    auto* row = new QHBoxLayout(box);
    row->setContentsMargins(0, 0, 0, 0);
    const auto addButton = [&](const QString& text, const QString& name, auto&& action) {
        auto* button = new QPushButton(text);
        button->setObjectName(name);
        row->addWidget(button);
        connect(button, &QPushButton::clicked, this, action);
    };
    addButton(tr("Up"), QStringLiteral("templateUp"), [this] { move(-1); });
    addButton(tr("Down"), QStringLiteral("templateDown"), [this] { move(1); });
    addButton(tr("Take out"), QStringLiteral("templateRemove"), [this] { removeCurrent(); });
    return box;
}

QWidget* TemplateEditor::buildAdding()
{
    auto* box = new QWidget;
    auto* column = new QVBoxLayout(box);
    column->setContentsMargins(0, 0, 0, 0);
    auto* label = new QLabel(tr("&Add exercise"));
    label->setBuddy(m_filter);
    m_filter->setObjectName(QStringLiteral("templateFilter"));
    m_filter->setAccessibleName(tr("Find an exercise to add"));
    m_filter->setPlaceholderText(tr("Type a part of its name"));
    m_filter->installEventFilter(this);
    m_found->setObjectName(QStringLiteral("templateFound"));
    m_found->setAccessibleName(tr("Exercises found"));
    m_found->installEventFilter(this);
    column->addWidget(label);
    column->addWidget(m_filter);
    column->addWidget(m_found, 1);
    connect(m_filter, &QLineEdit::textChanged, this, &TemplateEditor::findExercises);
    connect(m_found, &QListWidget::itemDoubleClicked, this, [this] {
        addFound(m_found->currentRow());
    });
    return box;
}

void TemplateEditor::setTemplate(const FloorReference& reference,
                                 ClassId groupClass,
                                 const FloorTemplate& items)
{
    m_reference = &reference;
    const bool isOther = groupClass != m_class;
    if (m_isEdited && !isOther) {
        return;
    }
    const int row = isOther ? 0 : std::max(m_list->currentRow(), 0);
    m_class = groupClass;
    m_items = items.items;
    m_isEdited = false;
    if (items.isProposed) {
        m_notice->setText(
            tr("Proposed from the last %n meetings; not kept yet.", nullptr, items.meetingsSeen));
    } else {
        m_notice->setText(m_items.empty() ? tr("Nothing yet: add the exercises of this class.")
                                          : QString());
    }
    m_notice->setVisible(!m_notice->text().isEmpty());
    showItems(row);
    m_keep->setEnabled(items.isProposed);
}

QString TemplateEditor::lineOf(const TemplateItem& item) const
{
    const QString name = exerciseName(*m_reference, item.exercise);
    const QString sets = tr("%n sets", nullptr, item.sets);
    return item.reps ? tr("%1: %2 of %3").arg(name, sets, QLocale().toString(*item.reps))
                     : tr("%1: %2").arg(name, sets);
}

void TemplateEditor::showItems(int current)
{
    const QSignalBlocker blocker(m_list);
    m_list->clear();
    for (const TemplateItem& item : m_items) {
        m_list->addItem(lineOf(item));
    }
    m_list->setCurrentRow(std::min(current, m_list->count() - 1));
    showCurrent();
}

TemplateItem* TemplateEditor::current()
{
    const int row = m_list->currentRow();
    return row < 0 ? nullptr : &m_items[static_cast<std::size_t>(row)];
}

void TemplateEditor::showCurrent()
{
    const QSignalBlocker sets(m_sets);
    const QSignalBlocker reps(m_reps);
    const TemplateItem* item = current();
    const Exercise* exercise =
        item == nullptr ? nullptr : m_reference->library.exercise(item->exercise);
    m_sets->setEnabled(item != nullptr);
    // A target in seconds or metres is not a number of reps.
    m_reps->setEnabled(exercise != nullptr && exercise->amount == AmountKind::Reps);
    m_sets->setValue(item == nullptr ? 1 : item->sets);
    m_reps->setValue(item == nullptr ? 0 : item->reps.value_or(0));
}

void TemplateEditor::edited(int current)
{
    m_isEdited = true;
    m_keep->setEnabled(true);
    showItems(current);
}

void TemplateEditor::changeCurrent()
{
    if (TemplateItem* item = current()) {
        item->sets = m_sets->value();
        item->reps = m_reps->value() == 0 ? std::nullopt : std::optional(m_reps->value());
        edited(m_list->currentRow());
    }
}

void TemplateEditor::move(int step)
{
    const int from = m_list->currentRow();
    const int to = from + step;
    if (from < 0 || to < 0 || to >= m_list->count()) {
        return;
    }
    std::swap(m_items[static_cast<std::size_t>(from)], m_items[static_cast<std::size_t>(to)]);
    edited(to);
}

void TemplateEditor::removeCurrent()
{
    const int row = m_list->currentRow();
    if (row >= 0) {
        m_items.erase(m_items.begin() + row);
        edited(row);
    }
}

void TemplateEditor::findExercises(const QString& text)
{
    m_found->clear();
    const QString wanted = text.trimmed();
    if (wanted.isEmpty() || m_reference == nullptr) {
        return;
    }
    for (const Exercise& exercise : m_reference->library.exercises) {
        const QString name = QString::fromStdString(exercise.name);
        if (exercise.isHidden || !name.contains(wanted, Qt::CaseInsensitive)) {
            continue;
        }
        auto* line = new QListWidgetItem(name, m_found);
        line->setData(Qt::UserRole, QVariant::fromValue(qlonglong{exercise.id.value}));
        if (m_found->count() == kMostFound) {
            break;
        }
    }
    m_found->setCurrentRow(0);
}

void TemplateEditor::addFound(int row)
{
    if (const QListWidgetItem* line = m_found->item(row)) {
        add(ExerciseId{line->data(Qt::UserRole).toLongLong()});
        m_filter->clear();
        m_filter->setFocus();
    }
}

void TemplateEditor::add(ExerciseId exercise)
{
    const auto known = std::find_if(m_items.begin(), m_items.end(), [&](const auto& item) {
        return item.exercise == exercise;
    });
    if (known != m_items.end()) {
        showItems(static_cast<int>(known - m_items.begin())); // once is enough: more sets instead
        return;
    }
    m_items.push_back({exercise, 3, std::nullopt});
    edited(static_cast<int>(m_items.size()) - 1);
}

bool TemplateEditor::eventFilter(QObject* watched, QEvent* event)
{
    if (event->type() != QEvent::KeyPress) {
        return QWidget::eventFilter(watched, event);
    }
    const auto* key = static_cast<QKeyEvent*>(event);
    if (watched == m_list) {
        const bool isMove = key->modifiers().testFlag(Qt::AltModifier);
        if (isMove && (key->key() == Qt::Key_Up || key->key() == Qt::Key_Down)) {
            move(key->key() == Qt::Key_Up ? -1 : 1);
            return true;
        }
        if (key->key() == Qt::Key_Delete) {
            removeCurrent();
            return true;
        }
        return false;
    }
    if (isEnter(key->key())) {
        addFound(std::max(m_found->currentRow(), 0));
        return true;
    }
    if (watched == m_filter && key->key() == Qt::Key_Down && m_found->count() > 0) {
        m_found->setFocus();
        return true;
    }
    return false;
}

} // namespace levelbar::ui
