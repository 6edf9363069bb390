// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/timetable/days_form.h"

#include "ui/words.h"

#include <QComboBox>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>
#include <QShortcut>
#include <QVBoxLayout>

namespace levelbar::ui {

namespace {

constexpr int kLongestName = 100;

QString lineOf(const storage::StoredDays& stored)
{
    const DayRange& days = stored.days.days;
    const QString name = plain(stored.days.name);
    const QString range =
        days.first == days.last
            ? plain(isoText(days.first))
            : DaysForm::tr("%1 to %2").arg(plain(isoText(days.first)), plain(isoText(days.last)));
    return stored.kind == storage::DaysKind::Term
               ? DaysForm::tr("Term: %1, %2").arg(name, range)
               : DaysForm::tr("Holiday: %1, %2").arg(name, range);
}

} // namespace

DaysForm::DaysForm(QWidget* parent)
    : QWidget(parent)
    , m_list(new QListWidget(this))
    , m_kind(new QComboBox(this))
    , m_name(new QLineEdit(this))
    , m_first(new QLineEdit(this))
    , m_last(new QLineEdit(this))
    , m_said(new QLabel(this))
{
    setObjectName(QStringLiteral("daysForm"));
    m_list->setObjectName(QStringLiteral("daysList"));
    m_list->setAccessibleName(tr("Terms and holidays"));
    m_list->setWordWrap(true);
    m_kind->setObjectName(QStringLiteral("daysKind"));
    m_kind->setAccessibleName(tr("Term or holiday"));
    m_kind->addItem(tr("Holiday"), static_cast<int>(storage::DaysKind::Holiday));
    m_kind->addItem(tr("Term"), static_cast<int>(storage::DaysKind::Term));
    m_name->setObjectName(QStringLiteral("daysName"));
    m_name->setAccessibleName(tr("Name"));
    m_name->setMaxLength(kLongestName);
    m_first->setObjectName(QStringLiteral("daysFirst"));
    m_first->setAccessibleName(tr("First day"));
    m_last->setObjectName(QStringLiteral("daysLast"));
    m_last->setAccessibleName(tr("Last day"));
    m_last->setPlaceholderText(tr("the same day"));
    m_said->setObjectName(QStringLiteral("daysSaid"));
    m_said->setWordWrap(true);
    makeLayout();
}

void DaysForm::makeLayout()
{
    auto* title = new QLabel(tr("Terms and holidays"), this);
    QFont bold = title->font();
    bold.setBold(true);
    title->setFont(bold);
    auto* hint =
        new QLabel(tr("Weekly classes meet in a term, on no holiday. Without any term they "
                      "meet all the year."),
                   this);
    hint->setWordWrap(true);
    auto* form = new QFormLayout;
    form->addRow(tr("&Kind"), m_kind);
    form->addRow(tr("&Name"), m_name);
    form->addRow(tr("F&irst day"), m_first);
    form->addRow(tr("&Last day"), m_last);
    auto* addButton = new QPushButton(tr("&Add"), this);
    addButton->setObjectName(QStringLiteral("daysAdd"));
    auto* remove = new QPushButton(tr("&Remove"), this);
    remove->setObjectName(QStringLiteral("daysRemove"));
    auto* close = new QPushButton(tr("Cl&ose"), this);
    close->setObjectName(QStringLiteral("daysClose"));
    auto* buttons = new QHBoxLayout;
    buttons->addWidget(addButton);
    buttons->addWidget(remove);
    buttons->addWidget(close);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(title);
    layout->addWidget(hint);
    layout->addWidget(m_list, 1);
    layout->addLayout(form);
    layout->addWidget(m_said);
    layout->addLayout(buttons);
    auto* deleteKey = new QShortcut(QKeySequence::Delete, m_list);
    deleteKey->setContext(Qt::WidgetShortcut);
    connect(deleteKey, &QShortcut::activated, this, &DaysForm::removeChosen);
    connect(addButton, &QPushButton::clicked, this, &DaysForm::add);
    connect(remove, &QPushButton::clicked, this, &DaysForm::removeChosen);
    connect(close, &QPushButton::clicked, this, &DaysForm::closed);
    for (QLineEdit* edit : {m_name, m_first, m_last}) {
        connect(edit, &QLineEdit::returnPressed, this, &DaysForm::add);
    }
}

void DaysForm::setDays(std::vector<storage::StoredDays> days)
{
    m_days = std::move(days);
    m_list->clear();
    for (const storage::StoredDays& stored : m_days) {
        m_list->addItem(lineOf(stored));
    }
}

void DaysForm::open(Day day)
{
    m_name->clear();
    m_first->setText(plain(isoText(day)));
    m_last->clear();
    m_said->clear();
    m_name->setFocus();
}

void DaysForm::refuse(const QString& sentence)
{
    m_said->setText(sentence);
}

void DaysForm::add()
{
    NamedDays days;
    days.name = m_name->text().trimmed().toStdString();
    if (days.name.empty()) {
        refuse(tr("It needs a name."));
        return;
    }
    const auto first = parseDay(m_first->text().trimmed().toStdString());
    const std::string typed = m_last->text().trimmed().toStdString();
    const auto last = typed.empty() ? first : parseDay(typed);
    if (!first || !last) {
        refuse(words(first ? last.error() : first.error()));
        return;
    }
    days.days = {*first, *last};
    m_said->clear();
    Q_EMIT added(static_cast<storage::DaysKind>(m_kind->currentData().toInt()), days);
}

void DaysForm::removeChosen()
{
    const int row = m_list->currentRow();
    if (row >= 0 && static_cast<std::size_t>(row) < m_days.size()) {
        Q_EMIT removeWanted(m_days[static_cast<std::size_t>(row)].id);
    }
}

} // namespace levelbar::ui
