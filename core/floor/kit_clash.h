// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/floor/floor_change.h"
#include "core/floor/kit_in_use.h"

#include <cstddef>
#include <span>
#include <vector>

namespace levelbar {

// One person's work in one round.
struct KitWant {
    MemberId member;
    int station = 1; // people of one station hand pieces on; stations work side by side
    int round = 1;
    ExerciseId exercise;
    Mass load;

    friend bool operator==(const KitWant&, const KitWant&) = default;
};

// A piece that more people want at once than there are.
struct KitClash {
    int round = 1;
    Piece piece; // count: wanted at once
    int owned = 0;
    std::vector<std::size_t> wants; // who wants it, as listed
};

enum class KitFix {
    LighterLoad, // the next one that exists
    HeavierLoad,
    OtherOrder, // two rounds of the person change places
    OtherRound, // to a round in which the person does nothing
};

// One change for one person. round: the other one, with OtherOrder and OtherRound.
struct KitChange {
    KitFix fix = KitFix::OtherOrder;
    std::size_t want = 0;
    int round = 0;
    Mass load;
    int cost = 0; // 1 other order, 2 other round, 3 lighter, 4 heavier; assumed

    friend bool operator==(const KitChange&, const KitChange&) = default;
};

struct KitSettlement {
    std::vector<KitChange> changes;
    int shortPieces = 0; // still wanted beyond what there is
    int cost = 0;
    bool isProvedBest = true; // no other changes leave fewer short, or cost less
};

// The open sets of the hour, in the order of its cells.
[[nodiscard]] std::vector<KitWant> wantsOf(const ClassFloor& floor);

// By round, heaviest piece first.
[[nodiscard]] std::vector<KitClash> findClashes(std::span<const KitWant> wants,
                                                const FloorBook& book);

// "Round 2: the 10 kg pair is wanted by 3, there is 1": how a clash is said.
[[nodiscard]] Phrase clashPhrase(const KitClash& clash);

// What one person alone could change against a clash without making another, cheapest first.
[[nodiscard]] std::vector<KitChange>
fixesFor(const KitClash& clash, std::span<const KitWant> wants, const FloorBook& book);

// At most one change a person so that as few pieces as possible are short, and of those the
// cheapest. Exact by branch and bound while that lasts 10,000 steps (a second); after that the best
// found, at least as good as taking the most helpful change again and again.
// People in `fixed` (who have lifted) are left alone.
[[nodiscard]] KitSettlement
settle(std::span<const KitWant> wants, const FloorBook& book, std::span<const MemberId> fixed = {});

// All changes a person could make, and the wants after one; also what the proof goes over.
[[nodiscard]] std::vector<KitChange>
changesOf(MemberId member, std::span<const KitWant> wants, const FloorBook& book);
[[nodiscard]] std::vector<KitWant> after(const KitChange& change, std::vector<KitWant> wants);

} // namespace levelbar
