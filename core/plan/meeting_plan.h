// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/floor/kit_clash.h"
#include "core/floor/round_minutes.h"
#include "core/plan/class_week.h"
#include "core/plan/rack_line_up.h"
#include "core/plan/target.h"

#include <map>
#include <optional>
#include <span>
#include <utility>
#include <vector>

namespace levelbar {

// What a meeting's plan is made from. Histories are those of who is expected.
struct MeetingPlanQuestion {
    std::span<const MemberHistory> people;
    std::span<const PlanItem> items;
    std::span<const PlanBlock> blocks; // those without an entry: 20 minutes, one half
    const Library* library = nullptr;
    const Kit* kit = nullptr;
    std::map<std::pair<MemberId, ExerciseId>, RackSetting> settings; // of the set-up cards
    RackCompany company;
    int racks = 4;
    Day on;
    bool isProofWanted = true; // of the rack sharing, that no better one exists
};

// One person's aim in one exercise, from what was done before that day: the same as on the person's
// page and on the floor (see person_plan.h).
struct PlannedTarget {
    MemberId member;
    std::size_t item = 0; // index into the items
    Result<Target> target = tl::unexpected(Fault{});

    // The load that exists; the lightest there is when all are too heavy.
    [[nodiscard]] std::optional<AvailableLoad> load() const;
};

// A person's place at a rack, in turn order.
struct RackPlace {
    MemberId member;
    int rack = 1;
    int turn = 1; // within the rack
};

// One barbell exercise on the racks.
struct RackRound {
    std::size_t item = 0; // index into the items
    ExerciseId exercise;
    int half = 1;
    std::vector<RackPlace> places;
    RackSharing sharing;
    BrokenRules broken;
};

struct BlockPlan {
    PlanBlock block;
    int sets = 0;                  // rounds of all its exercises
    std::vector<RackRound> rounds; // of barbell exercises, by item, then half
    BlockMinutes minutes;
    std::optional<Fault> noSharing; // why racks could not be shared out
};

struct MeetingPlanAnswer {
    std::vector<PlannedTarget> targets; // by item, then person as given
    std::vector<BlockPlan> blocks;      // by number
    std::vector<KitWant> wants;         // round: item's place from 1; station: see below
    std::vector<KitClash> clashes;
    FloorBook book; // what clashes and their fixes were judged by
};

// Targets, racks, minutes and clashes of a meeting. Whoever has no load in a barbell exercise (see
// PlannedTarget::target) is not at a rack. The people are shared over the racks anew in every
// exercise, in two halves by their order where the block says so, with warm-up sets, hooks,
// safeties and bench angles counted, the plates the gym owns, who is kept apart and who can spot.
// In a round all do the same exercise at once; those of a rack hand plates on, everybody else is a
// station of their own. A block's minutes take its longest round of each half for every set of the
// exercise, and count exercises without a bar as one person's set and rest a set.
[[nodiscard]] MeetingPlanAnswer planMeeting(const MeetingPlanQuestion& question);

} // namespace levelbar
