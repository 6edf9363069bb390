// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/exercise/done_set.h"
#include "core/exercise/exercise.h"
#include "core/member/member.h"
#include "core/strength/rep_curve_expectation.h"
#include "core/testing/trial.h"

#include <optional>
#include <vector>

namespace levelbar {

// What can be logged and tested in this gym: what a review needs to make sense of a history.
struct Library {
    std::vector<Exercise> exercises; // by id
    std::vector<TestKind> tests;     // by id

    // Null when the id is not in the library.
    [[nodiscard]] const Exercise* exercise(ExerciseId id) const;
    [[nodiscard]] const TestKind* test(TestId id) const;
};

// The sets of one exercise and side, by day, then number.
struct SetSeries {
    ExerciseId exercise;
    Side side = Side::Both;
    std::vector<PerformedSet> sets;
};

// The trials of one test and side, by day, then number.
struct TrialSeries {
    TestId test;
    Side side = Side::Both;
    std::vector<Trial> trials;
};

// All that one person did: the store's answer, and the engine's question.
struct MemberHistory {
    Member member;
    std::vector<SetSeries> sets;     // by exercise, then side
    std::vector<TrialSeries> trials; // by test, then side
    RepCurveExpectation curve;       // of the average person in this gym

    [[nodiscard]] StrengthPrior prior() const { return {member.experience, curve}; }
};

// What lies before a day.
[[nodiscard]] MemberHistory historyBefore(MemberHistory history, Day day);

} // namespace levelbar
