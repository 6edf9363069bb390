// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/strength/strength_parameters.h"

#include <optional>
#include <span>
#include <vector>

namespace levelbar {

// What a set says about the reps a load allows.
enum class SetEvidence {
    Measured, // reps done and reserve reported
    Limit,    // went to the end: nothing was left
    Tested,   // a tested maximum: one rep, and surely nothing left
    AtLeast,  // these reps and perhaps more
    Rough,    // reserve unknown, in a history that hardly ever knows it: about one more
    AtMost,   // the load was tried and not lifted
};

// One set, in the order in which it was done. Plain doubles: this is the inner loop.
struct StrengthObservation {
    double weeks = 0.0;       // when; any origin, not descending
    double logLoad = 0.0;     // ln kg, of what one side or both lift
    double reps = 0.0;        // done
    double reserve = 0.0;     // reported, with Measured
    double earlierSets = 0.0; // of the exercise and side on that day
    double side = 0.0;        // -0.5 left, 0 both, +0.5 right
    SetEvidence evidence = SetEvidence::Measured;
};

// What is known beforehand of a person's rep-curve factor, and of a day from other exercises.
struct NormalPrior {
    double mean = 0.0;
    double variance = 0.0;
};

// Where the model is linearised: the smoothed state on a day.
struct StrengthPoint {
    double level = 0.0;
    double factor = 0.0;
    double shape = 0.0;
    double fatigue = 0.0;
    double difference = 0.0;
    double day = 0.0;
    double sideDay = 0.0;
};

struct StrengthInput {
    std::span<const StrengthObservation> sets;
    double today = 0.0;               // weeks, same origin; not before the last set
    double lookBack = 8.0;            // weeks over which the mean slope is asked; at least 1
    bool hasSides = false;            // any set with a side
    double layOffsUntil = 1e9;        // weeks; no day without a set after it counts as a lay-off
    NormalPrior factor;               // ln rep-curve factor
    std::vector<NormalPrior> days;    // one a day with sets, or empty: the general spread
    std::optional<NormalPrior> level; // ln 1RM at the first set, from related lifts
    // Points of an earlier fit of the same sets, to start from; empty: a first guess.
    std::span<const StrengthPoint> start;
};

// The strength on a day of the past (or today), given everything seen up to today.
struct SmoothedStrength {
    double weeks = 0.0;
    double level = 0.0;
    double difference = 0.0;
    double levelVariance = 0.0;
    double differenceVariance = 0.0;
    double levelDifferenceCovariance = 0.0;
};

// State at `today`. Index names are StrengthState's.
struct StrengthFit {
    double level = 0.0;  // ln 1RM, mean of both sides
    double factor = 0.0; // ln rep-curve factor
    double shape = 0.0;
    double shapeFrom = 7.0;  // reps: see StrengthParameters
    double difference = 0.0; // ln(right / left)
    double slope = 0.0;      // mean ln/week over the look-back
    double levelVariance = 0.0;
    double factorVariance = 0.0;
    double shapeVariance = 0.0;
    double differenceVariance = 0.0;
    double slopeVariance = 0.0;
    double levelFactorCovariance = 0.0;
    double levelShapeCovariance = 0.0;
    double factorShapeCovariance = 0.0;
    double levelDifferenceCovariance = 0.0;
    double pastLevel = 0.0; // at today - lookBack
    int iterations = 0;
    bool isFinite = true;
    // A day with sets each: its effect, smoothed centre and filtered variance, in ln.
    std::vector<NormalPrior> dayEffects;
    std::vector<SmoothedStrength> path; // with FitOptions::wantsPath: days with sets and today
    std::vector<StrengthPoint> points;  // to start another fit of the same sets from
};

// How the fit is made. The defaults are what the product uses.
struct FitOptions {
    int mostIterations = 3;
    double tolerance = 1e-3; // of ln 1RM
    // Whether dayEffects and points are wanted: costs the last backward pass.
    bool endsSmoothed = false;
    bool wantsPath = false;
    bool learnsFatigue = false; // a state of its own; costs time and brings nothing (see
                                // DEVELOPERS.md), kept to check against the trial's figures
};

// Iterated Kalman filter over ln 1RM, its slope, the rep-curve factor and shape, the day's
// effect and, with sides, the side difference; Student-t weights for sets and days. Cost: linear
// in sets times iterations; memory linear in sets. A fit that does not stay finite (seen in no
// test) is made once more over the plain curve, with the rep-curve factor held at its prior and in
// one iteration; isFinite tells of the fit that is returned, and when it is false, as after a load
// that is no number, nothing else in it may be used.
// Method: Bell and Cathey 1993 (iterated Kalman update as Gauss-Newton), Bierman 1973
// (modified Bryson-Frazier smoother).
[[nodiscard]] StrengthFit fitStrength(const StrengthInput& input,
                                      const StrengthParameters& parameters,
                                      const FitOptions& options = {});

// ln load that allows `reps` to the end, and its variance, through the fitted curve; side -0.5,
// 0 or +0.5. reps from 1 to 40.
struct LoadForReps {
    double logLoad = 0.0;
    double variance = 0.0;
};

[[nodiscard]] LoadForReps loadForReps(const StrengthFit& fit, double reps, double side);

} // namespace levelbar
