// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/gym/gone_today.h"
#include "core/gym/kit.h"

#include <QAbstractTableModel>

#include <vector>

namespace levelbar::ui {

// What stands in a line of the kit.
enum class PieceWord { Bar, Plate, Dumbbell, Kettlebell };

struct KitLine {
    PieceWord what = PieceWord::Plate;
    Mass mass;
    int count = 0;
    QString name; // bars only
};

// The kit as lines that can be edited in place: mass, count, how many of them are gone today and,
// of bars, the name. A change that
// the kit cannot take is refused, with the sentence in refused().
class KitModel : public QAbstractTableModel {
    Q_OBJECT

public:
    enum Column { WhatColumn, MassColumn, CountColumn, GoneColumn, NameColumn, ColumnCount };

    using QAbstractTableModel::QAbstractTableModel;

    void show(const Kit& kit, std::vector<GonePieces> gone = {});

    [[nodiscard]] const Kit& kit() const { return m_kit; }

    // False and refused() when it cannot be used; the lines stay as they were then.
    bool add(const KitLine& line);
    bool remove(int row);

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant
    headerData(int section, Qt::Orientation orientation, int role) const override;
    [[nodiscard]] Qt::ItemFlags flags(const QModelIndex& index) const override;
    bool setData(const QModelIndex& index, const QVariant& value, int role) override;

    // "bar", "plate", ...
    [[nodiscard]] static QString word(PieceWord what);

Q_SIGNALS:
    void edited(const levelbar::Kit& kit); // a change that the kit takes
    void goneMarked(const levelbar::PieceKey& key, int count);
    void refused(const QString& sentence);

private:
    bool take(const std::vector<KitLine>& lines);
    [[nodiscard]] Result<KitLine>
    changed(const KitLine& line, int column, const QString& text) const;

    bool markGone(const KitLine& line, const QString& text);

    Kit m_kit;
    std::vector<GonePieces> m_gone;
    std::vector<KitLine> m_lines; // by what, then heaviest first; bars as they stand
};

} // namespace levelbar::ui
