// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/gym/group_cover.h"

#include <algorithm>
#include <array>
#include <bit>
#include <cassert>
#include <tuple>

namespace levelbar {

namespace {

constexpr std::size_t kMostWays = 500'000; // of one number of racks filled
constexpr std::size_t kMostTried = 20'000'000;

// How many lifters of each kind are still without a rack, as fields of bits, each with a guard
// bit above it that stays free.
using Left = std::array<std::uint64_t, 2>;

class Fields {
public:
    // False when the kinds need more bits than there are.
    bool make(const std::vector<TurnCosts::Kind>& kinds)
    {
        std::size_t word = 0;
        unsigned used = 0;
        for (const TurnCosts::Kind& kind : kinds) {
            const auto width = static_cast<unsigned>(std::bit_width(kind.count)) + 1;
            if (used + width > 64) {
                ++word;
                used = 0;
            }
            if (word == Left{}.size() || width > 64) {
                return false;
            }
            const std::uint64_t guard = std::uint64_t{1} << (used + width - 1);
            m_fields.push_back({word, used, guard - (std::uint64_t{1} << used)});
            m_guards.at(word) |= guard;
            m_all.at(word) |= static_cast<std::uint64_t>(kind.count) << used;
            used += width;
        }
        return true;
    }

    [[nodiscard]] Left all() const { return m_all; }

    [[nodiscard]] Left of(std::span<const std::uint8_t> kinds) const
    {
        Left left{};
        for (const std::uint8_t kind : kinds) {
            left.at(m_fields[kind].word) += std::uint64_t{1} << m_fields[kind].shift;
        }
        return left;
    }

    // What is left after a group, when all its lifters are there.
    [[nodiscard]] std::optional<Left> without(const Left& left, const Left& group) const
    {
        const std::uint64_t first = (left[0] | m_guards[0]) - group[0];
        const std::uint64_t second = (left[1] | m_guards[1]) - group[1];
        if ((first & m_guards[0]) != m_guards[0] || (second & m_guards[1]) != m_guards[1]) {
            return std::nullopt;
        }
        return Left{first & ~m_guards[0], second & ~m_guards[1]};
    }

    // The first kind of which someone is left.
    [[nodiscard]] std::size_t firstKind(const Left& left) const
    {
        std::size_t kind = 0;
        while ((left.at(m_fields[kind].word) & m_fields[kind].mask) == 0) {
            ++kind;
        }
        return kind;
    }

private:
    struct Field {
        std::size_t word = 0;
        unsigned shift = 0;
        std::uint64_t mask = 0; // without the guard
    };

    std::vector<Field> m_fields;
    Left m_guards{};
    Left m_all{};
};

class Covering {
public:
    Covering(RackGroups& groups,
             const GroupPrices& prices,
             const TurnCosts& costs,
             std::size_t racks)
        : m_groups(groups)
        , m_surpluses(prices.surpluses)
        , m_racks(racks)
        , m_larger(costs.size() % racks)
        , m_isPossible(m_fields.make(costs.kinds()))
        , m_byFirst(costs.kinds().size())
    {
    }

    enum class Outcome { Found, None, TooMany };

    // Whether some way has surpluses of at most `reach` in all.
    Outcome search(std::int64_t reach)
    {
        if (!m_isPossible) {
            return Outcome::TooMany;
        }
        if (!list(reach)) {
            return Outcome::TooMany;
        }
        m_layers.assign(1, {Way{m_fields.all(), 0, 0, 0, 0}});
        for (std::size_t rack = 0; rack < m_racks; ++rack) {
            std::vector<Way> next;
            for (std::size_t way = 0; way < m_layers.back().size(); ++way) {
                extend(way, reach, next);
                const bool isFull = next.size() > 2 * kMostWays;
                if (isFull) {
                    keepCheapest(next);
                }
                if ((isFull && next.size() > kMostWays) || m_tried > kMostTried) {
                    return Outcome::TooMany;
                }
            }
            keepCheapest(next);
            m_layers.push_back(std::move(next));
        }
        return m_layers.back().empty() ? Outcome::None : Outcome::Found;
    }

    // The groups of the cheapest way found.
    [[nodiscard]] std::vector<std::size_t> found() const
    {
        std::vector<std::size_t> groups;
        std::size_t way = 0; // everyone has a rack: one way is left
        for (std::size_t layer = m_layers.size() - 1; layer > 0; --layer) {
            groups.push_back(m_layers[layer][way].group);
            way = m_layers[layer][way].before;
        }
        return groups;
    }

private:
    struct Way {
        Left left{};
        std::int64_t surplus = 0;
        std::uint32_t before = 0; // in the layer before
        std::uint32_t group = 0;
        std::uint32_t larger = 0; // larger groups so far
    };

    struct Candidate {
        std::int64_t surplus = 0;
        std::uint32_t group = 0;
        Left lifters{};
    };

    // Groups within reach by their first kind, cheapest first: whoever is first of those left
    // must be the first of the group that takes him in. False when their costs are not all exact.
    bool list(std::int64_t reach)
    {
        for (auto& candidates : m_byFirst) {
            candidates.clear();
        }
        for (std::size_t group = 0; group < m_groups.count(); ++group) {
            std::int64_t surplus = m_surpluses[group];
            if (surplus <= reach && !m_groups.isExact(group)) {
                const int before = m_groups.cost(group);
                if (!m_groups.makeExact(group)) {
                    return false;
                }
                surplus += GroupPrices::kScale * (m_groups.cost(group) - before);
                m_surpluses[group] = surplus;
            }
            if (surplus <= reach) {
                const auto kinds = m_groups.kinds(group);
                m_byFirst[kinds.front()].push_back(
                    {surplus, static_cast<std::uint32_t>(group), m_fields.of(kinds)});
            }
        }
        for (auto& candidates : m_byFirst) {
            std::stable_sort(candidates.begin(),
                             candidates.end(),
                             [](const auto& a, const auto& b) { return a.surplus < b.surplus; });
        }
        return true;
    }

    void extend(std::size_t from, std::int64_t reach, std::vector<Way>& next)
    {
        const Way& way = m_layers.back()[from];
        const std::size_t filled = m_layers.size() - 1;
        const bool allowsSmaller = filled - way.larger < m_racks - m_larger;
        const bool allowsLarger = way.larger < m_larger;
        for (const Candidate& candidate : m_byFirst[m_fields.firstKind(way.left)]) {
            ++m_tried;
            if (way.surplus + candidate.surplus > reach) {
                break;
            }
            const bool isLarger = m_groups.isLarger(candidate.group);
            if (!(isLarger ? allowsLarger : allowsSmaller)) {
                continue;
            }
            if (const auto left = m_fields.without(way.left, candidate.lifters)) {
                next.push_back({*left,
                                way.surplus + candidate.surplus,
                                static_cast<std::uint32_t>(from),
                                candidate.group,
                                way.larger + (isLarger ? 1 : 0)});
            }
        }
    }

    // Of ways that leave the same lifters, one with the least surplus.
    static void keepCheapest(std::vector<Way>& ways)
    {
        std::sort(ways.begin(), ways.end(), [](const Way& a, const Way& b) {
            return std::tie(a.left, a.surplus, a.before, a.group) <
                   std::tie(b.left, b.surplus, b.before, b.group);
        });
        ways.erase(std::unique(ways.begin(),
                               ways.end(),
                               [](const Way& a, const Way& b) { return a.left == b.left; }),
                   ways.end());
    }

    RackGroups& m_groups;
    std::vector<std::int64_t> m_surpluses;
    std::size_t m_racks;
    std::size_t m_larger;
    Fields m_fields;
    bool m_isPossible;
    std::vector<std::vector<Candidate>> m_byFirst;
    std::vector<std::vector<Way>> m_layers; // by the number of racks filled
    std::size_t m_tried = 0;
};

} // namespace

GroupCover cheapestCover(RackGroups& groups,
                         const GroupPrices& prices,
                         const TurnCosts& costs,
                         std::size_t racks,
                         int known)
{
    const std::int64_t grain = GroupPrices::kScale * costs.grain();
    GroupCover cover;
    // Rounded up to what a cost can be; costs are never below nothing.
    const std::int64_t grains = std::max<std::int64_t>(0, (prices.bound + grain - 1) / grain);
    cover.lowerBound = static_cast<int>(grains) * costs.grain();
    Covering covering(groups, prices, costs, racks);
    while (cover.lowerBound < known) {
        const auto outcome = covering.search(GroupPrices::kScale * cover.lowerBound - prices.bound);
        if (outcome == Covering::Outcome::TooMany) {
            break;
        }
        if (outcome == Covering::Outcome::Found) {
            cover.groups = covering.found();
            break;
        }
        cover.lowerBound += costs.grain();
    }
    cover.lowerBound = std::min(cover.lowerBound, known);
    return cover;
}

} // namespace levelbar
