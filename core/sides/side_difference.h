// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/day.h"
#include "core/base/estimate.h"
#include "core/base/id.h"
#include "core/base/side.h"
#include "core/sides/side_model.h"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace levelbar {

// What a left/right difference calls for. On screen: no clear side, check again, work on it,
// send on.
enum class SideTier { None, Look, Act, SendOn };

// The measure is an exercise (sets and tested one-rep maxima together) or a test.
struct Measure {
    std::optional<ExerciseId> exercise;
    std::optional<TestId> test;
    std::string name;

    friend bool operator==(const Measure&, const Measure&) = default;
};

// A person's left/right difference in one measure. Percentages are 100·(right − left)/(the
// stronger of the two): positive when the right is stronger.
struct SideReview {
    Measure measure;
    Estimate differencePercent;   // count = days with a pair that sizes it
    std::optional<Side> weaker;   // nothing when the centre is 0
    double probabilitySide = 0.5; // that the weaker side really is the weaker one
    double thresholdPercent = 10.0;
    double probabilityBeyondThreshold = 0.0; // on that side
    double probabilityBeyondFive = 0.0;      // on that side
    int days = 0;
    Day lastPair;
    SideTier tier = SideTier::None;
};

[[nodiscard]] std::string_view tierWord(SideTier tier); // "none", "look", "act", "send_on"

// A measure with everyone's pairs; `owners` says whose each series is.
struct MeasuredSides {
    Measure measure;
    SideSettings settings;
    std::vector<std::size_t> owners;
    std::vector<SideSeries> series;
};

// What the roster's differences are today, a review per measure and person with a pair.
struct RosterSides {
    struct Entry {
        std::size_t owner = 0;
        SideReview review;
    };

    std::vector<Entry> entries; // by measure, then owner
    int look = 0;               // listed look or act
    int act = 0;
    double expectedFalseLook = 0.0;
    double expectedFalseAct = 0.0;
};

// The share of a list that may be chance entries, on average.
inline constexpr double kFalseShare = 0.10;

// Lists: two days at least; each list is the longest one, surest first, whose mean probability
// of being false is at most kFalseShare. Who was listed a week earlier stays while the
// probability is above the cut less 0.1, replayed over eight weeks. False for look: 5 % or less,
// or on the other side; for act: the threshold or less, or on the other side.
// Send on: pain in the measure within four weeks with a clear side (P >= 0.9), or a jump:
// within four weeks a difference appeared that the person's earlier pairs (two or more) make
// implausible (beyond 1.96 standard errors and over the threshold).
[[nodiscard]] RosterSides
reviewSides(std::span<const MeasuredSides> measures, Day day, double thresholdPercent);

} // namespace levelbar
