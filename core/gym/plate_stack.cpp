// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/gym/plate_stack.h"

#include <algorithm>
#include <numeric>

namespace levelbar {

namespace {

std::int64_t heaviest(MassUnit unit)
{
    return unit == MassUnit::Pound ? 2'204'622 : 1'000'000; // 1000 kg, as in parseMass
}

Result<void> check(Mass mass, MassUnit unit, std::int64_t lowest)
{
    if (mass.unit() != unit) {
        return refuse(FaultCode::OtherUnit, {mass.number(), std::string(unitWord(unit))});
    }
    if (mass.thousandths() < lowest || mass.thousandths() > heaviest(unit)) {
        return refuse(FaultCode::OutOfRange,
                      {mass.number(),
                       Mass::ofThousandths(lowest, unit).number(),
                       Mass::ofThousandths(heaviest(unit), unit).number()});
    }
    return {};
}

} // namespace

Result<PlateStacks> PlateStacks::make(Mass bar, std::vector<Mass> plates)
{
    if (plates.empty()) {
        return refuse(FaultCode::Empty);
    }
    if (const auto sound = check(bar, bar.unit(), 0); !sound) {
        return tl::unexpected(sound.error());
    }
    for (const Mass plate : plates) {
        if (const auto sound = check(plate, bar.unit(), 1); !sound) {
            return tl::unexpected(sound.error());
        }
    }
    std::sort(plates.begin(), plates.end(), [](Mass a, Mass b) {
        return a.thousandths() > b.thousandths();
    });
    plates.erase(std::unique(plates.begin(), plates.end()), plates.end());
    return PlateStacks(bar, std::move(plates));
}

PlateStacks::PlateStacks(Mass bar, std::vector<Mass> plates)
    : m_bar(bar)
    , m_plates(std::move(plates))
{
    m_step = 0;
    for (const Mass plate : m_plates) {
        m_step = std::gcd(m_step, plate.thousandths());
    }
    // One largest plate beyond the heaviest load, so that a load above any that cannot be made
    // is always in the table.
    const std::int64_t most =
        (heaviest(bar.unit()) - bar.thousandths()) / 2 + m_plates.front().thousandths();
    m_fewest.assign(static_cast<std::size_t>(most / m_step + 1), -1);
    m_fewest[0] = 0;
    for (std::size_t side = 1; side < m_fewest.size(); ++side) {
        for (const Mass plate : m_plates) {
            const auto steps = static_cast<std::size_t>(plate.thousandths() / m_step);
            if (steps > side || m_fewest[side - steps] < 0) {
                continue;
            }
            const int count = m_fewest[side - steps] + 1;
            m_fewest[side] = m_fewest[side] < 0 ? count : std::min(m_fewest[side], count);
        }
    }
}

Result<PlateStack> PlateStacks::stackFor(Mass load) const
{
    if (const auto sound = check(load, m_bar.unit(), 0); !sound) {
        return tl::unexpected(sound.error());
    }
    const std::int64_t both = load.thousandths() - m_bar.thousandths();
    if (both < 0) {
        return refuse(FaultCode::BelowTheBar, {load.number(), m_bar.number()});
    }
    auto side = static_cast<std::size_t>(both / (2 * m_step));
    if (both % (2 * m_step) != 0 || m_fewest[side] < 0) {
        std::size_t above = side + 1;
        while (m_fewest[side] < 0) {
            --side;
        }
        while (m_fewest[above] < 0) {
            ++above;
        }
        const auto loadOf = [this](std::size_t steps) {
            return Mass::ofThousandths(m_bar.thousandths() +
                                           2 * m_step * static_cast<std::int64_t>(steps),
                                       m_bar.unit())
                .number();
        };
        return refuse(FaultCode::LoadNotMade, {load.number(), loadOf(side), loadOf(above)});
    }
    // The heaviest plate that still leads to the fewest, over and over: what remains never asks
    // for a heavier one, or that would have come first.
    PlateStack stack;
    while (side > 0) {
        for (const Mass plate : m_plates) {
            const auto steps = static_cast<std::size_t>(plate.thousandths() / m_step);
            if (steps <= side && m_fewest[side - steps] == m_fewest[side] - 1) {
                stack.push_back(plate);
                side -= steps;
                break;
            }
        }
    }
    return stack;
}

} // namespace levelbar
