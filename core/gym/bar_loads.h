// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/gym/kit.h"

#include <array>
#include <cstdint>
#include <optional>
#include <vector>

namespace levelbar {

// A bar with its plates on.
struct LoadedBar {
    Mass total;             // bar, collars and plates; typed in the plates' unit where all agree
    std::int64_t exact = 0; // the same, to the last digit: see exactWeight
    std::vector<Mass> eachSide; // the innermost plate first
};

// Every load that one bar can be given with the plates owned, both sides alike. For each load the
// fewest plates; among those the heaviest innermost plate, then the heaviest next. Loads are sums
// of pairs, so an odd plate of a kind is not used.
// Cost of building: the number of different loads, times kinds of plates, times the logarithm of
// the pairs of each; a look-up is a search.
class BarLoads {
public:
    // heaviest: loads above are left out (a bar holds no more than 500 kg).
    BarLoads(const Kit& kit, const BarKind& bar, double heaviestKilograms = 500.0);

    // Exactly this load, also across units (45 lb is 20.41165665 kg and no other).
    [[nodiscard]] std::optional<LoadedBar> exactly(const Mass& load) const;
    // The nearest load not above, and not below.
    [[nodiscard]] std::optional<LoadedBar> atMost(double kilograms) const;
    [[nodiscard]] std::optional<LoadedBar> atLeast(double kilograms) const;
    // Strictly above, strictly below: the next step on this bar.
    [[nodiscard]] std::optional<LoadedBar> above(const Mass& load) const;
    [[nodiscard]] std::optional<LoadedBar> below(const Mass& load) const;

    [[nodiscard]] std::size_t size() const { return m_sides.size(); }

    [[nodiscard]] LoadedBar at(std::size_t place) const; // lightest first

private:
    using Counts = std::array<std::uint16_t, kMostKindsOfPlates>;

    // One side's plates: how many of each kind, heaviest kind first.
    struct SideStack {
        std::int64_t weight = 0;
        int plates = 0;
        Counts counts{};
    };

    void addKind(std::size_t kind, int pairs, std::int64_t mostWeight);
    void addPlates(std::size_t kind, int count, std::int64_t mostWeight);
    [[nodiscard]] static bool isBetter(const SideStack& one, const SideStack& other);

    [[nodiscard]] std::int64_t exactAt(std::size_t place) const
    {
        return m_bare + 2 * m_sides[place].weight;
    }

    [[nodiscard]] std::size_t firstNotBelow(std::int64_t exact) const;
    [[nodiscard]] std::optional<LoadedBar> atOrNothing(std::size_t place) const;

    std::vector<PlateKind> m_kinds; // heaviest first
    Mass m_barMass;
    Mass m_collars;
    std::int64_t m_bare = 0;        // bar and collars
    std::vector<SideStack> m_sides; // by weight, each once
};

} // namespace levelbar
