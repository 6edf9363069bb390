// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "storage/class_store.h"
#include "storage/timetable_store.h"

#include <QWidget>

#include <optional>
#include <vector>

class QComboBox;
class QFormLayout;
class QLabel;
class QLineEdit;
class QPushButton;
class QSpinBox;

namespace levelbar::ui {

// What was filled in: a weekly class or one meeting more. The class may be new: then its name.
struct TypedHour {
    QString className;
    bool isWeekly = true;
    WeeklySlot slot; // without its class; of one meeting only start and plan
    Day day;         // of one meeting
};

// A weekly class, or one meeting more. Nothing is written before Keep.
class HourForm : public QWidget {
    Q_OBJECT

public:
    explicit HourForm(QWidget* parent = nullptr);

    void setClasses(const std::vector<storage::GroupClass>& classes);
    void openNew(bool isWeekly, Day day);
    void openSlot(const storage::StoredSlot& stored);
    void refuse(const QString& sentence);

    // Of what is being changed; nothing: a new one.
    [[nodiscard]] std::optional<storage::SlotId> slotId() const { return m_slot; }

Q_SIGNALS:
    void kept(const levelbar::ui::TypedHour& hour);
    void removeWanted(levelbar::storage::SlotId slot);
    void closed();

private:
    void makeLayout();
    void fill(const WeeklySlot& slot);
    void keep();
    // False, with a sentence, when the text is neither empty nor a day.
    bool takeDay(const QLineEdit& edit, std::optional<Day>& target);

    std::vector<storage::GroupClass> m_classes;
    std::optional<storage::SlotId> m_slot;
    bool m_isWeekly = true;
    QLabel* m_title;
    QComboBox* m_class;
    QComboBox* m_weekday;
    QLineEdit* m_day;
    QLineEdit* m_start;
    QSpinBox* m_minutes;
    QLineEdit* m_room;
    QLineEdit* m_instructor;
    QSpinBox* m_capacity;
    QLineEdit* m_from;
    QLineEdit* m_until;
    QLabel* m_said;
    QPushButton* m_remove;
    QFormLayout* m_form;
};

} // namespace levelbar::ui
