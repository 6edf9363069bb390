// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/review/exercise_series.h"
#include "core/review/review.h"

#include <optional>
#include <string>
#include <vector>

namespace levelbar {

// What the charts show, as plain numbers. Painting is somebody else's.

// One set or tested maximum: the 1RM it speaks for, through the person's own rep curve.
struct StrengthDot {
    Day day;
    double kilograms = 0.0;
    HowKnown known = HowKnown::Counted;
    bool isTest = false;             // a tested maximum, not a set
    bool isBound = false;            // says only "at least"
    std::optional<PerformedSet> set; // what was done, when it is a set
};

// The strength on a day, as seen today.
struct BandPoint {
    Day day;
    double value = 0.0; // kg
    double low = 0.0;
    double high = 0.0;
};

struct StrengthFigure {
    std::vector<StrengthDot> dots; // by day
    std::vector<BandPoint> band;   // by day, today last
};

// One exercise and side of a person; empty when there is nothing to show. Only up to asOf.
[[nodiscard]] StrengthFigure strengthFigure(
    const MemberHistory& history, const Library& library, ExerciseId exercise, Side side, Day asOf);

// One exercise of a person with its own fit, all sides together; the sets lie in the history.
struct FittedExercise {
    ExerciseSeries series;
    StrengthFit fit; // with its path
};

// Nothing when no set or test of its own says anything of it.
[[nodiscard]] std::optional<FittedExercise>
fittedExercise(const MemberHistory& history, const Library& library, ExerciseId exercise, Day asOf);

// As above, from a fit that is there already.
[[nodiscard]] StrengthFigure strengthFigure(const FittedExercise& fitted, Side side, Day asOf);

// The dot nearest to a day and height, measured in the given spans of either axis; nothing when
// there are no dots.
[[nodiscard]] std::optional<std::size_t> nearestDot(
    const StrengthFigure& figure, Day day, double kilograms, double daySpan, double kilogramSpan);

struct SidesRow {
    MemberId member;
    std::string code;
    std::string name;
    SideReview side;
};

// Everyone with a difference in the measure, left weakest first.
struct SidesFigure {
    std::string measure;
    double thresholdPercent = 10.0;
    std::vector<SidesRow> rows;
};

[[nodiscard]] SidesFigure sidesFigure(const Review& review, const std::string& measure);

enum class SidesOrder {
    ByDifference, // left weakest first
    ByCertainty,  // surest of over 5 % first; those seen on one day only last
};

void sortRows(SidesFigure& figure, SidesOrder order);

// Names of the measures with a difference, those with most people first.
[[nodiscard]] std::vector<std::string> measuresOf(const Review& review);

} // namespace levelbar
