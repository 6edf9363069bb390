// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/gym/kit.h"
#include "core/gym/stations.h"

#include <compare>
#include <span>
#include <vector>

namespace levelbar {

// The numbers are stored; do not change them.
enum class PieceType { Bar = 1, Plate = 2, Dumbbell = 3, Kettlebell = 4, Rack = 7, Bench = 8 };

// Which pieces are meant: of one mass, and for bars of one name; or a rack's or bench's id.
struct PieceKey {
    PieceType type = PieceType::Plate;
    std::string name; // of a bar; else empty
    Mass mass;        // 0 for racks and benches
    std::int64_t station = 0;

    friend bool operator==(const PieceKey&, const PieceKey&) = default;

    [[nodiscard]] static PieceKey of(const BarKind& bar);
    [[nodiscard]] static PieceKey of(const PlateKind& plate);
    [[nodiscard]] static PieceKey of(const HandWeight& piece);
    [[nodiscard]] static PieceKey of(const Rack& rack);
    [[nodiscard]] static PieceKey of(const Bench& bench);
};

// Pieces that are owned, but not there on a day: lent, broken, in use elsewhere.
struct GonePieces {
    PieceKey key;
    int count = 1; // 1 to 999

    friend bool operator==(const GonePieces&, const GonePieces&) = default;
};

// How many of them are gone, never more than owned.
[[nodiscard]] int goneOf(std::span<const GonePieces> gone, const PieceKey& key, int owned);

// What is there that day: counts less what is gone. Nothing is taken off an assumed kit, of which
// nobody knows how many there are. Bars of which none is left stay, with a count of 0.
[[nodiscard]] Kit without(Kit kit, std::span<const GonePieces> gone);
[[nodiscard]] Stations without(Stations stations, std::span<const GonePieces> gone);

} // namespace levelbar
