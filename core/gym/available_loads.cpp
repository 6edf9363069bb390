// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/gym/available_loads.h"

#include <algorithm>
#include <cmath>

namespace levelbar {

namespace {

constexpr double kHeaviestStack = 400.0; // kg

} // namespace

AvailableLoads::AvailableLoads(const Kit& kit, const Exercise& exercise)
{
    switch (exercise.implement) {
    case Implement::Barbell:
        addBars(kit);
        break;
    case Implement::Dumbbell:
    case Implement::Kettlebell:
        addHandWeights(kit, exercise);
        break;
    case Implement::Machine:
    case Implement::Cable:
    case Implement::BodyWeight:
    case Implement::Band:
    case Implement::Other:
        addSteps(kit);
        break;
    }
    std::sort(m_loads.begin(), m_loads.end(), [](const auto& a, const auto& b) {
        return a.exact < b.exact;
    });
}

void AvailableLoads::addBars(const Kit& kit)
{
    const auto add = [this](const LoadedBar& loaded) {
        m_loads.push_back({loaded.total, loaded.exact, loaded.eachSide});
    };
    const auto there = std::find_if(
        kit.bars.begin(), kit.bars.end(), [](const BarKind& b) { return b.count > 0; });
    if (there == kit.bars.end()) {
        return;
    }
    const BarLoads usual(kit, *there);
    for (std::size_t place = 0; place < usual.size(); ++place) {
        add(usual.at(place));
    }
    const std::int64_t from = m_loads.front().exact;
    for (auto bar = std::next(there); bar != kit.bars.end(); ++bar) {
        if (bar->count <= 0) {
            continue;
        }
        const BarLoads lighter(kit, *bar, kilogramsOf(from));
        for (std::size_t place = 0; place < lighter.size(); ++place) {
            const LoadedBar loaded = lighter.at(place);
            const bool isKnown =
                std::any_of(m_loads.begin(), m_loads.end(), [&loaded](const AvailableLoad& known) {
                    return known.exact == loaded.exact;
                });
            if (loaded.exact < from && !isKnown) {
                add(loaded);
            }
        }
    }
}

void AvailableLoads::addHandWeights(const Kit& kit, const Exercise& exercise)
{
    const int needed =
        exercise.sidedness == Sidedness::TwoSided && exercise.implement == Implement::Dumbbell ? 2
                                                                                               : 1;
    for (const HandWeight& piece : kit.handWeights) {
        if (piece.implement == exercise.implement && piece.count >= needed) {
            m_loads.push_back({piece.mass, exactWeight(piece.mass), {}});
        }
    }
}

void AvailableLoads::addSteps(const Kit& kit)
{
    if (kit.stackStep.thousandths() <= 0) {
        return;
    }
    const int most = static_cast<int>(kHeaviestStack / kit.stackStep.kilograms());
    for (int step = 1; step <= most; ++step) {
        const Mass load =
            Mass::ofThousandths(step * kit.stackStep.thousandths(), kit.stackStep.unit());
        m_loads.push_back({load, exactWeight(load), {}});
    }
}

std::vector<AvailableLoad>::const_iterator AvailableLoads::firstNotBelow(std::int64_t exact) const
{
    return std::lower_bound(
        m_loads.begin(), m_loads.end(), exact, [](const AvailableLoad& load, std::int64_t value) {
            return load.exact < value;
        });
}

std::optional<AvailableLoad> AvailableLoads::atMost(double kilograms) const
{
    const auto after = firstNotBelow(exactWeight(kilograms) + 1);
    return after == m_loads.begin() ? std::nullopt : std::optional(*std::prev(after));
}

std::optional<AvailableLoad> AvailableLoads::above(const Mass& load) const
{
    const auto found = firstNotBelow(exactWeight(load) + 1);
    return found == m_loads.end() ? std::nullopt : std::optional(*found);
}

std::optional<AvailableLoad> AvailableLoads::below(const Mass& load) const
{
    const auto after = firstNotBelow(exactWeight(load));
    return after == m_loads.begin() ? std::nullopt : std::optional(*std::prev(after));
}

std::optional<AvailableLoad> AvailableLoads::exactly(const Mass& load) const
{
    const auto found = firstNotBelow(exactWeight(load));
    return found != m_loads.end() && found->exact == exactWeight(load) ? std::optional(*found)
                                                                       : std::nullopt;
}

std::optional<AvailableLoad> AvailableLoads::lightest() const
{
    return m_loads.empty() ? std::nullopt : std::optional(m_loads.front());
}

} // namespace levelbar
