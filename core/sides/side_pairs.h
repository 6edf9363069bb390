// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/day.h"
#include "core/exercise/done_set.h"
#include "core/sides/side_listing.h"
#include "core/strength/strength_filter.h"
#include "core/testing/trial.h"

#include <map>
#include <optional>
#include <span>
#include <vector>

namespace levelbar {

// Both sides measured on one day with comparable effort: 100 ln(right / left), so positive when
// the right is stronger; 10.5 is a ratio of 0.90.
struct SidePair {
    Day day;
    double logPercent = 0.0;
    bool isOpen = false; // sets planned to show the difference: neither side capped
    std::optional<Side> first = std::nullopt; // which side began, where the order is known

    friend bool operator==(const SidePair&, const SidePair&) = default;
};

// Beyond this size (one side under half of the other) an entry slip is likelier than the truth.
inline constexpr double kLargestLogPercent = 70.0;

// One pair a day from each side's best valid trial; for tests where less is better, from each
// side's smallest. Trials by day. Values that are not above zero give no pair.
[[nodiscard]] std::vector<SidePair>
pairsFromTrials(std::span<const Trial> left, std::span<const Trial> right, Direction direction);

// One pair a day from sets of the same number on either side, averaged: both counted, neither
// stopped by the other side's reps or by pain, and the reserve known on both within one rep of
// each other, or both to the end. Each set is read through the person's own rep curve (`fit`;
// the average one when there is none). Sets by day, then number. A work set in which a side did no
// more than the other gives no pair while that side was stopped at the other's reps within four
// weeks: its better days were not seen. Open and test sets always count.
[[nodiscard]] std::vector<SidePair> pairsFromSets(std::span<const PerformedSet> left,
                                                  std::span<const PerformedSet> right,
                                                  const StrengthFit* fit);

// Pairs that are too far apart to be believed (kLargestLogPercent), which make no pair above: to be
// asked about, not dropped in silence.
[[nodiscard]] std::vector<SideSlip>
slipsOfTrials(std::span<const Trial> left, std::span<const Trial> right, Direction direction);
[[nodiscard]] std::vector<SideSlip> slipsOfSets(std::span<const PerformedSet> left,
                                                std::span<const PerformedSet> right,
                                                const StrengthFit* fit);

// Best day of one side's values, by day: of every day the logarithm of its best valid trial, or of
// the most that a sizing set of the day speaks for. Strength as a positive direction: of seconds
// where less is better the negative logarithm.
[[nodiscard]] std::map<Day, double> dailyBest(std::span<const Trial> trials, Direction direction);
[[nodiscard]] std::map<Day, double> dailyBest(std::span<const PerformedSet> sets,
                                              const StrengthFit* fit);

// Both lists joined by day; where a day has both, the test stands.
[[nodiscard]] std::vector<SidePair> joinPairs(std::vector<SidePair> tests,
                                              const std::vector<SidePair>& sets);

} // namespace levelbar
