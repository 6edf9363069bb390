// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/gym/kit_model.h"

#include "core/base/number.h"
#include "core/member/member.h"
#include "ui/floor/load_steps.h"
#include "ui/words.h"

#include <algorithm>

namespace levelbar::ui {

namespace {

constexpr int kLongestName = 60;

std::vector<KitLine> linesOf(const Kit& kit)
{
    std::vector<KitLine> lines;
    for (const BarKind& bar : kit.bars) {
        lines.push_back({PieceWord::Bar, bar.mass, bar.count, plain(bar.name)});
    }
    for (const PlateKind& plate : kit.plates) {
        lines.push_back({PieceWord::Plate, plate.mass, plate.count, {}});
    }
    for (const HandWeight& piece : kit.handWeights) {
        const bool isDumbbell = piece.implement == Implement::Dumbbell;
        lines.push_back({isDumbbell ? PieceWord::Dumbbell : PieceWord::Kettlebell,
                         piece.mass,
                         piece.count,
                         {}});
    }
    std::stable_sort(lines.begin(), lines.end(), [](const KitLine& a, const KitLine& b) {
        if (a.what != b.what || a.what == PieceWord::Bar) {
            return a.what < b.what;
        }
        return exactWeight(a.mass) > exactWeight(b.mass);
    });
    return lines;
}

// Collars and step of `rest` stay.
Kit kitOf(const std::vector<KitLine>& lines, const Kit& rest)
{
    Kit kit;
    kit.collars = rest.collars;
    kit.stackStep = rest.stackStep;
    for (const KitLine& line : lines) {
        switch (line.what) {
        case PieceWord::Bar:
            kit.bars.push_back({line.name.toStdString(), line.mass, line.count});
            break;
        case PieceWord::Plate:
            kit.plates.push_back({line.mass, line.count});
            break;
        case PieceWord::Dumbbell:
            kit.handWeights.push_back({Implement::Dumbbell, line.mass, line.count});
            break;
        case PieceWord::Kettlebell:
            kit.handWeights.push_back({Implement::Kettlebell, line.mass, line.count});
            break;
        }
    }
    return kit;
}

PieceKey keyOf(const KitLine& line)
{
    switch (line.what) {
    case PieceWord::Bar:
        return PieceKey::of(BarKind{line.name.toStdString(), line.mass, line.count});
    case PieceWord::Plate:
        return PieceKey::of(PlateKind{line.mass, line.count});
    case PieceWord::Dumbbell:
        return PieceKey::of(HandWeight{Implement::Dumbbell, line.mass, line.count});
    case PieceWord::Kettlebell:
        break;
    }
    return PieceKey::of(HandWeight{Implement::Kettlebell, line.mass, line.count});
}

} // namespace

QString KitModel::word(PieceWord what)
{
    switch (what) {
    case PieceWord::Bar:
        return tr("bar");
    case PieceWord::Plate:
        return tr("plate");
    case PieceWord::Dumbbell:
        return tr("dumbbell");
    case PieceWord::Kettlebell:
        break;
    }
    return tr("kettlebell");
}

void KitModel::show(const Kit& kit, std::vector<GonePieces> gone)
{
    beginResetModel();
    m_kit = kit;
    m_gone = std::move(gone);
    m_lines = linesOf(kit);
    endResetModel();
}

bool KitModel::take(const std::vector<KitLine>& lines)
{
    const auto kit = checkKit(kitOf(lines, m_kit));
    if (!kit) {
        Q_EMIT refused(words(kit.error()));
        return false;
    }
    beginResetModel();
    m_kit = *kit;
    m_lines = linesOf(m_kit);
    endResetModel();
    Q_EMIT edited(m_kit);
    return true;
}

bool KitModel::add(const KitLine& line)
{
    std::vector<KitLine> lines = m_lines;
    lines.push_back(line);
    return take(lines);
}

bool KitModel::remove(int row)
{
    if (row < 0 || row >= rowCount()) {
        return false;
    }
    std::vector<KitLine> lines = m_lines;
    lines.erase(lines.begin() + row);
    return take(lines);
}

int KitModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_lines.size());
}

int KitModel::columnCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : ColumnCount;
}

QVariant KitModel::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (orientation != Qt::Horizontal || role != Qt::DisplayRole || section >= ColumnCount) {
        return {};
    }
    const QStringList titles = {
        tr("What"), tr("Mass"), tr("How many"), tr("Gone today"), tr("Name")};
    return titles.at(section);
}

QVariant KitModel::data(const QModelIndex& index, int role) const
{
    if (!index.isValid() || index.row() >= rowCount()) {
        return {};
    }
    const KitLine& line = m_lines[static_cast<std::size_t>(index.row())];
    const bool isNumber = index.column() == MassColumn || index.column() == CountColumn ||
                          index.column() == GoneColumn;
    if (role == Qt::TextAlignmentRole && isNumber) {
        return QVariant::fromValue(Qt::AlignRight | Qt::AlignVCenter);
    }
    if (role != Qt::DisplayRole && role != Qt::EditRole) {
        return {};
    }
    switch (index.column()) {
    case WhatColumn:
        return word(line.what);
    case MassColumn:
        return plain(line.mass.number() + " " + std::string(unitWord(line.mass.unit())));
    case CountColumn:
        return line.count == kMostPieces && role == Qt::DisplayRole ? tr("enough")
                                                                    : QString::number(line.count);
    case GoneColumn: {
        const int gone = goneOf(m_gone, keyOf(line), line.count);
        return gone == 0 && role == Qt::DisplayRole ? QString() : QString::number(gone);
    }
    case NameColumn:
        return line.name;
    default:
        return {};
    }
}

Qt::ItemFlags KitModel::flags(const QModelIndex& index) const
{
    Qt::ItemFlags flags = QAbstractTableModel::flags(index);
    if (!index.isValid()) {
        return flags;
    }
    const bool isBar = m_lines[static_cast<std::size_t>(index.row())].what == PieceWord::Bar;
    const bool isOpen = index.column() == MassColumn || index.column() == CountColumn ||
                        (index.column() == GoneColumn && !m_kit.isAssumed) ||
                        (index.column() == NameColumn && isBar);
    return isOpen ? flags | Qt::ItemIsEditable : flags;
}

Result<KitLine> KitModel::changed(const KitLine& line, int column, const QString& text) const
{
    KitLine after = line;
    const std::string typed = text.trimmed().toStdString();
    if (column == MassColumn) {
        const auto mass = parseTypedLoad(typed, line.mass.unit());
        if (!mass) {
            return tl::unexpected(mass.error());
        }
        after.mass = *mass;
    } else if (column == CountColumn) {
        const auto count = parseWhole(typed, 0, kMostPieces);
        if (!count) {
            return tl::unexpected(count.error());
        }
        after.count = static_cast<int>(*count);
    } else {
        const auto name = checkText(typed, kLongestName);
        if (!name) {
            return tl::unexpected(name.error());
        }
        after.name = plain(*name);
    }
    return after;
}

// What is gone is no change of what the gym owns.
bool KitModel::markGone(const KitLine& line, const QString& text)
{
    const std::string typed = text.trimmed().isEmpty() ? "0" : text.trimmed().toStdString();
    const auto count = parseWhole(typed, 0, line.count);
    if (!count) {
        Q_EMIT refused(words(count.error()));
        return false;
    }
    Q_EMIT goneMarked(keyOf(line), static_cast<int>(*count));
    return true;
}

bool KitModel::setData(const QModelIndex& index, const QVariant& value, int role)
{
    if (role != Qt::EditRole || !index.isValid()) {
        return false;
    }
    const auto row = static_cast<std::size_t>(index.row());
    if (index.column() == GoneColumn) {
        return markGone(m_lines[row], value.toString());
    }
    const auto after = changed(m_lines[row], index.column(), value.toString());
    if (!after) {
        Q_EMIT refused(words(after.error()));
        return false;
    }
    std::vector<KitLine> lines = m_lines;
    lines[row] = *after;
    return take(lines);
}

} // namespace levelbar::ui
