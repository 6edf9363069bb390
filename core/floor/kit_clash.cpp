// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/floor/kit_clash.h"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

namespace levelbar {

namespace {

constexpr int kMostSteps = 10'000;

struct Use {
    Piece piece;
    std::map<int, int> atStations; // the most that anyone there wants
    std::vector<std::size_t> wants;
};

// By round, then heaviest piece first.
using Uses = std::map<std::tuple<int, std::int64_t, Implement>, Use>;

// Pieces of a load are looked up once.
class Pieces {
public:
    explicit Pieces(const FloorBook& book)
        : m_book(book)
    {
    }

    const std::vector<Piece>& of(const KitWant& want)
    {
        const std::pair key(want.exercise, exactWeight(want.load));
        const auto known = m_known.find(key);
        if (known != m_known.end()) {
            return known->second;
        }
        const FloorExercise* found = m_book.find(want.exercise);
        return m_known[key] =
                   found == nullptr ? std::vector<Piece>{} : piecesFor(*found, want.load);
    }

    Uses usesOf(std::span<const KitWant> wants)
    {
        Uses uses;
        for (std::size_t i = 0; i < wants.size(); ++i) {
            for (const Piece& piece : of(wants[i])) {
                Use& use = uses[{wants[i].round, -piece.exact, piece.implement}];
                use.piece = piece;
                int& most = use.atStations[wants[i].station];
                most = std::max(most, piece.count);
                use.wants.push_back(i);
            }
        }
        return uses;
    }

    std::vector<KitClash> clashesOf(std::span<const KitWant> wants)
    {
        std::vector<KitClash> clashes;
        for (auto& [key, use] : usesOf(wants)) {
            KitClash clash{std::get<0>(key), use.piece, owned(m_book.kit, use.piece), use.wants};
            clash.piece.count = 0;
            for (const auto& [station, most] : use.atStations) {
                clash.piece.count += most;
            }
            if (clash.piece.count > clash.owned) {
                clashes.push_back(std::move(clash));
            }
        }
        return clashes;
    }

private:
    const FloorBook& m_book;
    std::map<std::pair<ExerciseId, std::int64_t>, std::vector<Piece>> m_known;
};

int shortOf(const std::vector<KitClash>& clashes)
{
    int sum = 0;
    for (const KitClash& clash : clashes) {
        sum += clash.piece.count - clash.owned;
    }
    return sum;
}

// Takes the first clash in turn: somebody in it changes, or it stays. Any change that is worth
// its cost is of somebody in a clash, so nothing better is passed over.
class Settling {
public:
    Settling(std::span<const KitWant> wants, const FloorBook& book, std::span<const MemberId> fixed)
        : m_pieces(book)
        , m_settled(fixed.begin(), fixed.end())
    {
        for (const KitWant& want : wants) {
            m_changes.try_emplace(want.member, changesOf(want.member, wants, book));
        }
        m_best.shortPieces = shortOf(m_pieces.clashesOf(wants)) + 1;
        goGreedily({wants.begin(), wants.end()});
        search({wants.begin(), wants.end()}, {});
        m_best.isProvedBest = m_steps < kMostSteps;
    }

    [[nodiscard]] const KitSettlement& best() const { return m_best; }

private:
    using Kept = std::set<std::tuple<int, Implement, std::int64_t>>;

    // A first answer to cut the search by: the change that helps most, again and again.
    void goGreedily(std::vector<KitWant> wants)
    {
        const std::set<MemberId> fixed = m_settled;
        int left = shortOf(m_pieces.clashesOf(wants));
        for (bool isBetter = true; isBetter && left > 0;) {
            note(left);
            const std::optional<KitChange> best = bestChange(wants, left);
            isBetter = best.has_value();
            if (isBetter) {
                m_settled.insert(wants[best->want].member);
                m_chosen.push_back(*best);
                m_cost += best->cost;
                wants = after(*best, std::move(wants));
                left = shortOf(m_pieces.clashesOf(wants));
            }
        }
        note(left);
        m_settled = fixed;
        m_chosen.clear();
        m_cost = 0;
    }

    std::optional<KitChange> bestChange(const std::vector<KitWant>& wants, int left)
    {
        std::optional<KitChange> best;
        std::pair<int, int> least{left, 0};
        for (const auto& [member, changes] : m_changes) {
            if (m_settled.count(member) > 0) {
                continue;
            }
            for (const KitChange& one : changes) {
                const std::pair then(shortOf(m_pieces.clashesOf(after(one, wants))), one.cost);
                if (then.first < left && (!best || then < least)) {
                    best = one;
                    least = then;
                }
            }
        }
        return best;
    }

    void search(const std::vector<KitWant>& wants, Kept kept)
    {
        if (++m_steps > kMostSteps) {
            return;
        }
        const auto clashes = m_pieces.clashesOf(wants);
        note(shortOf(clashes));
        const KitClash* first = nullptr;
        for (const KitClash& clash : clashes) {
            const bool isKept =
                kept.count({clash.round, clash.piece.implement, clash.piece.exact}) > 0;
            first = first == nullptr && !isKept ? &clash : first;
        }
        if (first == nullptr || (m_best.shortPieces == 0 && m_cost + 1 >= m_best.cost)) {
            return;
        }
        std::set<MemberId> asked;
        for (const std::size_t want : first->wants) {
            const MemberId member = wants[want].member;
            if (m_settled.count(member) == 0 && asked.insert(member).second) {
                change(member, wants, kept);
            }
        }
        kept.insert({first->round, first->piece.implement, first->piece.exact});
        // With a way to have nothing short, a clash that stays is no answer.
        if (m_best.shortPieces > 0) {
            search(wants, std::move(kept));
        }
    }

    void change(MemberId member, const std::vector<KitWant>& wants, const Kept& kept)
    {
        m_settled.insert(member);
        for (const KitChange& one : m_changes.at(member)) {
            m_cost += one.cost;
            m_chosen.push_back(one);
            search(after(one, wants), kept);
            m_chosen.pop_back();
            m_cost -= one.cost;
        }
        m_settled.erase(member);
    }

    void note(int shortPieces)
    {
        if (std::pair(shortPieces, m_cost) < std::pair(m_best.shortPieces, m_best.cost)) {
            m_best.changes = m_chosen;
            m_best.shortPieces = shortPieces;
            m_best.cost = m_cost;
        }
    }

    Pieces m_pieces;
    std::set<MemberId> m_settled;
    std::map<MemberId, std::vector<KitChange>> m_changes;
    std::vector<KitChange> m_chosen;
    int m_cost = 0;
    int m_steps = 0;
    KitSettlement m_best;
};

// Other work of the same person at the same station, in a round of its own.
void addOrders(std::size_t index, std::span<const KitWant> wants, std::vector<KitChange>& all)
{
    const KitWant& want = wants[index];
    for (std::size_t j = index + 1; j < wants.size(); ++j) {
        const KitWant& other = wants[j];
        const bool isSameWork = other.exercise == want.exercise && other.load == want.load;
        if (other.member == want.member && other.station == want.station &&
            other.round != want.round && !isSameWork) {
            all.push_back({KitFix::OtherOrder, index, other.round, want.load, 1});
        }
    }
}

void addLoads(std::size_t index,
              const KitWant& want,
              const FloorBook& book,
              std::vector<KitChange>& all)
{
    const FloorExercise* found = book.find(want.exercise);
    if (found == nullptr || !found->loads) {
        return;
    }
    const AvailableLoads& loads = *found->loads;
    if (const auto below = loads.below(want.load)) {
        all.push_back({KitFix::LighterLoad, index, 0, below->load, 3});
    }
    if (const auto above = loads.above(want.load)) {
        all.push_back({KitFix::HeavierLoad, index, 0, above->load, 4});
    }
}

} // namespace

std::vector<KitWant> wantsOf(const ClassFloor& floor)
{
    std::vector<KitWant> wants;
    for (const PadCell& cell : floor.cells) {
        if (cell.isOpen()) {
            const PlannedSet& planned = cell.planned;
            wants.push_back(
                {planned.member, cell.station, cell.round, planned.exercise, planned.load});
        }
    }
    return wants;
}

std::vector<KitClash> findClashes(std::span<const KitWant> wants, const FloorBook& book)
{
    return Pieces(book).clashesOf(wants);
}

Phrase clashPhrase(const KitClash& clash)
{
    std::string pieces = loadText(clash.piece.mass);
    return {"Round %1: %2 of %3 wanted, %4 there (people: %5).",
            {std::to_string(clash.round),
             std::to_string(clash.piece.count),
             std::move(pieces),
             std::to_string(clash.owned),
             std::to_string(clash.wants.size())}};
}

std::vector<KitChange>
changesOf(MemberId member, std::span<const KitWant> wants, const FloorBook& book)
{
    std::set<int> idle;
    for (const KitWant& want : wants) {
        idle.insert(want.round);
    }
    for (const KitWant& want : wants) {
        if (want.member == member) {
            idle.erase(want.round);
        }
    }
    std::vector<KitChange> all;
    for (std::size_t i = 0; i < wants.size(); ++i) {
        if (wants[i].member == member) {
            addOrders(i, wants, all);
            for (const int round : idle) {
                all.push_back({KitFix::OtherRound, i, round, wants[i].load, 2});
            }
            addLoads(i, wants[i], book, all);
        }
    }
    std::stable_sort(
        all.begin(), all.end(), [](const auto& a, const auto& b) { return a.cost < b.cost; });
    return all;
}

std::vector<KitWant> after(const KitChange& change, std::vector<KitWant> wants)
{
    KitWant& want = wants[change.want];
    if (change.fix == KitFix::OtherOrder) {
        for (KitWant& other : wants) {
            if (other.member == want.member && other.round == change.round) {
                other.round = want.round;
            }
        }
    }
    want.round = change.round > 0 ? change.round : want.round;
    want.load = change.load;
    return wants;
}

std::vector<KitChange>
fixesFor(const KitClash& clash, std::span<const KitWant> wants, const FloorBook& book)
{
    Pieces pieces(book);
    const auto before = pieces.clashesOf(wants);
    const auto shortAt = [](const std::vector<KitClash>& clashes, const KitClash& at) {
        for (const KitClash& one : clashes) {
            if (one.round == at.round && one.piece.implement == at.piece.implement &&
                one.piece.exact == at.piece.exact) {
                return one.piece.count - one.owned;
            }
        }
        return 0;
    };
    std::vector<KitChange> fixes;
    std::set<MemberId> people;
    for (const std::size_t want : clash.wants) {
        people.insert(wants[want].member);
    }
    for (const MemberId member : people) {
        for (const KitChange& change : changesOf(member, wants, book)) {
            const auto left = pieces.clashesOf(after(change, {wants.begin(), wants.end()}));
            const bool isBetter = shortAt(left, clash) < shortAt(before, clash);
            const bool isClean = std::all_of(left.begin(), left.end(), [&](const KitClash& one) {
                return one.piece.count - one.owned <= shortAt(before, one);
            });
            if (isBetter && isClean) {
                fixes.push_back(change);
            }
        }
    }
    std::stable_sort(
        fixes.begin(), fixes.end(), [](const auto& a, const auto& b) { return a.cost < b.cost; });
    return fixes;
}

KitSettlement
settle(std::span<const KitWant> wants, const FloorBook& book, std::span<const MemberId> fixed)
{
    return Settling(wants, book, fixed).best();
}

} // namespace levelbar
