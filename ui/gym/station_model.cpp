// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/gym/station_model.h"

#include "core/base/number.h"
#include "ui/words.h"

namespace levelbar::ui {

namespace {

constexpr int kTenths = 1; // decimals of a millimetre
constexpr int kMostTenths = 99'999;

Result<Rack> checked(Rack rack)
{
    return checkRack(std::move(rack));
}

Result<Bench> checked(Bench bench)
{
    return checkBench(std::move(bench));
}

QString millimetres(Length length)
{
    return plain(decimalText(length.tenthMillimetres, kTenths));
}

// Writes one typed cell; a fault when it is no number.
std::optional<Fault> write(Rack& rack, int column, const std::string& typed)
{
    if (column == StationModel::HolesColumn) {
        const auto holes = parseWhole(typed, 1, kMostHoles);
        if (!holes) {
            return holes.error();
        }
        rack.holes.count = static_cast<int>(*holes);
        return std::nullopt;
    }
    const auto tenths = parseDecimal(typed, kTenths, 0, kMostTenths);
    if (!tenths) {
        return tenths.error();
    }
    const Length length{static_cast<int>(*tenths)};
    (column == StationModel::LowestColumn ? rack.holes.lowest : rack.holes.pitch) = length;
    return std::nullopt;
}

std::optional<Fault> write(Bench& bench, int /*column*/, const std::string& typed)
{
    const auto angles = parseAngles(typed);
    if (!angles) {
        return angles.error();
    }
    bench.angles = *angles;
    return std::nullopt;
}

bool isOfRacks(int column)
{
    return column == StationModel::LowestColumn || column == StationModel::PitchColumn ||
           column == StationModel::HolesColumn;
}

} // namespace

void StationModel::show(Stations stations, std::vector<GonePieces> gone)
{
    beginResetModel();
    m_stations = std::move(stations);
    m_gone = std::move(gone);
    endResetModel();
}

const Rack* StationModel::rackAt(int row) const
{
    const int racks = static_cast<int>(m_stations.racks.size());
    return row >= 0 && row < racks ? &m_stations.racks[static_cast<std::size_t>(row)] : nullptr;
}

const Bench* StationModel::benchAt(int row) const
{
    const int place = row - static_cast<int>(m_stations.racks.size());
    const int benches = static_cast<int>(m_stations.benches.size());
    return place >= 0 && place < benches ? &m_stations.benches[static_cast<std::size_t>(place)]
                                         : nullptr;
}

int StationModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0
                            : static_cast<int>(m_stations.racks.size() + m_stations.benches.size());
}

int StationModel::columnCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : ColumnCount;
}

QVariant StationModel::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (orientation != Qt::Horizontal || section >= ColumnCount) {
        return {};
    }
    if (role == Qt::ToolTipRole && section == LowestColumn) {
        return tr("From the floor to the top of a bar that lies in the lowest hole");
    }
    const QStringList titles = {tr("What"),
                                tr("Name"),
                                tr("Room"),
                                tr("How many"),
                                tr("Gone today"),
                                tr("Hole 1, mm"),
                                tr("Apart, mm"),
                                tr("Holes"),
                                tr("Angles")};
    return role == Qt::DisplayRole ? QVariant(titles.at(section)) : QVariant();
}

QString StationModel::roomOf(const std::optional<RoomId>& room) const
{
    const Room* known = room ? m_stations.room(*room) : nullptr;
    return known == nullptr ? QString() : plain(known->name);
}

QString StationModel::textOf(const Rack& rack, int column) const
{
    switch (column) {
    case WhatColumn:
        return tr("rack");
    case LowestColumn:
        return millimetres(rack.holes.lowest);
    case PitchColumn:
        return millimetres(rack.holes.pitch);
    case HolesColumn:
        return QString::number(rack.holes.count);
    default:
        return {};
    }
}

QString StationModel::textOf(const Bench& bench, int column) const
{
    switch (column) {
    case WhatColumn:
        return tr("bench");
    case AnglesColumn:
        return plain(anglesText(bench.angles));
    default:
        return {};
    }
}

QVariant StationModel::data(const QModelIndex& index, int role) const
{
    const bool isNumber = index.column() >= CountColumn && index.column() <= HolesColumn;
    if (role == Qt::TextAlignmentRole && isNumber) {
        return QVariant::fromValue(Qt::AlignRight | Qt::AlignVCenter);
    }
    if (!index.isValid() || index.row() >= rowCount() ||
        (role != Qt::DisplayRole && role != Qt::EditRole)) {
        return {};
    }
    const auto text = [&](const auto& station) -> QString {
        switch (index.column()) {
        case NameColumn:
            return plain(station.name);
        case RoomColumn:
            return roomOf(station.room);
        case CountColumn:
            return QString::number(station.count);
        case GoneColumn: {
            const int gone = goneOf(m_gone, PieceKey::of(station), station.count);
            return gone == 0 && role == Qt::DisplayRole ? QString() : QString::number(gone);
        }
        default:
            return textOf(station, index.column());
        }
    };
    const Rack* rack = rackAt(index.row());
    return rack != nullptr ? text(*rack) : text(*benchAt(index.row()));
}

Qt::ItemFlags StationModel::flags(const QModelIndex& index) const
{
    const Qt::ItemFlags flags = QAbstractTableModel::flags(index);
    if (!index.isValid() || index.column() == WhatColumn) {
        return flags;
    }
    const bool isRack = rackAt(index.row()) != nullptr;
    const bool isClosed = isRack ? index.column() == AnglesColumn : isOfRacks(index.column());
    return isClosed ? flags : flags | Qt::ItemIsEditable;
}

template <typename T> bool StationModel::markGone(const T& station, const std::string& typed)
{
    const auto count = parseWhole(typed.empty() ? "0" : typed, 0, station.count);
    if (!count) {
        Q_EMIT refused(words(count.error()));
        return false;
    }
    Q_EMIT goneMarked(PieceKey::of(station), static_cast<int>(*count));
    return true;
}

template <typename T> bool StationModel::change(T station, int column, const QString& text)
{
    const std::string typed = text.trimmed().toStdString();
    StationEdit edit{station, roomOf(station.room)};
    std::optional<Fault> fault;
    if (column == GoneColumn) {
        return markGone(station, typed);
    }
    if (column == NameColumn) {
        station.name = typed;
    } else if (column == RoomColumn) {
        edit.room = text.trimmed();
    } else if (const auto count = parseWhole(typed, 0, kMostStations); column != CountColumn) {
        fault = write(station, column, typed);
    } else if (count) {
        station.count = static_cast<int>(*count);
    } else {
        fault = count.error();
    }
    const auto after = checked(station);
    if (fault || !after) {
        Q_EMIT refused(words(fault ? *fault : after.error()));
        return false;
    }
    edit.station = *after;
    Q_EMIT edited(edit);
    return true;
}

bool StationModel::setData(const QModelIndex& index, const QVariant& value, int role)
{
    if (role != Qt::EditRole || !(flags(index) & Qt::ItemIsEditable)) {
        return false;
    }
    // Copies: what follows resets the model.
    if (const Rack* rack = rackAt(index.row())) {
        return change(Rack(*rack), index.column(), value.toString());
    }
    return change(Bench(*benchAt(index.row())), index.column(), value.toString());
}

} // namespace levelbar::ui
