// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/exercise/effort.h"
#include "core/gym/kit.h"
#include "core/plan/strength_goal.h"
#include "core/review/figures.h"
#include "core/review/wording.h"

#include <string>
#include <vector>

namespace levelbar {

// What a person's page says, as plain data and sentences: painting is somebody else's. Nothing in
// it compares the person with other people.

// One of the main lifts: what the chart shows, and what it means.
struct ReportLift {
    std::string exercise;
    Side side = Side::Both;
    StrengthFigure figure;
    std::vector<Phrase> strength;
    std::vector<Phrase> trend;
};

struct ReportSide {
    std::string measure;
    std::vector<Phrase> words; // the difference, and what follows from it
};

struct ReportTarget {
    std::string exercise;
    Side side = Side::Both; // one-sided: the weaker one, whose load serves both
    std::vector<Phrase> headline;
    std::string plates; // "15 + 1.25 a side"; empty for what is not a bar
    std::vector<Phrase> reasons;
};

struct ReportTest {
    std::string test;
    std::vector<Phrase> words; // the last day's best valid trials, and the first day's
    std::vector<Phrase> norm;  // with its source, or that there is none
};

struct PersonReport {
    Member member;
    Day asOf;
    std::vector<Phrase> seen;
    std::vector<ReportLift> lifts; // at most kMostReportLifts
    std::vector<ReportSide> sides; // those that call for something first
    int moreSides = 0;             // measured and not said above
    std::vector<ReportTarget> targets;
    std::vector<Phrase> targetNote;    // what holds for all of them; may be empty
    std::vector<Phrase> targetCaution; // pain, and heavy loads where there are some
    std::vector<ReportTest> tests;
    std::vector<Phrase> sideCaution;
    std::vector<Phrase> testCaution;
};

inline constexpr std::size_t kMostReportLifts = 3;
inline constexpr std::size_t kMostReportSides = 4;

struct ReportQuestion {
    const MemberHistory& history;
    const MemberReview& review; // of the day `asOf`
    const Library& library;
    const Kit& kit;
    EffortScale effort = EffortScale::Reserve;
    Day asOf;
    std::vector<StrengthGoal> goals = {};
};

// Main lifts: those with evidence that is not too old first, then those with most sizing sets; one
// entry an exercise, of a one-sided one the weaker side. Targets: targetFor() with the reps of the
// person's handbook row, as on the card of their page.
[[nodiscard]] PersonReport personReport(const ReportQuestion& question);

// "12 Nov"; with the year when the day is more than ten months before `asOf`.
[[nodiscard]] std::string reportDay(Day day, Day asOf);

// What stands at the foot of every page that speaks of a person.
[[nodiscard]] std::vector<Phrase> reportFoot();

} // namespace levelbar
