// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/review/figures.h"
#include "ui/background_review.h"

#include <QWidget>

#include <map>
#include <set>

class QCheckBox;
class QComboBox;
class QDoubleSpinBox;

namespace levelbar::ui {

// The strip above the sides chart: which measure and its threshold, whose, and in which order.
class SidesBar : public QWidget {
    Q_OBJECT

public:
    explicit SidesBar(QWidget* parent = nullptr);

    // Keeps what is chosen where it is still there. `classes`: members by name of class.
    void setChoices(const Review& review, const std::map<QString, std::set<MemberId>>& classes);
    void setThreshold(double percent); // of the measure, as it is now
    void chooseMeasure(const std::string& name);

    [[nodiscard]] std::string measure() const;
    [[nodiscard]] SidesOrder order() const;
    [[nodiscard]] bool isMeasureOnly() const; // the lists, too
    [[nodiscard]] bool accepts(const Member& member) const;

Q_SIGNALS:
    void changed();
    void thresholdWanted(double percent);

private:
    void makeLayout();

    std::map<QString, std::set<MemberId>> m_classes;
    QComboBox* m_measure;
    QDoubleSpinBox* m_threshold;
    QComboBox* m_class;
    QComboBox* m_group;
    QComboBox* m_order;
    QCheckBox* m_measureOnly;
    double m_shownThreshold = 0.0;
};

} // namespace levelbar::ui
