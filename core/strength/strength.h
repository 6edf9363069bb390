// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/day.h"
#include "core/base/estimate.h"
#include "core/exercise/done_set.h"
#include "core/exercise/exercise.h"
#include "core/member/member.h"

#include <optional>
#include <span>

namespace levelbar {

// How old the newest evidence is: up to 4 weeks, up to 12, older.
enum class Evidence { Recent, GettingOld, TooOld };

[[nodiscard]] std::string_view evidenceWord(Evidence evidence); // "recent", "getting_old", ...
[[nodiscard]] Evidence evidenceOf(Day last, Day today);

// A tested maximum on a day: the best valid trial.
struct TestedMaximum {
    Day day;
    double kilograms = 0.0; // > 0
};

// Strength today in one exercise and side.
struct StrengthEstimate {
    Estimate oneRepMax;     // kg; count = sets and tests that measure it (not mere lower bounds)
    double logSpread = 0.0; // standard deviation of ln 1RM
    double repCurveFactor = 1.0; // reps beyond the first at a load, over the average person's
    int bounds = 0;              // sets that say only "at least"
    Day lastSet;
    Evidence evidence = Evidence::Recent;
};

// What is known of one exercise and side, by day. Entries after `today` are passed over.
struct StrengthHistory {
    std::span<const PerformedSet> sets;
    std::span<const TestedMaximum> tests;
    std::optional<Experience> experience;
};

// Nothing when no set or test up to `today` says anything (no load, no reps).
[[nodiscard]] std::optional<StrengthEstimate> estimateStrength(const StrengthHistory& history,
                                                               Day today);

} // namespace levelbar
