// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/floor/attendance_model.h"

#include <QWidget>

class QLabel;
class QLineEdit;
class QListView;

namespace levelbar::ui {

// Who came: Space or Enter marks. Typing in the field above finds anybody on the roster; Enter
// there marks the first one found.
class AttendanceList : public QWidget {
    Q_OBJECT

public:
    explicit AttendanceList(QWidget* parent = nullptr);

    void setPeople(const FloorReference& reference,
                   const FloorSheet& sheet,
                   const std::vector<MemberId>& members);

    [[nodiscard]] QWidget* filterField() const;

Q_SIGNALS:
    void markWanted(levelbar::MemberId member, bool came);
    void left(); // Esc

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    bool filterKey(int key);
    bool listKey(int key);
    void toggle(const QModelIndex& index);
    void showCount();

    AttendanceModel* m_model;
    QLineEdit* m_filter;
    QListView* m_list;
    QLabel* m_count;
};

} // namespace levelbar::ui
