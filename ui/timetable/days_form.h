// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/day.h"
#include "storage/timetable_store.h"

#include <QWidget>

#include <optional>
#include <vector>

class QComboBox;
class QLabel;
class QLineEdit;
class QListWidget;

namespace levelbar::ui {

// Terms and holidays: the list, and a line to write one more or change the chosen one.
class DaysForm : public QWidget {
    Q_OBJECT

public:
    explicit DaysForm(QWidget* parent = nullptr);

    void setDays(std::vector<storage::StoredDays> days);
    void open(Day day);
    void refuse(const QString& sentence);

Q_SIGNALS:
    void added(levelbar::storage::DaysKind kind, const levelbar::NamedDays& days);
    void removeWanted(levelbar::storage::DaysId days);
    void closed();

private:
    void makeLayout();
    void add();
    void removeChosen();

    std::vector<storage::StoredDays> m_days;
    QListWidget* m_list;
    QComboBox* m_kind;
    QLineEdit* m_name;
    QLineEdit* m_first;
    QLineEdit* m_last;
    QLabel* m_said;
};

} // namespace levelbar::ui
