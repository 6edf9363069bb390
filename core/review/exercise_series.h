// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/review/history.h"
#include "core/strength/member_strength.h"

#include <array>
#include <optional>
#include <span>
#include <vector>

namespace levelbar {

// Places of the sides in what is indexed by Side.
inline constexpr auto kLeftPlace = static_cast<std::size_t>(Side::Left);
inline constexpr auto kRightPlace = static_cast<std::size_t>(Side::Right);

// A person's history turned round: by exercise, all sides and tested maxima together.
struct ExerciseSeries {
    const Exercise* exercise = nullptr;
    // Indexed by Side: both, left, right. Sets point into the history.
    std::array<std::span<const PerformedSet>, 3> sets;
    std::array<std::vector<TestedMaximum>, 3> maxima;
    std::array<std::span<const Trial>, 3> trials; // the one-rep max test's
    Direction direction = Direction::MoreIsBetter;

    [[nodiscard]] bool has(Side side) const;
    [[nodiscard]] bool isStrength() const; // its load is lifted for reps
    // Last day up to `today` with a set or a valid test of the side.
    [[nodiscard]] std::optional<Day> lastDay(Side side, Day today) const;
};

// By exercise id. `history` and `library` must outlive the result.
[[nodiscard]] std::vector<ExerciseSeries> seriesOf(const MemberHistory& history,
                                                   const Library& library);

// What the strength model takes: one entry a series that isStrength(), with the related lifts of
// the library. `places[i]` is the place in `series` of the i-th entry.
struct StrengthQuestion {
    std::vector<ExerciseHistory> exercises;
    std::vector<std::size_t> places;
};

[[nodiscard]] StrengthQuestion strengthQuestion(const std::vector<ExerciseSeries>& series);

// Standard deviation between people of ln(its maximum / its base's): the library's, or the usual.
[[nodiscard]] double ratioSpread(const Exercise& exercise);

} // namespace levelbar
