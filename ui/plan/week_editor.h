// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/plan/class_week.h"
#include "core/review/history.h"

#include <QWidget>

#include <optional>
#include <vector>

class QComboBox;
class QLabel;
class QListWidget;
class QPushButton;
class QTableWidget;

namespace levelbar::ui {

struct ClassPlan;

// The template of a class and the weeks ahead: what is done, in which block, how often. Nothing is
// written before Keep.
class WeekEditor : public QWidget {
    Q_OBJECT

public:
    explicit WeekEditor(QWidget* parent = nullptr);

    void show(const ClassPlan& plan, Day today);

    using QWidget::show;

Q_SIGNALS:
    void templateKept(const std::vector<levelbar::PlanItem>& items,
                      const std::vector<levelbar::PlanBlock>& blocks);
    void weekKept(const levelbar::ClassWeek& week);
    void weekRemoved(levelbar::Day monday);

private:
    void makeLayout();
    void fillWeeks();
    void showChosen();
    void showChanges();
    void setRows(const std::vector<PlanItem>& items);
    void addExercise();
    void removeRow();
    void keep();
    void toggleLighter();
    void copyToNext();
    [[nodiscard]] std::vector<PlanItem> typedItems() const;
    [[nodiscard]] std::vector<PlanBlock> typedBlocks(const std::vector<PlanItem>& items) const;
    // Nothing: the template is chosen.
    [[nodiscard]] std::optional<Day> chosenMonday() const;
    [[nodiscard]] ClassWeek weekOf(Day monday) const;
    [[nodiscard]] QString itemText(const PlanItem& item) const;

    Library m_library;
    std::vector<PlanItem> m_usual;
    int m_proposedFrom = 0; // meetings; 0: the template is the class's own
    std::vector<PlanBlock> m_blocks;
    std::vector<ClassWeek> m_weeks;
    Day m_today;
    QListWidget* m_list;
    QTableWidget* m_table;
    QComboBox* m_exercise;
    QPushButton* m_lighter;
    QPushButton* m_copy;
    QPushButton* m_asTemplate;
    QLabel* m_changes;
};

} // namespace levelbar::ui
