// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/gym/plate_stack.h"

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

namespace levelbar {

// What the change from each lifter to each other one costs at a rack: plate moves (every plate
// taken off or put on, both sides), those of the warm-up rounds, hook moves (two hooks, when both
// holes are given and differ, and two safeties) and bench moves. All are the same in either
// direction.
class TurnCosts {
public:
    struct Place {
        PlateStack stack;
        std::optional<int> hookHole;
        std::optional<int> safetyHole = std::nullopt;
        std::optional<int> benchAngle = std::nullopt;
        std::vector<PlateStack> ramp = {}; // of as many rounds for everybody

        friend bool operator==(const Place&, const Place&) = default;
    };

    // Lifters that are the same for a rack, lying side by side: first to first + count - 1.
    struct Kind {
        std::size_t first = 0;
        std::size_t count = 0;
    };

    // Lifters count from 0 in the order of `places`. Those with equal places must lie side by
    // side; sorted places make the bounds and searches built on this better.
    explicit TurnCosts(std::vector<Place> places);

    [[nodiscard]] std::size_t size() const { return m_places.size(); }

    [[nodiscard]] int total(std::size_t from, std::size_t to) const
    {
        return m_totals[from * m_places.size() + to];
    }

    [[nodiscard]] int plateMoves(std::size_t from, std::size_t to) const
    {
        return m_plateMoves[from * m_places.size() + to];
    }

    [[nodiscard]] int hookMoves(std::size_t from, std::size_t to) const;
    [[nodiscard]] int benchMoves(std::size_t from, std::size_t to) const;
    [[nodiscard]] int rampMoves(std::size_t from, std::size_t to) const;

    // One full round: after the last comes the first. A round of one costs nothing.
    [[nodiscard]] int round(std::span<const std::size_t> order) const;

    [[nodiscard]] const std::vector<Place>& places() const { return m_places; }

    [[nodiscard]] const std::vector<Kind>& kinds() const { return m_kinds; }

    // What the cost of any full round is a multiple of: a round comes back over every plate it
    // put on, on two sides, so plate moves come in fours; hook moves come in twos, bench moves
    // one by one.
    [[nodiscard]] int grain() const { return m_grain; }

private:
    std::vector<Place> m_places;
    std::vector<Kind> m_kinds;
    std::vector<int> m_plateMoves; // from * size() + to
    std::vector<int> m_totals;
    int m_grain = 4;
};

} // namespace levelbar
