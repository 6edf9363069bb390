// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/exercises/exercise_editor.h"

#include "core/base/number.h"
#include "core/member/member.h"
#include "ui/exercises/exercise_text.h"
#include "ui/words.h"

#include <QComboBox>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QSpinBox>
#include <QVBoxLayout>

#include <algorithm>
#include <array>
#include <cmath>

namespace levelbar::ui {

namespace {

constexpr int kLongestName = 60;
constexpr int kMostRatio = 300;
constexpr double kOwnSpread = 15.0; // percent, of a ratio that a gym set: assumed
constexpr const char* kOwnSource = "this gym";

// The numbers of these enumerations run from 1 without a gap.
template <typename T> void fill(QComboBox* box, int count, std::string_view (*wordOf)(T))
{
    for (int value = 1; value <= count; ++value) {
        box->addItem(word(wordOf(static_cast<T>(value))), value);
    }
}

template <typename T> T chosen(const QComboBox* box)
{
    return static_cast<T>(box->currentData().toInt());
}

template <typename T> void choose(QComboBox* box, T value)
{
    box->setCurrentIndex(box->findData(static_cast<int>(value)));
}

QString joined(const std::vector<std::string>& parts)
{
    QStringList all;
    for (const std::string& part : parts) {
        all << plain(part);
    }
    return all.join(QStringLiteral(" | "));
}

std::vector<std::string> parts(const QLineEdit* edit, bool isComma)
{
    QString text = edit->text();
    if (isComma) {
        text.replace(QLatin1Char(','), QLatin1Char('|'));
    }
    return partsOf(text.toStdString());
}

} // namespace

ExerciseEditor::ExerciseEditor(QWidget* parent)
    : QWidget(parent)
    , m_title(new QLabel(this))
    , m_line(new QLabel(this))
    , m_name(new QLineEdit(this))
    , m_pattern(new QComboBox(this))
    , m_implement(new QComboBox(this))
    , m_sides(new QComboBox(this))
    , m_amount(new QComboBox(this))
    , m_load(new QComboBox(this))
    , m_base(new QComboBox(this))
    , m_ratio(new QSpinBox(this))
    , m_cues(new QLineEdit(this))
    , m_cautions(new QLineEdit(this))
    , m_areas(new QLineEdit(this))
    , m_angle(new QLineEdit(this))
    , m_ladder(new QComboBox(this))
    , m_after(new QComboBox(this))
    , m_gate(new QSpinBox(this))
{
    setObjectName(QStringLiteral("exerciseEditor"));
    fill<Pattern>(m_pattern, 10, patternWord);
    fill<Implement>(m_implement, 8, implementWord);
    fill<Sidedness>(m_sides, 3, sidednessWord);
    fill<AmountKind>(m_amount, 3, amountWord);
    fill<LoadKind>(m_load, 3, loadKindWord);
    makeForm();
    connect(m_pattern, &QComboBox::currentIndexChanged, this, &ExerciseEditor::fillLadders);
    connect(m_ladder, &QComboBox::currentIndexChanged, this, &ExerciseEditor::fillRungs);
}

void ExerciseEditor::makeForm()
{
    QFont large = m_title->font();
    large.setPointSizeF(large.pointSizeF() * 1.3);
    large.setBold(true);
    m_title->setFont(large);
    m_line->setObjectName(QStringLiteral("exerciseRefused"));
    m_line->setWordWrap(true);
    m_line->setTextFormat(Qt::PlainText);
    auto* form = new QFormLayout;
    form->setFieldGrowthPolicy(QFormLayout::AllNonFixedFieldsGrow);
    const auto add = [form](const QString& label, QWidget* field, const char* name) {
        field->setObjectName(QLatin1String(name));
        QString plainLabel = label;
        field->setAccessibleName(plainLabel.remove(QLatin1Char('&')));
        form->addRow(label, field);
    };
    add(tr("&Name"), m_name, "exerciseName");
    add(tr("&Pattern"), m_pattern, "exercisePattern");
    add(tr("&Kit"), m_implement, "exerciseImplement");
    add(tr("&Sides"), m_sides, "exerciseSides");
    add(tr("Count&ed in"), m_amount, "exerciseAmount");
    add(tr("&Load"), m_load, "exerciseLoad");
    add(tr("Compared &with"), m_base, "exerciseBase");
    m_ratio->setRange(0, kMostRatio);
    m_ratio->setSpecialValueText(tr("not known"));
    m_ratio->setSuffix(tr(" % of it"));
    add(tr("&Ratio"), m_ratio, "exerciseRatio");
    addTeaching(form);
    add(tr("La&dder"), m_ladder, "exerciseLadder");
    add(tr("A&fter rung"), m_after, "exerciseAfter");
    m_gate->setRange(1, 600);
    add(tr("&Up with"), m_gate, "exerciseGate");
    auto* save = new QPushButton(tr("Keep (Ctrl+Enter)"), this);
    save->setObjectName(QStringLiteral("exerciseKeep"));
    auto* cancel = new QPushButton(tr("Leave it (Esc)"), this);
    cancel->setObjectName(QStringLiteral("exerciseCancel"));
    connect(save, &QPushButton::clicked, this, &ExerciseEditor::save);
    connect(cancel, &QPushButton::clicked, this, &ExerciseEditor::cancelled);
    auto* buttons = new QHBoxLayout;
    buttons->addWidget(save);
    buttons->addWidget(cancel);
    buttons->addStretch(1);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(m_title);
    layout->addLayout(buttons);
    layout->addWidget(m_line);
    layout->addLayout(form);
    layout->addStretch(1);
}

void ExerciseEditor::addTeaching(QFormLayout* form)
{
    const std::array<std::tuple<QString, QLineEdit*, const char*, QString>, 4> rows = {
        {{tr("&Cues"), m_cues, "exerciseCues", tr("in the order of doing, between |")},
         {tr("Cau&tions"), m_cautions, "exerciseCautions", tr("between |")},
         {tr("&Areas"), m_areas, "exerciseAreas", tr("shoulder, elbow, knee, ...")},
         {tr("&Bench angle"), m_angle, "exerciseAngle", tr("degrees; empty without a bench")}}};
    for (const auto& [label, edit, name, hint] : rows) {
        edit->setObjectName(QLatin1String(name));
        edit->setPlaceholderText(hint);
        QString plainLabel = label;
        edit->setAccessibleName(plainLabel.remove(QLatin1Char('&')));
        form->addRow(label, edit);
    }
}

void ExerciseEditor::start(const Exercise& exercise,
                           const ExerciseDetail& detail,
                           const Library& library,
                           const std::vector<Ladder>& ladders)
{
    m_exercise = exercise;
    m_library = library;
    m_ladders = ladders;
    const bool isNew = !exercise.id.isStored();
    m_title->setText(isNew ? tr("A new exercise") : tr("Change %1").arg(plain(exercise.name)));
    m_line->clear();
    m_name->setText(plain(exercise.name));
    choose(m_pattern, exercise.pattern);
    choose(m_implement, exercise.implement);
    choose(m_sides, exercise.sidedness);
    choose(m_amount, exercise.amount);
    choose(m_load, exercise.load);
    m_base->clear();
    m_base->addItem(tr("nothing"), QString());
    for (const Exercise& other : library.exercises) {
        if (!other.isHidden && other.id != exercise.id) {
            m_base->addItem(plain(other.name), plain(other.key));
        }
    }
    m_base->setCurrentIndex(std::max(0, m_base->findData(plain(exercise.baseExerciseKey))));
    m_ratio->setValue(static_cast<int>(std::lround(100.0 * exercise.ratioToBase.value_or(0.0))));
    m_cues->setText(joined(detail.cues));
    m_cautions->setText(joined(detail.cautions));
    QStringList areas;
    for (const std::string& area : detail.areas) {
        areas << plain(area);
    }
    m_areas->setText(areas.join(QStringLiteral(", ")));
    m_angle->setText(detail.benchAngle ? QString::number(*detail.benchAngle) : QString());
    m_gate->setValue(12);
    for (QWidget* field : std::initializer_list<QWidget*>{
             m_pattern, m_implement, m_sides, m_amount, m_load, m_base, m_ratio}) {
        field->setEnabled(isNew || !exercise.isShipped);
    }
    fillLadders();
    m_name->setFocus(Qt::OtherFocusReason);
    m_name->selectAll();
}

// A rung is offered where the exercise has none on the ladder yet.
void ExerciseEditor::fillLadders()
{
    const QSignalBlocker blocker(m_ladder);
    m_ladder->clear();
    m_ladder->addItem(tr("no rung"), -1);
    for (std::size_t i = 0; i < m_ladders.size(); ++i) {
        const Ladder& ladder = m_ladders[i];
        const bool isOnIt =
            std::any_of(ladder.rungs.begin(), ladder.rungs.end(), [this](const Rung& rung) {
                return rung.exerciseKey == m_exercise.key;
            });
        if (ladder.pattern == chosen<Pattern>(m_pattern) && !isOnIt) {
            m_ladder->addItem(plain(ladder.name), static_cast<int>(i));
        }
    }
    m_ladder->setEnabled(m_ladder->count() > 1);
    fillRungs();
}

void ExerciseEditor::fillRungs()
{
    m_after->clear();
    const Ladder* ladder = chosenLadder();
    m_after->setEnabled(ladder != nullptr);
    m_gate->setEnabled(ladder != nullptr);
    if (ladder == nullptr) {
        return;
    }
    m_after->addItem(tr("before the first"));
    for (const Rung& rung : ladder->rungs) {
        m_after->addItem(rungName(rung, m_library));
    }
    m_after->setCurrentIndex(m_after->count() - 1);
}

const Ladder* ExerciseEditor::chosenLadder() const
{
    const int place = m_ladder->currentData().toInt();
    return m_ladder->currentIndex() <= 0 ? nullptr : &m_ladders.at(static_cast<std::size_t>(place));
}

Result<Exercise> ExerciseEditor::typedExercise() const
{
    const auto name = checkName(m_name->text().trimmed().toStdString(), kLongestName);
    if (!name) {
        return tl::unexpected(name.error());
    }
    if (name->empty()) {
        return levelbar::refuse(FaultCode::Empty);
    }
    Exercise exercise = m_exercise;
    exercise.name = *name;
    if (exercise.isShipped && exercise.id.isStored()) {
        return exercise;
    }
    exercise.isShipped = false;
    exercise.pattern = chosen<Pattern>(m_pattern);
    exercise.implement = chosen<Implement>(m_implement);
    exercise.sidedness = chosen<Sidedness>(m_sides);
    exercise.amount = chosen<AmountKind>(m_amount);
    exercise.load = chosen<LoadKind>(m_load);
    exercise.baseExerciseKey = m_base->currentData().toString().toStdString();
    exercise.ratioToBase.reset();
    exercise.ratioSpreadPercent.reset();
    if (!exercise.baseExerciseKey.empty() && m_ratio->value() > 0) {
        exercise.ratioToBase = m_ratio->value() / 100.0;
        exercise.ratioSpreadPercent = kOwnSpread;
    }
    exercise.source = exercise.source.empty() ? kOwnSource : exercise.source;
    return exercise;
}

Result<TypedExercise> ExerciseEditor::typed() const
{
    TypedExercise typed;
    const auto exercise = typedExercise();
    if (!exercise) {
        return tl::unexpected(exercise.error());
    }
    typed.exercise = *exercise;
    ExerciseDetail detail;
    detail.cues = parts(m_cues, false);
    detail.cautions = parts(m_cautions, false);
    detail.areas = parts(m_areas, true);
    if (const QString angle = m_angle->text().trimmed(); !angle.isEmpty()) {
        const auto degrees = parseWhole(angle.toStdString(), -45, 90);
        if (!degrees) {
            return tl::unexpected(degrees.error());
        }
        detail.benchAngle = static_cast<int>(*degrees);
    }
    const auto checked = checkDetail(detail);
    if (!checked) {
        return tl::unexpected(checked.error());
    }
    typed.detail = *checked;
    if (const Ladder* ladder = chosenLadder()) {
        Rung rung;
        rung.exerciseKey = m_exercise.key;
        rung.up.amount = m_gate->value();
        rung.down.fewerThan = std::min(rung.down.fewerThan, rung.up.amount);
        rung.source = kOwnSource;
        typed.ladder = *ladder;
        typed.rung = static_cast<std::size_t>(m_after->currentIndex());
        typed.ladder->rungs.insert(typed.ladder->rungs.begin() + m_after->currentIndex(),
                                   std::move(rung));
    }
    return typed;
}

void ExerciseEditor::save()
{
    const auto exercise = typed();
    if (exercise) {
        Q_EMIT kept(*exercise);
    } else {
        refuse(words(exercise.error()));
    }
}

void ExerciseEditor::refuse(const QString& sentence)
{
    m_line->setText(tr("Not kept: %1.").arg(sentence));
}

void ExerciseEditor::keyPressEvent(QKeyEvent* event)
{
    const bool isEnter = event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter;
    if (isEnter && event->modifiers().testFlag(Qt::ControlModifier)) {
        save();
    } else if (isEnter) {
        focusNextChild();
    } else if (event->key() == Qt::Key_Escape) {
        Q_EMIT cancelled();
    } else {
        QWidget::keyPressEvent(event);
    }
}

} // namespace levelbar::ui
