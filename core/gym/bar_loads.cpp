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
// under the same lighter plates on top, so one stack a weight is enough.
void BarLoads::addKind(std::size_t kind, int pairs, std::int64_t mostWeight)
{
    const std::int64_t plate = exactWeight(m_kinds[kind].mass);
    std::vector<SideStack> grown;
    grown.reserve(m_sides.size() * 2);
    for (const SideStack& stack : m_sides) {
        SideStack next = stack;
        grown.push_back(next);
        for (int count = 1; count <= pairs && next.weight + plate <= mostWeight; ++count) {
            next.weight += plate;
            ++next.plates;
            ++next.counts[kind];
            grown.push_back(next);
        }
    }
    std::sort(grown.begin(), grown.end(), [](const SideStack& a, const SideStack& b) {
        if (a.weight != b.weight) {
            return a.weight < b.weight;
        }
        return a.plates != b.plates ? a.plates < b.plates : a.counts > b.counts;
    });
    const auto isSameWeight = [](const SideStack& a, const SideStack& b) {
        return a.weight == b.weight;
    };
    grown.erase(std::unique(grown.begin(), grown.end(), isSameWeight), grown.end());
    m_sides = std::move(grown);
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
