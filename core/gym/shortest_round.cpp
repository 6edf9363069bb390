// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/gym/shortest_round.h"

#include <algorithm>
#include <bit>
#include <cassert>
#include <limits>

namespace levelbar {

namespace {

constexpr int kNoPath = std::numeric_limits<int>::max() / 2;

// Calls visit(bit) for every member of a subset.
template <typename Visit> void forEachMember(std::uint32_t subset, const Visit& visit)
{
    for (; subset != 0; subset &= subset - 1) {
        visit(static_cast<std::size_t>(std::countr_zero(subset)));
    }
}

std::uint32_t bit(std::size_t member)
{
    return std::uint32_t{1} << member;
}

} // namespace

void ShortestRound::fill(std::span<const std::size_t> lifters)
{
    assert(!lifters.empty() && lifters.size() <= kMostInExactRound);
    const std::size_t rest = lifters.size() - 1;
    const std::uint32_t all = bit(rest) - 1;
    m_paths.assign((std::size_t{all} + 1) * rest, kNoPath);
    for (std::uint32_t subset = 1; subset <= all; ++subset) {
        forEachMember(subset, [&](std::size_t last) {
            const std::uint32_t before = subset & ~bit(last);
            int best = kNoPath;
            if (before == 0) {
                best = m_costs.total(lifters[0], lifters[last + 1]);
            }
            forEachMember(before, [&](std::size_t previous) {
                best = std::min(best,
                                m_paths[before * rest + previous] +
                                    m_costs.total(lifters[previous + 1], lifters[last + 1]));
            });
            m_paths[subset * rest + last] = best;
        });
    }
}

int ShortestRound::cost(std::span<const std::size_t> lifters)
{
    if (lifters.size() < 4) {
        return m_costs.round(lifters); // every order is the same round
    }
    fill(lifters);
    const std::size_t rest = lifters.size() - 1;
    const std::size_t all = bit(rest) - 1;
    int best = kNoPath;
    for (std::size_t last = 0; last < rest; ++last) {
        best = std::min(best,
                        m_paths[all * rest + last] + m_costs.total(lifters[last + 1], lifters[0]));
    }
    return best;
}

std::vector<std::size_t> ShortestRound::order(std::span<const std::size_t> lifters)
{
    if (lifters.size() < 4) {
        return {lifters.begin(), lifters.end()};
    }
    fill(lifters);
    const std::size_t rest = lifters.size() - 1;
    std::vector<std::size_t> backwards;
    std::uint32_t left = bit(rest) - 1;
    std::size_t next = lifters[0];
    while (left != 0) {
        std::size_t chosen = rest;
        int best = kNoPath;
        forEachMember(left, [&](std::size_t last) {
            const int path = m_paths[left * rest + last] + m_costs.total(lifters[last + 1], next);
            if (path < best) {
                best = path;
                chosen = last;
            }
        });
        next = lifters[chosen + 1];
        backwards.push_back(next);
        left &= ~bit(chosen);
    }
    backwards.push_back(lifters[0]);
    std::reverse(backwards.begin(), backwards.end());
    return backwards;
}

} // namespace levelbar
