// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/gym/group_prices.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace levelbar {

namespace {

constexpr std::size_t kBlock = 8192; // groups looked at before one is taken in
constexpr std::size_t kMostPivotsPerRow = 60;
constexpr double kNothing = 1e-7;

// Revised simplex with a dense inverse; rows are the kinds and, when racks have two sizes, the
// number of racks. Starts from a stand-in for each row that costs more than any group.
class PriceSimplex {
public:
    PriceSimplex(RackGroups& groups, const TurnCosts& costs, std::size_t racks)
        : m_groups(groups)
        , m_kinds(costs.kinds().size())
        , m_rows(m_kinds + (costs.size() % racks != 0 ? 1 : 0))
        , m_inverse(m_rows * m_rows, 0.0)
        , m_entering(m_rows)
        , m_prices(m_rows)
    {
        int dearest = 1;
        for (std::size_t group = 0; group < groups.count(); ++group) {
            dearest = std::max(dearest, groups.cost(group));
        }
        m_basicCosts.assign(m_rows, 4.0 * dearest);
        for (std::size_t row = 0; row < m_rows; ++row) {
            m_inverse[row * m_rows + row] = 1.0;
            const double needed =
                static_cast<double>(row < m_kinds ? costs.kinds()[row].count : racks);
            // A little more, differently for each row: without it many steps would lead nowhere.
            // The bound is reckoned from the true counts afterwards.
            m_levels.push_back(needed + 1e-4 * static_cast<double>(1 + row * 37 % 101) / 101);
        }
    }

    std::vector<double> solve()
    {
        findPrices();
        for (std::size_t pivot = 0; pivot < kMostPivotsPerRow * m_rows; ++pivot) {
            const std::size_t group = cheaperGroup();
            if (group == m_groups.count() || !takeIn(group)) {
                break;
            }
            findPrices();
        }
        return {m_prices.begin(), m_prices.begin() + static_cast<std::ptrdiff_t>(m_kinds)};
    }

private:
    [[nodiscard]] double reducedCost(std::size_t group) const
    {
        double cost = m_groups.cost(group);
        for (const std::uint8_t kind : m_groups.kinds(group)) {
            cost -= m_prices[kind];
        }
        return m_rows > m_kinds ? cost - m_prices.back() : cost;
    }

    // The best of the first block, from where the last search ended, that has any.
    std::size_t cheaperGroup()
    {
        std::size_t best = m_groups.count();
        double least = -kNothing;
        for (std::size_t looked = 0; looked < m_groups.count(); ++looked) {
            if (looked % kBlock == 0 && best != m_groups.count()) {
                break;
            }
            if (reducedCost(m_next) < least) {
                m_groups.makeExact(m_next);
            }
            if (reducedCost(m_next) < least) {
                least = reducedCost(m_next);
                best = m_next;
            }
            m_next = m_next + 1 == m_groups.count() ? 0 : m_next + 1;
        }
        return best;
    }

    void findPrices()
    {
        std::fill(m_prices.begin(), m_prices.end(), 0.0);
        for (std::size_t row = 0; row < m_rows; ++row) {
            for (std::size_t column = 0; column < m_rows; ++column) {
                m_prices[column] += m_basicCosts[row] * m_inverse[row * m_rows + column];
            }
        }
    }

    // False when the group would pivot on nothing.
    bool takeIn(std::size_t group)
    {
        std::fill(m_entering.begin(), m_entering.end(), 0.0);
        for (std::size_t row = 0; row < m_rows; ++row) {
            for (const std::uint8_t kind : m_groups.kinds(group)) {
                m_entering[row] += m_inverse[row * m_rows + kind];
            }
            m_entering[row] += m_rows > m_kinds ? m_inverse[row * m_rows + m_kinds] : 0.0;
        }
        std::size_t leaving = m_rows;
        double least = std::numeric_limits<double>::infinity();
        for (std::size_t row = 0; row < m_rows; ++row) {
            if (m_entering[row] > kNothing && m_levels[row] / m_entering[row] < least) {
                least = m_levels[row] / m_entering[row];
                leaving = row;
            }
        }
        if (leaving == m_rows) {
            return false;
        }
        pivot(leaving);
        m_basicCosts[leaving] = m_groups.cost(group);
        return true;
    }

    void pivot(std::size_t leaving)
    {
        const double by = m_entering[leaving];
        double* const pivotRow = m_inverse.data() + leaving * m_rows;
        m_levels[leaving] /= by;
        std::for_each(pivotRow, pivotRow + m_rows, [by](double& value) { value /= by; });
        for (std::size_t row = 0; row < m_rows; ++row) {
            const double factor = m_entering[row];
            if (row == leaving || factor == 0.0) {
                continue;
            }
            m_levels[row] = std::max(0.0, m_levels[row] - factor * m_levels[leaving]);
            for (std::size_t column = 0; column < m_rows; ++column) {
                m_inverse[row * m_rows + column] -= factor * pivotRow[column];
            }
        }
    }

    RackGroups& m_groups;
    std::size_t m_kinds;
    std::size_t m_rows;
    std::vector<double> m_inverse;
    std::vector<double> m_entering;
    std::vector<double> m_prices;
    std::vector<double> m_levels;
    std::vector<double> m_basicCosts;
    std::size_t m_next = 0;
};

} // namespace

GroupPrices priceGroups(RackGroups& groups, const TurnCosts& costs, std::size_t racks)
{
    GroupPrices prices;
    for (const double price : PriceSimplex(groups, costs, racks).solve()) {
        prices.kinds.push_back(std::llround(price * static_cast<double>(GroupPrices::kScale)));
    }
    constexpr std::int64_t kNone = std::numeric_limits<std::int64_t>::max();
    std::int64_t leastSmaller = kNone;
    std::int64_t leastLarger = kNone;
    prices.surpluses.resize(groups.count());
    for (std::size_t group = 0; group < groups.count(); ++group) {
        std::int64_t surplus = GroupPrices::kScale * groups.cost(group);
        for (const std::uint8_t kind : groups.kinds(group)) {
            surplus -= prices.kinds[kind];
        }
        prices.surpluses[group] = surplus;
        auto& least = groups.isLarger(group) ? leastLarger : leastSmaller;
        least = std::min(least, surplus);
    }
    for (std::size_t group = 0; group < groups.count(); ++group) {
        prices.surpluses[group] -= groups.isLarger(group) ? leastLarger : leastSmaller;
    }
    const auto larger = static_cast<std::int64_t>(costs.size() % racks);
    prices.bound = (static_cast<std::int64_t>(racks) - larger) * leastSmaller +
                   (larger > 0 ? larger * leastLarger : 0);
    for (std::size_t kind = 0; kind < prices.kinds.size(); ++kind) {
        prices.bound += prices.kinds[kind] * static_cast<std::int64_t>(costs.kinds()[kind].count);
    }
    return prices;
}

} // namespace levelbar
