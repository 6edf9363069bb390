// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/today/today_list.h"

#include <QAbstractListModel>

#include <optional>
#include <vector>

namespace levelbar::ui {

// The lines of the day: the first seven, then how many more there are; all of them once asked.
class LinesModel : public QAbstractListModel {
    Q_OBJECT

public:
    enum Role { NameRole = Qt::UserRole + 1, ReasonRole, ActionRole, IsSafetyRole };

    using QAbstractListModel::QAbstractListModel;

    void show(TodayList list);
    void showAll();

    [[nodiscard]] const TodayList& list() const { return m_list; }

    // Null for the row that stands for the rest.
    [[nodiscard]] const TodayLine* line(int row) const;

    [[nodiscard]] bool isRest(int row) const { return hasRest() && row == rowCount() - 1; }

    [[nodiscard]] int rowOf(MemberId member) const; // -1 when not shown

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;

private:
    [[nodiscard]] bool hasRest() const;
    [[nodiscard]] std::size_t shown() const;

    TodayList m_list;
    bool m_isAll = false;
};

} // namespace levelbar::ui
