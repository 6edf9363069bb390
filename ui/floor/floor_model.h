// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/floor/floor_sheet.h"

#include <QAbstractTableModel>
#include <QString>

#include <map>
#include <optional>
#include <tuple>

namespace levelbar::ui {

// What is typed into a cell and not stored yet, and why it was refused when it was.
struct Draft {
    QString amount;
    QString load;
    bool isLoad = false; // the load is being typed; the amount waits
    QString fault;

    [[nodiscard]] const QString& text() const { return isLoad ? load : amount; }
};

// The grid of the class floor: a row a person, a column a set and side. What is typed but not
// stored stays with its cell, also while the sheet is read again.
class FloorModel : public QAbstractTableModel {
    Q_OBJECT

public:
    // Beside DisplayRole, what a cell is drawn from.
    enum Role {
        StateRole = Qt::UserRole, // int of CellState
        KnownRole,                // int of HowKnown, of a done cell
        IsFailedRole,             // tried, and no rep was done
        IsDraftRole,              // DisplayRole is what is being typed
        FaultRole,                // QString; empty when nothing was refused
        StartsExerciseRole,       // first column of its exercise
        IsOddExerciseRole,        // every second exercise
        IsWorthEyesRole,          // to be watched and counted
        StartsRackRole,           // first row of its rack; also of vertical headers
    };

    // Of horizontal headers: the exercise's name and the set within it; of vertical ones: the
    // person's bib (0: none) and, in the first row of a rack where there are several, its number.
    enum HeaderRole { ExerciseNameRole = Qt::UserRole + 100, SetRole, BibRole, RackRole };
    enum class CellState { Blank, Open, Done };

    using QAbstractTableModel::QAbstractTableModel;

    void setReference(FloorReference reference);
    // Keeps the shape, and with it cursor and scroll place, when rows and columns are the same.
    void setSheet(FloorSheet sheet);

    [[nodiscard]] const FloorReference& reference() const { return m_reference; }

    [[nodiscard]] const FloorSheet& sheet() const { return m_sheet; }

    [[nodiscard]] std::optional<CellKey> keyAt(const QModelIndex& index) const;
    [[nodiscard]] QModelIndex indexOf(const CellKey& key) const; // invalid when not in the grid
    [[nodiscard]] std::optional<FloorCell> cell(const CellKey& key) const;
    // The next open cell: down the column through the people, then the next column from its top,
    // at the end from the beginning. Each person's side that starts comes before the other one.
    // Invalid when there is none but this one.
    [[nodiscard]] QModelIndex nextOpen(const QModelIndex& from) const;

    [[nodiscard]] std::optional<Draft> draft(const CellKey& key) const;
    void setDraft(const CellKey& key, const Draft& draft);
    void clearDraft(const CellKey& key);

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant
    headerData(int section, Qt::Orientation orientation, int role) const override;

private:
    [[nodiscard]] const FloorCell& cellAt(const QModelIndex& index) const;
    [[nodiscard]] QString shownText(const QModelIndex& index) const;
    [[nodiscard]] QString spokenText(const QModelIndex& index) const;
    [[nodiscard]] QVariant personHeader(int row, int role) const;
    [[nodiscard]] QVariant columnHeader(int column, int role) const;
    // All cells in the order of a round: down the column through the people; of a pair of sides
    // first everybody's side that starts, then the other one.
    [[nodiscard]] std::vector<QModelIndex> round() const;
    [[nodiscard]] bool isLeftOfPair(int column) const;
    [[nodiscard]] bool startsExercise(int column) const;
    [[nodiscard]] bool isOddExercise(int column) const;
    [[nodiscard]] bool startsRack(int row) const;
    void tell(const CellKey& key);

    // What is typed into one class is there again when the page comes back to it.
    using DraftKey = std::tuple<ClassId, Day, CellKey>;
    [[nodiscard]] DraftKey draftKey(const CellKey& key) const;

    FloorReference m_reference;
    FloorSheet m_sheet;
    std::map<DraftKey, Draft> m_drafts;
};

} // namespace levelbar::ui
