// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/gym/turn_costs.h"

#include <algorithm>

namespace levelbar {

namespace {

constexpr int kSidesOfABar = 2;
constexpr int kHooksOfARack = 2; // and as many safeties

bool mustChange(const std::optional<int>& from, const std::optional<int>& to)
{
    return from && to && *from != *to;
}

int plateMovesBetween(const PlateStack& off, const PlateStack& on)
{
    const auto [endOff, endOn] = std::mismatch(off.begin(), off.end(), on.begin(), on.end());
    return kSidesOfABar * static_cast<int>((off.end() - endOff) + (on.end() - endOn));
}

} // namespace

TurnCosts::TurnCosts(std::vector<Place> places)
    : m_places(std::move(places))
    , m_plateMoves(m_places.size() * m_places.size())
    , m_totals(m_plateMoves.size())
{
    for (std::size_t i = 0; i < size(); ++i) {
        if (i == 0 || !(m_places[i] == m_places[i - 1])) {
            m_kinds.push_back({i, 0});
        }
        ++m_kinds.back().count;
    }
    for (std::size_t i = 0; i < size(); ++i) {
        for (std::size_t j = 0; j < size(); ++j) {
            const int hooks = hookMoves(i, j);
            const int benches = benchMoves(i, j);
            const int plates = plateMovesBetween(m_places[i].stack, m_places[j].stack);
            m_plateMoves[i * size() + j] = plates;
            m_totals[i * size() + j] = plates + hooks + benches + rampMoves(i, j);
            m_grain = std::min(m_grain, benches > 0 ? 1 : (hooks > 0 ? kHooksOfARack : m_grain));
        }
    }
}

int TurnCosts::hookMoves(std::size_t from, std::size_t to) const
{
    const int hooks = mustChange(m_places[from].hookHole, m_places[to].hookHole) ? 1 : 0;
    const int safeties = mustChange(m_places[from].safetyHole, m_places[to].safetyHole) ? 1 : 0;
    return kHooksOfARack * (hooks + safeties);
}

int TurnCosts::benchMoves(std::size_t from, std::size_t to) const
{
    return mustChange(m_places[from].benchAngle, m_places[to].benchAngle) ? 1 : 0;
}

int TurnCosts::rampMoves(std::size_t from, std::size_t to) const
{
    int moves = 0;
    for (std::size_t round = 0; round < m_places[from].ramp.size(); ++round) {
        moves += plateMovesBetween(m_places[from].ramp[round], m_places[to].ramp[round]);
    }
    return moves;
}

int TurnCosts::round(std::span<const std::size_t> order) const
{
    int sum = 0;
    for (std::size_t i = 0; i < order.size(); ++i) {
        sum += total(order[i], order[i + 1 == order.size() ? 0 : i + 1]);
    }
    return sum;
}

} // namespace levelbar
