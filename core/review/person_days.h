// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/review/history.h"

#include <span>
#include <vector>

namespace levelbar {

// Distinct days with a set or a trial, up to and including asOf, ascending.
[[nodiscard]] std::vector<Day> seenDays(const MemberHistory& history, Day asOf);

// A stretch in which the person was not seen: the last day before it and the first after it, or
// asOf while it lasts.
struct LayOff {
    Day from;
    Day to;

    friend bool operator==(const LayOff&, const LayOff&) = default;
};

// Three weeks or more between two days seen (assumed: a fortnight is a holiday).
inline constexpr int kLayOffFromDays = 21;

// `seen` ascending, none after asOf.
[[nodiscard]] std::vector<LayOff> layOffs(std::span<const Day> seen, Day asOf);

// A day on which an exercise hurt.
struct PainfulDay {
    Day day;
    int score = 0; // 1 to 10, the highest of the day

    friend bool operator==(const PainfulDay&, const PainfulDay&) = default;
};

// Of one exercise, all its sides, up to and including asOf; by day.
[[nodiscard]] std::vector<PainfulDay>
painfulDays(const MemberHistory& history, ExerciseId exercise, Day asOf);

} // namespace levelbar
