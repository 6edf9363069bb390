// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/gym/gone_today.h"
#include "core/gym/stations.h"

#include <QAbstractTableModel>

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace levelbar::ui {

// A change of one line: the station as it would be, and the name of the room it stands in (empty:
// none), which may be a new one.
struct StationEdit {
    std::variant<Rack, Bench> station;
    QString room;
};

// Racks, then benches, one line each, edited in place.
class StationModel : public QAbstractTableModel {
    Q_OBJECT

public:
    enum Column {
        WhatColumn,
        NameColumn,
        RoomColumn,
        CountColumn,
        GoneColumn,
        LowestColumn, // racks: height of the bar in hole 1, mm
        PitchColumn,  // racks: mm
        HolesColumn,  // racks
        AnglesColumn, // benches
        ColumnCount
    };

    using QAbstractTableModel::QAbstractTableModel;

    void show(Stations stations, std::vector<GonePieces> gone);

    [[nodiscard]] const Rack* rackAt(int row) const;   // null for a bench
    [[nodiscard]] const Bench* benchAt(int row) const; // null for a rack

    [[nodiscard]] int rowCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] int columnCount(const QModelIndex& parent = {}) const override;
    [[nodiscard]] QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QVariant
    headerData(int section, Qt::Orientation orientation, int role) const override;
    [[nodiscard]] Qt::ItemFlags flags(const QModelIndex& index) const override;
    bool setData(const QModelIndex& index, const QVariant& value, int role) override;

Q_SIGNALS:
    void edited(const levelbar::ui::StationEdit& edit);
    void goneMarked(const levelbar::PieceKey& key, int count);
    void refused(const QString& sentence);

private:
    [[nodiscard]] QString roomOf(const std::optional<RoomId>& room) const;
    [[nodiscard]] QString textOf(const Rack& rack, int column) const;
    [[nodiscard]] QString textOf(const Bench& bench, int column) const;
    template <typename T> bool markGone(const T& station, const std::string& typed);
    template <typename T> bool change(T station, int column, const QString& text);

    Stations m_stations;
    std::vector<GonePieces> m_gone;
};

} // namespace levelbar::ui
