// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/bodyweight/push_up_rung.h"
#include "core/exercise/exercise.h"
#include "core/review/history.h"

#include <optional>
#include <span>
#include <string_view>
#include <vector>

namespace levelbar {

// A reading of a bathroom scale under the hands, and its day.
struct DatedReading {
    Day day;
    ScaleReading reading;

    friend bool operator==(const DatedReading& a, const DatedReading& b)
    {
        return a.day == b.day && a.reading.pushUp == b.reading.pushUp &&
               a.reading.lockedOut == b.reading.lockedOut && a.reading.atChest == b.reading.atChest;
    }
};

// What is known of one person's push-ups up to a day.
struct PushUpRecords {
    const MemberHistory& history; // for the person and the tests of body mass
    const Library& library;
    std::span<const DoneSet> sets;          // of this person; others than push-ups are passed over
    std::span<const DatedReading> readings; // of a scale
    std::optional<Estimate> benchMaximum;   // kg, where no push-ups were counted
};

struct PushUpQuestion {
    RackHoles rack; // for holes logged, and the one proposed
    Day on;
    RepsWanted wanted; // to the end
};

// The set that tells how many push-ups there are: the most reps, reserve included, of the last day
// with a counted set whose reserve is known.
struct TellingSet {
    Day day;
    PushUp pushUp;
    std::optional<int> hole;
    int reps = 0;
    Reserve reserve;
};

// One way of doing it, as a load and as reps.
struct PushUpRung {
    PushUp pushUp;
    std::optional<int> hole; // of the rack; else on the floor, on the knees, at the wall
    Estimate load;           // kg
    std::optional<Estimate> reps;
    RungFit fit = RungFit::InRange; // of the proposed hole
};

struct PushUpReview {
    bool lacksStature = false;      // then nothing below
    bool lacksMass = false;         // then nothing below
    Mass bodyMass;                  // of the last test of it up to the day, else at intake
    std::optional<Day> bodyMassDay; // of the test
    PersonalLever lever;
    int refusedReadings = 0; // of a scale, that can hardly be right
    std::optional<TellingSet> telling;
    bool isFromBench = false;           // the reps are guessed from the bench press
    std::optional<PushUpRung> proposed; // the hole for the reps wanted
    std::vector<PushUpRung> others;     // floor, knees, wall
};

// Body mass on a day: the last valid test "body-mass" up to it, else what was said at intake.
struct DatedMass {
    Mass mass;
    std::optional<Day> day; // none: at intake
};

[[nodiscard]] std::optional<DatedMass>
bodyMassOn(const MemberHistory& history, const Library& library, Day on);

// The push-up an exercise of the shipped library is, by its key; hands raised has no height yet.
// Nothing for any other exercise, also a push-up whose load no study gives.
[[nodiscard]] std::optional<PushUpKind> pushUpKindOf(std::string_view exerciseKey);

// The push-ups of a person as loads on a day. Sets of the last `kPushUpWeeks` weeks tell the reps.
// Each set and reading is taken with the body mass of its day.
[[nodiscard]] PushUpReview reviewPushUps(const PushUpRecords& records,
                                         const PushUpQuestion& question);

inline constexpr int kPushUpWeeks = 12;

} // namespace levelbar
