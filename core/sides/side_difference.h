// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/day.h"
#include "core/base/estimate.h"
#include "core/base/id.h"
#include "core/base/side.h"
#include "core/sides/side_cut.h"
#include "core/sides/side_listing.h"
#include "core/sides/side_model.h"
#include "core/sides/side_records.h"

#include <optional>
#include <span>
#include <string>
#include <vector>

namespace levelbar {

// The measure is an exercise (sets and tested one-rep maxima together) or a test.
struct Measure {
    std::optional<ExerciseId> exercise;
    std::optional<TestId> test;
    std::string name;

    friend bool operator==(const Measure&, const Measure&) = default;

    [[nodiscard]] MeasureKey key() const { return {exercise, test}; }

    // Tests (the grip above all) are shown, never trained for.
    [[nodiscard]] bool isTrainable() const { return exercise.has_value(); }
};

// A person's left/right difference in one measure. Percentages are 100·(right − left)/(the
// stronger of the two): positive when the right is stronger.
struct SideReview {
    Measure measure;
    Estimate differencePercent;   // count = days with a pair that sizes it
    std::optional<Side> weaker;   // nothing when the centre is 0
    double probabilitySide = 0.5; // that the weaker side really is the weaker one
    double thresholdPercent = kUsualThreshold;
    double probabilityBeyondThreshold = 0.0; // on that side
    double probabilityBeyondFive = 0.0;      // on that side
    int days = 0;
    Day lastPair;
    SideTier tier = SideTier::None;
    SideListing listing;
    std::optional<SideLeaving> left;
    std::optional<PainDay> pause;           // no verdict until kPauseDays after it
    std::optional<KnownReason> reason;      // holds; keeps it off the lists unless there is news
    std::optional<SideNewsDay> news;        // what is new since the reason was agreed
    std::optional<SideJump> jump;           // with SideWhy::Jump
    std::optional<Baseline> baseline;       // after surgery
    std::vector<OpenPairVerdict> openPairs; // since the prescription started, by day
    bool isClosing = false;                 // since then it has become smaller, with nine in ten
};

// A measure with everyone's pairs; `owners` says whose each series is.
struct MeasuredSides {
    Measure measure;
    SideSettings settings;
    std::vector<std::size_t> owners;
    std::vector<SideSeries> series;
    std::optional<double> thresholdPercent; // of its own
};

// By what a measure's pairs are judged today, learnt from the roster: for whoever follows one
// person's difference through time.
struct SideModel {
    Measure measure;
    SideNoise noise;
    SidePrior prior;
};

// The posterior of a difference in ln-percent as SideReview gives it; count = days.
[[nodiscard]] Estimate asPercent(const SidePosterior& posterior, int days);

// What the roster's differences are today, a review per measure and person with a pair.
struct RosterSides {
    struct Entry {
        std::size_t owner = 0;
        SideReview review;
    };

    std::vector<Entry> entries;    // by measure, then owner
    std::vector<SideModel> models; // as the measures were
    int look = 0;                  // listed look or act
    int act = 0;
    double expectedFalseLook = 0.0;
    double expectedFalseAct = 0.0;
};

// Lists: two days at least, cut by listOf; being listed a week before is replayed over eight weeks.
// False for look: 5 % or less, or on the other side; for act: the threshold or less, or on the
// other side. Send on: pain in the measure within four weeks with a clear side (P >= 0.9), or a
// jump: within four weeks a difference appeared that the person's earlier pairs (two or more) make
// implausible (beyond 1.96 standard errors and over the threshold). Off both lists: while paused,
// and while a known reason holds with nothing new since.
[[nodiscard]] RosterSides
reviewSides(std::span<const MeasuredSides> measures, Day day, double thresholdPercent);

} // namespace levelbar
