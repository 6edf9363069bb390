// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/day.h"
#include "storage/class_store.h"

#include <QWidget>

#include <optional>
#include <string>
#include <vector>

class QComboBox;
class QDateEdit;
class QLineEdit;
class QPushButton;
class QSpinBox;

namespace levelbar::ui {

// The strip above the grid: which class, which day, who keys, and the way to a new class.
class FloorBar : public QWidget {
    Q_OBJECT

public:
    explicit FloorBar(Day today, QWidget* parent = nullptr);

    // Keeps the chosen class when it is still there.
    void setClasses(const std::vector<storage::GroupClass>& classes);
    void choose(ClassId groupClass, Day day);

    [[nodiscard]] std::optional<ClassId> chosenClass() const;
    [[nodiscard]] Day chosenDay() const;
    // Remembered in the platform's settings.
    [[nodiscard]] std::string initials() const;

    // Remembered in the platform's settings, but for those that the gym has.
    [[nodiscard]] int racks() const;
    // As many as the gym has: shown without a word to anybody, and not remembered.
    void showRacks(int racks);

    [[nodiscard]] QPushButton* templateButton() const { return m_template; }

    void closeNewClass();

Q_SIGNALS:
    void chosen();
    void initialsChanged(const std::string& initials);
    void racksChanged(int racks);
    void wallWanted();
    void closingWanted();
    void classWanted(const QString& name);

private:
    QWidget* buildNewClass();
    void buildInitials();
    void buildRacks();

    QComboBox* m_class;
    QDateEdit* m_day;
    QLineEdit* m_initials;
    QSpinBox* m_racks;
    QPushButton* m_new;
    QPushButton* m_template;
    QWidget* m_newBox = nullptr;
    QLineEdit* m_newName;
};

} // namespace levelbar::ui
