// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/gym/gone_today.h"

#include <algorithm>

namespace levelbar {

namespace {

template <typename Pieces> void takeOff(Pieces& pieces, std::span<const GonePieces> gone)
{
    for (auto& piece : pieces) {
        piece.count -= goneOf(gone, PieceKey::of(piece), piece.count);
    }
}

} // namespace

PieceKey PieceKey::of(const BarKind& bar)
{
    return {PieceType::Bar, bar.name, bar.mass, 0};
}

PieceKey PieceKey::of(const PlateKind& plate)
{
    return {PieceType::Plate, {}, plate.mass, 0};
}

PieceKey PieceKey::of(const HandWeight& piece)
{
    const bool isDumbbell = piece.implement == Implement::Dumbbell;
    return {isDumbbell ? PieceType::Dumbbell : PieceType::Kettlebell, {}, piece.mass, 0};
}

PieceKey PieceKey::of(const Rack& rack)
{
    return {PieceType::Rack, {}, {}, rack.id.value};
}

PieceKey PieceKey::of(const Bench& bench)
{
    return {PieceType::Bench, {}, {}, bench.id.value};
}

int goneOf(std::span<const GonePieces> gone, const PieceKey& key, int owned)
{
    for (const GonePieces& pieces : gone) {
        if (pieces.key == key) {
            return std::clamp(pieces.count, 0, std::max(owned, 0));
        }
    }
    return 0;
}

Kit without(Kit kit, std::span<const GonePieces> gone)
{
    if (kit.isAssumed) {
        return kit;
    }
    takeOff(kit.bars, gone);
    takeOff(kit.plates, gone);
    takeOff(kit.handWeights, gone);
    return kit;
}

Stations without(Stations stations, std::span<const GonePieces> gone)
{
    takeOff(stations.racks, gone);
    takeOff(stations.benches, gone);
    return stations;
}

} // namespace levelbar
