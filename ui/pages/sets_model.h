// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/exercise/done_set.h"
#include "core/exercise/effort.h"
#include "core/review/history.h"

#include <QAbstractTableModel>

#include <vector>

namespace levelbar::ui {

// A person's sets, newest first, loads as they were typed.
class SetsModel : public QAbstractTableModel {
    Q_OBJECT

public:
    enum Column {
        DayColumn,
        ExerciseColumn,
        SideColumn,
        NumberColumn,
        LoadColumn,
        AmountColumn,
        ReserveColumn,
        KnownColumn,
        KindColumn,
        StoppedColumn,
        PainColumn,
        NoteColumn,
        ColumnCount
    };

    static constexpr int SearchRole = Qt::UserRole + 1; // all of a row's words

    using QAbstractTableModel::QAbstractTableModel;

    void show(std::vector<DoneSet> sets, Library library, EffortScale effort);

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant
    headerData(int section, Qt::Orientation orientation, int role) const override;

private:
    [[nodiscard]] QString text(const DoneSet& set, int column) const;

    std::vector<DoneSet> m_sets;
    Library m_library;
    EffortScale m_effort = EffortScale::Reserve;
};

} // namespace levelbar::ui
