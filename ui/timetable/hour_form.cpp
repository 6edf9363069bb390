// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/timetable/hour_form.h"

#include "ui/words.h"

#include <QComboBox>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QLocale>
#include <QPushButton>
#include <QSpinBox>

#include <algorithm>

namespace levelbar::ui {

namespace {

constexpr int kMostMinutes = 600;
constexpr int kMostPlaces = 500;
constexpr int kLongestHourText = 100;

template <typename T> T* named(T* widget, const char* name, const QString& accessible)
{
    widget->setObjectName(QLatin1String(name));
    widget->setAccessibleName(accessible);
    return widget;
}

QString isoDayText(std::optional<Day> day)
{
    return day ? plain(isoText(*day)) : QString();
}

} // namespace

HourForm::HourForm(QWidget* parent)
    : QWidget(parent)
    , m_title(new QLabel(this))
    , m_class(named(new QComboBox(this), "hourClass", tr("Class")))
    , m_weekday(named(new QComboBox(this), "hourWeekday", tr("Day of the week")))
    , m_day(named(new QLineEdit(this), "hourDay", tr("Day")))
    , m_start(named(new QLineEdit(this), "hourStart", tr("Begins at")))
    , m_minutes(named(new QSpinBox(this), "hourMinutes", tr("Minutes")))
    , m_room(named(new QLineEdit(this), "hourRoom", tr("Room")))
    , m_instructor(named(new QLineEdit(this), "hourInstructor", tr("Instructor, initials")))
    , m_capacity(named(new QSpinBox(this), "hourCapacity", tr("Places")))
    , m_from(named(new QLineEdit(this), "hourFrom", tr("First day")))
    , m_until(named(new QLineEdit(this), "hourUntil", tr("Last day")))
    , m_said(named(new QLabel(this), "hourSaid", tr("What is wrong")))
    , m_remove(named(new QPushButton(tr("Remove"), this), "hourRemove", tr("Remove")))
    , m_form(new QFormLayout)
{
    setObjectName(QStringLiteral("hourForm"));
    m_class->setEditable(true);
    for (int day = 1; day <= 7; ++day) {
        m_weekday->addItem(QLocale().dayName(day));
    }
    m_minutes->setRange(1, kMostMinutes);
    m_capacity->setRange(0, kMostPlaces);
    m_capacity->setSpecialValueText(tr("no limit"));
    m_start->setPlaceholderText(tr("18:00"));
    for (QLineEdit* edit : {m_day, m_from, m_until}) {
        edit->setPlaceholderText(tr("2026-11-25"));
    }
    for (QLineEdit* edit : {m_room, m_instructor}) {
        edit->setMaxLength(kLongestHourText);
    }
    makeLayout();
}

void HourForm::makeLayout()
{
    QFont bold = m_title->font();
    bold.setBold(true);
    m_title->setFont(bold);
    m_said->setWordWrap(true);
    m_form->addRow(tr("&Class"), m_class);
    m_form->addRow(tr("&Day"), m_weekday);
    m_form->addRow(tr("D&ate"), m_day);
    m_form->addRow(tr("&Begins at"), m_start);
    m_form->addRow(tr("&Minutes"), m_minutes);
    m_form->addRow(tr("&Room"), m_room);
    m_form->addRow(tr("&Instructor"), m_instructor);
    m_form->addRow(tr("&Places"), m_capacity);
    m_form->addRow(tr("F&irst day, if any"), m_from);
    m_form->addRow(tr("&Last day, if any"), m_until);
    auto* keepButton = named(new QPushButton(tr("&Keep"), this), "hourKeep", tr("Keep"));
    auto* close = named(new QPushButton(tr("Cl&ose"), this), "hourClose", tr("Close"));
    auto* buttons = new QHBoxLayout;
    buttons->addWidget(keepButton);
    buttons->addWidget(m_remove);
    buttons->addWidget(close);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(m_title);
    layout->addLayout(m_form);
    layout->addWidget(m_said);
    layout->addLayout(buttons);
    layout->addStretch(1);
    connect(keepButton, &QPushButton::clicked, this, &HourForm::keep);
    connect(close, &QPushButton::clicked, this, &HourForm::closed);
    connect(m_remove, &QPushButton::clicked, this, [this] {
        if (m_slot) {
            Q_EMIT removeWanted(*m_slot);
        }
    });
    for (QLineEdit* edit : {m_day, m_start, m_room, m_instructor, m_from, m_until}) {
        connect(edit, &QLineEdit::returnPressed, this, &HourForm::keep);
    }
}

void HourForm::setClasses(const std::vector<storage::GroupClass>& classes)
{
    if (classes == m_classes) {
        return;
    }
    const QString typed = m_class->currentText();
    m_classes = classes;
    m_class->clear();
    for (const storage::GroupClass& one : classes) {
        m_class->addItem(plain(one.name));
    }
    m_class->setCurrentText(typed);
}

void HourForm::openNew(bool isWeekly, Day day)
{
    m_slot.reset();
    m_isWeekly = isWeekly;
    m_title->setText(isWeekly ? tr("A class every week") : tr("One meeting more"));
    WeeklySlot slot;
    slot.weekday = isoWeekday(day);
    fill(slot);
    m_start->clear();
    m_day->setText(isoDayText(day));
    m_class->setCurrentIndex(m_classes.empty() ? -1 : 0);
    m_class->setFocus();
}

void HourForm::openSlot(const storage::StoredSlot& stored)
{
    m_slot = stored.id;
    m_isWeekly = true;
    m_title->setText(tr("Change the class of every week"));
    fill(stored.slot);
    const auto known = std::find_if(m_classes.begin(), m_classes.end(), [&](const auto& one) {
        return one.id == stored.slot.groupClass;
    });
    m_class->setCurrentIndex(static_cast<int>(known - m_classes.begin()));
    m_start->setFocus();
}

void HourForm::fill(const WeeklySlot& slot)
{
    m_weekday->setCurrentIndex(slot.weekday - 1);
    m_start->setText(plain(text(slot.start)));
    m_minutes->setValue(slot.plan.minutes);
    m_room->setText(plain(slot.plan.room));
    m_instructor->setText(plain(slot.plan.instructor));
    m_capacity->setValue(slot.plan.capacity.value_or(0));
    m_from->setText(isoDayText(slot.from));
    m_until->setText(isoDayText(slot.until));
    m_said->clear();
    m_remove->setVisible(m_slot.has_value());
    for (QWidget* weekly : {static_cast<QWidget*>(m_weekday),
                            static_cast<QWidget*>(m_from),
                            static_cast<QWidget*>(m_until)}) {
        weekly->setVisible(m_isWeekly);
        m_form->labelForField(weekly)->setVisible(m_isWeekly);
    }
    m_day->setVisible(!m_isWeekly);
    m_form->labelForField(m_day)->setVisible(!m_isWeekly);
}

void HourForm::refuse(const QString& sentence)
{
    m_said->setText(sentence);
}

bool HourForm::takeDay(const QLineEdit& edit, std::optional<Day>& target)
{
    const std::string typed = edit.text().trimmed().toStdString();
    if (typed.empty()) {
        return true;
    }
    const auto day = parseDay(typed);
    if (!day) {
        refuse(words(day.error()));
        return false;
    }
    target = *day;
    return true;
}

void HourForm::keep()
{
    TypedHour typed;
    typed.className = m_class->currentText().trimmed();
    typed.isWeekly = m_isWeekly;
    WeeklySlot& slot = typed.slot;
    slot.weekday = m_weekday->currentIndex() + 1;
    const auto start = parseTimeOfDay(m_start->text().trimmed().toStdString());
    if (typed.className.isEmpty()) {
        refuse(tr("Which class? Choose one, or type the name of a new one."));
        return;
    }
    if (!start) {
        refuse(words(start.error()));
        return;
    }
    slot.start = *start;
    slot.plan.minutes = m_minutes->value();
    slot.plan.room = m_room->text().trimmed().toStdString();
    slot.plan.instructor = m_instructor->text().trimmed().toStdString();
    if (m_capacity->value() > 0) {
        slot.plan.capacity = m_capacity->value();
    }
    std::optional<Day> day;
    if (m_isWeekly) {
        if (!takeDay(*m_from, slot.from) || !takeDay(*m_until, slot.until)) {
            return;
        }
    } else if (!takeDay(*m_day, day)) {
        return;
    } else if (!day) {
        refuse(tr("On which day? Write it like 2026-11-25."));
        return;
    }
    typed.day = day.value_or(Day{});
    m_said->clear();
    Q_EMIT kept(typed);
}

} // namespace levelbar::ui
