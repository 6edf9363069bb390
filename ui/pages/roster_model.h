// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/background_review.h"

#include <QAbstractTableModel>

#include <map>

namespace levelbar::ui {

// One row a person, as the last review saw them. Text of every cell is in DisplayRole, also where
// a delegate paints a glyph, so that filter, sorting and screen readers have it.
class RosterModel : public QAbstractTableModel {
    Q_OBJECT

public:
    enum Column { Person, ExperienceColumn, LastSeen, TrendColumn, Difference, Flags, ColumnCount };

    enum Role {
        SortRole = Qt::UserRole + 1,
        SearchRole, // all that the filter looks at, in column Person
        MemberRole, // MemberId's number
    };

    using QAbstractTableModel::QAbstractTableModel;

    // `classes`: the names of each person's classes, for the filter.
    void show(ReviewedRosterPointer roster, std::map<MemberId, QString> classes);

    [[nodiscard]] const MemberReview* member(int row) const;

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant
    headerData(int section, Qt::Orientation orientation, int role) const override;

private:
    [[nodiscard]] QString text(const MemberReview& member, int column) const;
    [[nodiscard]] QVariant sortValue(const MemberReview& member, int column) const;
    [[nodiscard]] QString toolTip(const MemberReview& member, int column) const;

    ReviewedRosterPointer m_roster;
    std::map<MemberId, QString> m_classes;
};

} // namespace levelbar::ui
