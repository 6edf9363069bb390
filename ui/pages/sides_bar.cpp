// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/sides_bar.h"

#include "ui/words.h"

#include <QCheckBox>
#include <QComboBox>
#include <QDoubleSpinBox>
#include <QGridLayout>
#include <QLabel>

#include <algorithm>
#include <cmath>

namespace levelbar::ui {

namespace {

// Fills a choice whose first line stands for all; keeps what was chosen.
void fill(QComboBox* box, const QString& everyone, const QStringList& names)
{
    const QString before = box->currentIndex() > 0 ? box->currentText() : QString();
    const QSignalBlocker blocker(box);
    box->clear();
    box->addItem(everyone);
    box->addItems(names);
    box->setCurrentIndex(before.isEmpty() ? 0 : std::max(0, box->findText(before)));
}

} // namespace

SidesBar::SidesBar(QWidget* parent)
    : QWidget(parent)
    , m_measure(new QComboBox(this))
    , m_threshold(new QDoubleSpinBox(this))
    , m_class(new QComboBox(this))
    , m_group(new QComboBox(this))
    , m_order(new QComboBox(this))
    , m_measureOnly(new QCheckBox(tr("&Lists of this measure only"), this))
{
    const auto name = [](QWidget* widget, const char* object, const QString& accessible) {
        widget->setObjectName(QLatin1String(object));
        widget->setAccessibleName(accessible);
    };
    name(m_measure, "sidesMeasure", tr("Measure"));
    name(m_threshold, "sidesThreshold", tr("From which difference on to work on it, in percent"));
    name(m_class, "sidesClass", tr("Class"));
    name(m_group, "sidesGroup", tr("Group"));
    name(m_order, "sidesOrder", tr("Order of the rows"));
    name(m_measureOnly, "sidesMeasureOnly", tr("Lists of this measure only"));
    m_threshold->setRange(kLeastThreshold, kMostThreshold);
    m_threshold->setDecimals(0);
    m_threshold->setSuffix(tr(" %"));
    m_threshold->setKeyboardTracking(false);
    m_threshold->setToolTip(tr("From which difference on to work on it, for everybody"));
    m_order->addItem(tr("By difference"));
    m_order->addItem(tr("By certainty"));
    makeLayout();
    for (QComboBox* box : {m_measure, m_class, m_group, m_order}) {
        connect(box, &QComboBox::currentIndexChanged, this, &SidesBar::changed);
    }
    connect(m_measureOnly, &QCheckBox::toggled, this, &SidesBar::changed);
    connect(m_threshold, &QDoubleSpinBox::valueChanged, this, [this](double percent) {
        if (percent != m_shownThreshold) {
            Q_EMIT thresholdWanted(percent);
        }
    });
}

void SidesBar::makeLayout()
{
    auto* layout = new QGridLayout(this);
    layout->setContentsMargins(0, 0, 0, 4);
    auto* limit = new QLabel(tr("Work on it &from"), this);
    limit->setBuddy(m_threshold);
    m_measure->setMinimumContentsLength(24);
    layout->addWidget(m_measure, 0, 0, 1, 2);
    layout->addWidget(limit, 0, 2, Qt::AlignRight);
    layout->addWidget(m_threshold, 0, 3);
    layout->addWidget(m_order, 1, 0);
    layout->addWidget(m_class, 1, 1);
    layout->addWidget(m_group, 1, 2);
    layout->addWidget(m_measureOnly, 1, 3);
    for (int column = 0; column < 4; ++column) {
        layout->setColumnStretch(column, 1);
    }
    for (QComboBox* box : {m_class, m_group, m_order}) {
        box->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
        box->setMinimumContentsLength(10);
    }
}

void SidesBar::setChoices(const Review& review,
                          const std::map<QString, std::set<MemberId>>& classes)
{
    m_classes = classes;
    const QString before = m_measure->currentText();
    {
        const QSignalBlocker blocker(m_measure);
        m_measure->clear();
        for (const std::string& name : measuresOf(review)) {
            m_measure->addItem(plain(name));
        }
        m_measure->setCurrentIndex(std::max(0, m_measure->findText(before)));
    }
    QStringList names;
    for (const auto& [name, members] : classes) {
        names << name;
    }
    fill(m_class, tr("All classes"), names);
    std::set<std::string> groups;
    for (const MemberReview& member : review.members) {
        if (!member.member.group.empty()) {
            groups.insert(member.member.group);
        }
    }
    QStringList groupNames;
    for (const std::string& group : groups) {
        groupNames << plain(group);
    }
    fill(m_group, tr("All groups"), groupNames);
}

void SidesBar::setThreshold(double percent)
{
    m_shownThreshold = std::round(percent);
    const QSignalBlocker blocker(m_threshold);
    m_threshold->setValue(m_shownThreshold);
}

void SidesBar::chooseMeasure(const std::string& name)
{
    const int at = m_measure->findText(plain(name));
    if (at >= 0) {
        m_measure->setCurrentIndex(at);
    }
}

std::string SidesBar::measure() const
{
    return m_measure->currentText().toStdString();
}

SidesOrder SidesBar::order() const
{
    return m_order->currentIndex() == 1 ? SidesOrder::ByCertainty : SidesOrder::ByDifference;
}

bool SidesBar::isMeasureOnly() const
{
    return m_measureOnly->isChecked();
}

bool SidesBar::accepts(const Member& member) const
{
    if (m_group->currentIndex() > 0 && m_group->currentText() != plain(member.group)) {
        return false;
    }
    if (m_class->currentIndex() <= 0) {
        return true;
    }
    const auto found = m_classes.find(m_class->currentText());
    return found != m_classes.end() && found->second.contains(member.id);
}

} // namespace levelbar::ui
