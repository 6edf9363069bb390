// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/strength/rep_curve_expectation.h"

namespace levelbar {

// Numbers of the strength model. ln 1RM is in natural logarithms, time in weeks, reps in reps.
// "literature": from the paper named; "assumed": no source, chosen on simulated people and
// listed in DEVELOPERS.md with what it costs to be wrong.
struct StrengthParameters {
    // How strength moves.
    double levelWalk = 0.003; // ln per sqrt(week); assumed
    // Bare tests without training sets: the first weeks are mostly learning to test (do Nascimento
    // 2017: maxima settle after two or three sessions). Extra walk, gone by 1/e in so many weeks.
    // Set for such histories only: see learnsToTest.
    double learningWalk = 0.0;
    double learningWeeks = 2.5;
    // Days farther apart than this many weeks do not smooth each other's first guess.
    double guessReach = 1e9;
    double slopeWalk = 0.0012;  // ln/week per sqrt(week); assumed
    double slopeMemory = 26.0;  // weeks until a slope has fallen back by 1/e; assumed
    double lateSlope = 0.001;   // ln/week after a year (Steele 2022: linear in ln time); literature
    double startSpread = 0.30;  // ln 1RM around the first guess; assumed, weak on purpose
    double firstSlope = 0.0035; // ln/week and its spread: see forExperience
    double firstSlopeSpread = 0.004;

    // How many reps a load allows.
    // Between people: ln rep-curve factor (Nuzzo 2024: 2.51/8.8), and its change per ln reps (seven
    // published curves around ours). In a gym whose own average is known they scatter less.
    double factorSpread = 0.30;
    double shapeSpread = 0.20;
    double shapeFrom = 7.0; // reps; on heavier loads the factor stays what it is here; assumed
    // Where the average person lies: published until the gym's own people have taught otherwise.
    double expectedFactor = kPublishedLogFactor; // ln
    double expectedShape = 0.0;
    double fatigue = 0.4; // reps lost per earlier set of the day; assumed
    double fatigueSpread = 0.3;
    // People name fewer reps than are left: 0.17 in Refalo 2023 (24 people, bench press), 0.95 in
    // the twelve studies of Halperin 2022 (0.17 to 1.73). Between the two, nearer the first.
    double reserveBias = 0.4;

    // Days and sides.
    double daySpread = 0.030;        // ln; Grgic 2020: test-retest CV 4.2 % with its own error
    double dayTail = 5.0;            // degrees of freedom of the day effect
    double setTail = 5.0;            // and of a set's error
    double sideSpread = 0.08;        // ln(R/L) between people; healthy sides near 3 %, tail to 15 %
    double sideWalk = 0.0015;        // ln per sqrt(week); assumed
    double sideDaySpread = 0.02;     // ln; a side's own day; assumed
    double exerciseDaySpread = 0.02; // ln; an exercise's own part of a day; assumed

    // After a break (Bosquet 2013; halved, since a gap in the log need not be a lay-off).
    double breakLoss = 0.003;       // ln/week
    double breakLossSpread = 0.010; // ln per sqrt(week)
    double regain = 0.003;          // ln/week added to the slope when they come back
    double regainSpread = 0.006;
    double freeGap = 2.5;      // weeks without loss
    double longestBreak = 8.0; // weeks after which no more is lost

    // A set that says only "at least".
    double atLeastReps = 0.5;   // reps beyond those done
    double atLeastSpread = 0.7; // towards "stronger"
    double roughSpread = 3.0;   // the same when hardly any reserve is known
    double testedSpread = 0.7;  // reps, of a tested maximum; one rep there is 4 % of it
    double wide = 1000.0;       // towards "weaker": practically no pull

    // Error of reported reserve that all sets of a person share, so that more sets do not help.
    double sharedReps = 0.4;            // reps, and per mean rep in reserve:
    double sharedRepsPerReserve = 0.15; // Hackett 2017, Halperin 2022; literature
    double sideScaleError = 0.10;       // of the side difference
};

// For a history of tested maxima alone (size of the walk assumed).
void learnsToTest(StrengthParameters& parameters);

// With the slope expected of a beginner, of the middle or of the advanced (ACSM 2009, Steele
// 2022); unknown: the middle with a wider spread. The rep curve is the published one.
[[nodiscard]] StrengthParameters forExperience(std::optional<Experience> experience);

// The same with the rep curve that this person's gym has taught.
[[nodiscard]] StrengthParameters forPrior(const StrengthPrior& prior);

} // namespace levelbar
