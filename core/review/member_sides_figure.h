// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/review/figures.h"
#include "core/review/wording.h"

#include <optional>
#include <string>
#include <vector>

namespace levelbar {

// One side on one day: a set or tested maximum as the 1RM it speaks for, or a test's best trial.
struct SideDot {
    Side side = Side::Left;
    StrengthDot dot; // in the figure's unit
};

// Where a day's pair comes from: sets as they were planned, an open pair, or a test.
enum class PairKind { Sets, Open, Test };

// A day on which both sides can be compared.
struct PairDot {
    Day day;
    double percent = 0.0; // as in SideReview: positive when the right is stronger
    PairKind kind = PairKind::Sets;
    // What was compared: the first sets of equal number, or the test's values.
    std::optional<PerformedSet> left;
    std::optional<PerformedSet> right;
    double leftValue = 0.0;
    double rightValue = 0.0;
};

// A person's left and right in one measure through time.
struct MemberSidesFigure {
    SideReview review;         // what is said of it today
    std::string unit;          // of the upper half: "kg", or the test's
    bool isLessBetter = false; // in the upper half
    std::vector<SideDot> dots; // by day, left before right
    std::vector<BandPoint> left;
    std::vector<BandPoint> right;
    std::vector<PairDot> pairs; // by day
    // Percent, as in SideReview: what was known of the difference after each pair, and today.
    std::vector<BandPoint> difference;
};

// `review`: of the whole roster, whose noise and prior the difference is judged by. `side`: one
// of that person's in it. Strength follows its fit, as seen today. A test has none: its bands are
// the weighted mean of the days so far, with one side's share of the roster's noise (half of a
// pair's variance; what both sides have of a day in common is not in it).
[[nodiscard]] MemberSidesFigure memberSidesFigure(const MemberHistory& history,
                                                  const Library& library,
                                                  const Review& review,
                                                  const SideReview& side);

// "8 and 10 reps with 14 kg: about 5 % in strength, left weaker.": what was done on the left,
// then on the right.
[[nodiscard]] std::vector<Phrase> phrases(const PairDot& pair, const std::string& unit);

} // namespace levelbar
