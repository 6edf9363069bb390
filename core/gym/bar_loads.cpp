// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/gym/bar_loads.h"

#include <algorithm>
#include <cmath>

namespace levelbar {

BarLoads::BarLoads(const Kit& kit, const BarKind& bar, double heaviestKilograms)
    : m_kinds(kit.plates)
    , m_barMass(bar.mass)
    , m_collars(kit.collars)
    , m_bare(exactWeight(bar.mass) + exactWeight(kit.collars))
{
    std::sort(m_kinds.begin(), m_kinds.end(), [](const PlateKind& a, const PlateKind& b) {
        return exactWeight(a.mass) > exactWeight(b.mass);
    });
    if (m_kinds.size() > kMostKindsOfPlates) {
        m_kinds.resize(kMostKindsOfPlates); // the lightest go first; checkKit refuses such a kit
    }
    m_sides.push_back({});
    const std::int64_t mostWeight = (exactWeight(heaviestKilograms) - m_bare) / 2;
    for (std::size_t kind = 0; kind < m_kinds.size(); ++kind) {
        addKind(kind, m_kinds[kind].count / 2, mostWeight);
    }
}

// From the best stacks of the heavier kinds to those with this kind too. What is best stays best
// under the same plates on top, so one stack a weight is enough; and any number of pairs is a sum
// of some of 1, 2, 4, ... and a rest, so that many pairs take few rounds.
void BarLoads::addKind(std::size_t kind, int pairs, std::int64_t mostWeight)
{
    for (int share = 1; pairs > 0; pairs -= share, share = std::min(2 * share, pairs)) {
        addPlates(kind, share, mostWeight);
    }
}

// Each stack with so many of this kind on top, or without.
void BarLoads::addPlates(std::size_t kind, int count, std::int64_t mostWeight)
{
    const std::int64_t weight = count * exactWeight(m_kinds[kind].mass);
    const auto heavier = [&](const SideStack& stack) {
        SideStack next = stack;
        next.weight += weight;
        next.plates += count;
        next.counts[kind] = static_cast<std::uint16_t>(next.counts[kind] + count);
        return next;
    };
    std::vector<SideStack> grown;
    grown.reserve(2 * m_sides.size());
    std::size_t plain = 0; // the next of those without
    for (const SideStack& stack : m_sides) {
        if (stack.weight + weight > mostWeight) {
            break;
        }
        const SideStack next = heavier(stack);
        while (plain < m_sides.size() && m_sides[plain].weight < next.weight) {
            grown.push_back(m_sides[plain++]);
        }
        const bool isShared = plain < m_sides.size() && m_sides[plain].weight == next.weight;
        grown.push_back(isShared && isBetter(m_sides[plain], next) ? m_sides[plain] : next);
        plain += isShared ? 1U : 0U;
    }
    grown.insert(grown.end(), m_sides.begin() + static_cast<std::ptrdiff_t>(plain), m_sides.end());
    m_sides = std::move(grown);
}

// Of two stacks of one weight.
bool BarLoads::isBetter(const SideStack& one, const SideStack& other)
{
    return one.plates != other.plates ? one.plates < other.plates : one.counts > other.counts;
}

std::size_t BarLoads::firstNotBelow(std::int64_t exact) const
{
    std::size_t low = 0;
    std::size_t high = m_sides.size();
    while (low < high) {
        const std::size_t middle = (low + high) / 2;
        if (exactAt(middle) < exact) {
            low = middle + 1;
        } else {
            high = middle;
        }
    }
    return low;
}

LoadedBar BarLoads::at(std::size_t place) const
{
    LoadedBar loaded;
    loaded.exact = exactAt(place);
    const bool hasCollars = m_collars.thousandths() != 0;
    bool isOneUnit = !hasCollars || m_collars.unit() == m_barMass.unit();
    std::int64_t typed = m_barMass.thousandths() + (hasCollars ? m_collars.thousandths() : 0);
    for (std::size_t kind = 0; kind < m_kinds.size(); ++kind) {
        const Mass& plate = m_kinds[kind].mass;
        const std::int64_t count = m_sides[place].counts[kind];
        loaded.eachSide.insert(loaded.eachSide.end(), static_cast<std::size_t>(count), plate);
        isOneUnit = isOneUnit && (count == 0 || plate.unit() == m_barMass.unit());
        typed += 2 * count * plate.thousandths();
    }
    loaded.total = isOneUnit ? Mass::ofThousandths(typed, m_barMass.unit())
                             : Mass::ofKilograms(kilogramsOf(loaded.exact));
    return loaded;
}

std::optional<LoadedBar> BarLoads::atOrNothing(std::size_t place) const
{
    return place < m_sides.size() ? std::optional(at(place)) : std::nullopt;
}

std::optional<LoadedBar> BarLoads::exactly(const Mass& load) const
{
    const std::size_t place = firstNotBelow(exactWeight(load));
    return place < m_sides.size() && exactAt(place) == exactWeight(load) ? std::optional(at(place))
                                                                         : std::nullopt;
}

std::optional<LoadedBar> BarLoads::atMost(double kilograms) const
{
    return atOrNothing(firstNotBelow(exactWeight(kilograms) + 1) - 1); // 0 - 1 lies beyond the end
}

std::optional<LoadedBar> BarLoads::atLeast(double kilograms) const
{
    return atOrNothing(firstNotBelow(exactWeight(kilograms)));
}

std::optional<LoadedBar> BarLoads::above(const Mass& load) const
{
    return atOrNothing(firstNotBelow(exactWeight(load) + 1));
}

std::optional<LoadedBar> BarLoads::below(const Mass& load) const
{
    return atOrNothing(firstNotBelow(exactWeight(load)) - 1);
}

} // namespace levelbar
