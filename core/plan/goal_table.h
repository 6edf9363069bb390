// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/member/member.h"

#include <optional>
#include <span>
#include <string_view>

namespace levelbar {

struct WholeRange {
    int low = 0;
    int high = 0; // not below low

    friend bool operator==(const WholeRange&, const WholeRange&) = default;
};

// What the handbooks give for a goal at a level: where a plan starts, not what it must be.
struct GoalRow {
    Goal goal = Goal::General;
    Experience experience = Experience::Novice;
    WholeRange percentOfMaximum; // 0 as low end: no lower limit is given
    WholeRange reps;
    WholeRange sets;
    WholeRange restSeconds;
    std::string_view source;
};

// Fifteen rows: every goal at every level. The cells were taken down from memory of the sources
// named, and seen second-hand where DEVELOPERS.md says so.
[[nodiscard]] std::span<const GoalRow> goalTable();

// Nothing known: general, novice.
[[nodiscard]] const GoalRow& goalRow(std::optional<Goal> goal,
                                     std::optional<Experience> experience);

// The reps to propose for a row: the middle of its range, the lower of two middles.
[[nodiscard]] int proposedReps(const GoalRow& row);

// What to leave when nobody says: common practice, no source.
inline constexpr int kUsualReserve = 2;

} // namespace levelbar
