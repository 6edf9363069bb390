// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/floor/floor_bar.h"

#include <QComboBox>
#include <QDateEdit>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QSettings>
#include <QSignalBlocker>
#include <QSpinBox>
#include <QVBoxLayout>

namespace levelbar::ui {

namespace {

constexpr qint64 kJulianOfEpoch = 2440588; // 1970-01-01 as a Julian day number
constexpr int kLongestInitials = 8;
constexpr int kLongestClassName = 100;
constexpr int kMostRacks = 20;
const char* const kInitialsSetting = "floor/initials";
const char* const kRacksSetting = "floor/racks";

QDate dateOf(Day day)
{
    return QDate::fromJulianDay(day.sinceEpoch + kJulianOfEpoch);
}

QLabel* labelFor(const QString& text, QWidget* buddy)
{
    auto* label = new QLabel(text);
    label->setBuddy(buddy);
    return label;
}

} // namespace

FloorBar::FloorBar(Day today, QWidget* parent)
    : QWidget(parent)
    , m_class(new QComboBox)
    , m_day(new QDateEdit(dateOf(today)))
    , m_initials(new QLineEdit)
    , m_racks(new QSpinBox)
    , m_new(new QPushButton(tr("&New class…")))
    , m_template(new QPushButton(tr("&Template")))
    , m_newName(new QLineEdit)
{
    m_class->setObjectName(QStringLiteral("floorClass"));
    m_class->setAccessibleName(tr("Class"));
    m_class->setMinimumContentsLength(18);
    m_day->setObjectName(QStringLiteral("floorDay"));
    m_day->setAccessibleName(tr("Day"));
    m_day->setCalendarPopup(true);
    m_day->setKeyboardTracking(false); // a half-typed date is not a day to look up
    m_day->setDateRange(QDate(1900, 1, 1), QDate(2100, 12, 31));
    m_day->setMinimumWidth(fontMetrics().horizontalAdvance(QStringLiteral("Wed 30 Sep 2026")) + 64);
    m_day->setDisplayFormat(QStringLiteral("ddd d MMM yyyy"));
    m_new->setObjectName(QStringLiteral("floorNewClass"));
    m_new->setCheckable(true);
    m_template->setObjectName(QStringLiteral("floorTemplate"));
    m_template->setCheckable(true);
    buildInitials();
    buildRacks();

    auto* row = new QHBoxLayout;
    row->addWidget(labelFor(tr("&Class"), m_class));
    row->addWidget(m_class);
    row->addWidget(m_new);
    row->addSpacing(12);
    row->addWidget(labelFor(tr("&Day"), m_day));
    row->addWidget(m_day);
    row->addSpacing(12);
    row->addWidget(labelFor(tr("&Racks"), m_racks));
    row->addWidget(m_racks);
    row->addStretch(1);
    row->addWidget(labelFor(tr("Keyed &by"), m_initials));
    row->addWidget(m_initials);
    auto* wall = new QPushButton(tr("Wa&ll"));
    wall->setObjectName(QStringLiteral("floorWall"));
    wall->setToolTip(tr("Opens or closes the window for the wall (F11); F9 runs its timer"));
    connect(wall, &QPushButton::clicked, this, &FloorBar::wallWanted);
    row->addWidget(wall);
    auto* closing = new QPushButton(tr("&End of class"));
    closing->setObjectName(QStringLiteral("floorClosing"));
    closing->setToolTip(tr("What is known, and how hard it was (F8)"));
    connect(closing, &QPushButton::clicked, this, &FloorBar::closingWanted);
    row->addWidget(closing);
    row->addWidget(m_template);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addLayout(row);
    layout->addWidget(buildNewClass());
    connect(m_class, &QComboBox::currentIndexChanged, this, &FloorBar::chosen);
    connect(m_day, &QDateEdit::dateChanged, this, &FloorBar::chosen);
}

void FloorBar::buildInitials()
{
    m_initials->setObjectName(QStringLiteral("floorInitials"));
    m_initials->setAccessibleName(tr("Initials of who keys"));
    m_initials->setPlaceholderText(tr("initials"));
    m_initials->setMaxLength(kLongestInitials);
    m_initials->setFixedWidth(fontMetrics().horizontalAdvance(QStringLiteral("initials")) + 24);
    m_initials->setText(QSettings().value(QLatin1String(kInitialsSetting)).toString());
    connect(m_initials, &QLineEdit::textEdited, this, [this] {
        QSettings().setValue(QLatin1String(kInitialsSetting), m_initials->text().trimmed());
        Q_EMIT initialsChanged(initials());
    });
}

void FloorBar::buildRacks()
{
    m_racks->setObjectName(QStringLiteral("floorRacks"));
    m_racks->setAccessibleName(tr("Racks that the class shares"));
    m_racks->setToolTip(tr("People are shared among the racks so that few plates move. Who has "
                           "lifted stays where they are."));
    m_racks->setRange(1, kMostRacks);
    m_racks->setKeyboardTracking(false);
    m_racks->setValue(QSettings().value(QLatin1String(kRacksSetting), 1).toInt());
    connect(m_racks, &QSpinBox::valueChanged, this, [this](int racks) {
        QSettings().setValue(QLatin1String(kRacksSetting), racks);
        Q_EMIT racksChanged(racks);
    });
}

void FloorBar::showRacks(int racks)
{
    const QSignalBlocker quiet(m_racks);
    m_racks->setValue(racks);
}

int FloorBar::racks() const
{
    return m_racks->value();
}

QWidget* FloorBar::buildNewClass()
{
    m_newBox = new QWidget;
    m_newName->setObjectName(QStringLiteral("floorNewClassName"));
    m_newName->setAccessibleName(tr("Name of the new class"));
    m_newName->setPlaceholderText(tr("Name of the new class"));
    m_newName->setMaxLength(kLongestClassName);
    auto* add = new QPushButton(tr("Add class"));
    add->setObjectName(QStringLiteral("floorAddClass"));
    auto* row = new QHBoxLayout(m_newBox);
    row->setContentsMargins(0, 0, 0, 0);
    row->addWidget(m_newName, 1);
    row->addWidget(add);
    m_newBox->hide();
    const auto ask = [this] {
        const QString name = m_newName->text().simplified();
        if (!name.isEmpty()) {
            Q_EMIT classWanted(name);
        }
    };
    connect(add, &QPushButton::clicked, this, ask);
    connect(m_newName, &QLineEdit::returnPressed, this, ask);
    connect(m_new, &QPushButton::toggled, this, [this](bool isOpen) {
        m_newBox->setVisible(isOpen);
        if (isOpen) {
            m_newName->setFocus();
        }
    });
    return m_newBox;
}

void FloorBar::closeNewClass()
{
    m_newName->clear();
    m_new->setChecked(false);
}

void FloorBar::setClasses(const std::vector<storage::GroupClass>& classes)
{
    const auto before = chosenClass();
    const QSignalBlocker blocker(m_class);
    m_class->clear();
    for (const storage::GroupClass& groupClass : classes) {
        m_class->addItem(QString::fromStdString(groupClass.name),
                         QVariant::fromValue(qlonglong{groupClass.id.value}));
    }
    m_class->setEnabled(!classes.empty());
    if (classes.empty()) {
        m_new->setChecked(true);
    }
    if (before) {
        const int place = m_class->findData(QVariant::fromValue(qlonglong{before->value}));
        m_class->setCurrentIndex(place < 0 && !classes.empty() ? 0 : place);
    }
}

void FloorBar::choose(ClassId groupClass, Day day)
{
    m_day->setDate(dateOf(day));
    m_class->setCurrentIndex(m_class->findData(QVariant::fromValue(qlonglong{groupClass.value})));
}

std::optional<ClassId> FloorBar::chosenClass() const
{
    const QVariant id = m_class->currentData();
    return id.isValid() ? std::optional(ClassId{id.toLongLong()}) : std::nullopt;
}

Day FloorBar::chosenDay() const
{
    return Day{static_cast<std::int32_t>(m_day->date().toJulianDay() - kJulianOfEpoch)};
}

std::string FloorBar::initials() const
{
    return m_initials->text().trimmed().toStdString();
}

} // namespace levelbar::ui
