// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/estimate.h"
#include "core/base/fault.h"

#include <span>

namespace levelbar {

// How well a measure repeats: the numbers that papers report, for whoever asks. Lists and targets
// do not use them.

// Several people, each measured equally often: values by person, then trial. At least two people
// and two trials, all finite; NotInDomain otherwise.
struct RepeatedTrials {
    std::span<const double> values;
    int trials = 2; // of each person
};

// Mean squares of the analysis of variance of people by trials.
struct TrialVariance {
    int people = 0;
    int trials = 0;
    double betweenPeople = 0.0; // n - 1 degrees of freedom
    double betweenTrials = 0.0; // k - 1
    double error = 0.0;         // (n - 1)(k - 1)
    double withinPeople = 0.0;  // n (k - 1): trials and error together
};

[[nodiscard]] Result<TrialVariance> trialVariance(const RepeatedTrials& trials);

// Which intraclass correlation, in the notation of Shrout and Fleiss 1979 (Psychol Bull
// 86:420-428), for a single trial: (1,1) trials without order; (2,1) trials as a sample of
// trials; (3,1) these very trials, a shift between them not counted as error.
enum class IntraclassModel { OneOne, TwoOne, ThreeOne };

// The correlation (1 at best, may fall below 0) with the interval of Shrout and Fleiss, count =
// people. NotInDomain when nothing varies at all, or when trials repeat without any error, so
// that no interval exists. 0 < level < 1.
[[nodiscard]] Result<Estimate>
intraclassCorrelation(const TrialVariance& variance, IntraclassModel model, double level = kLevel);

// Typical error: the spread of one trial around a person's own value, shifts between trials taken
// out, in the unit of the values; its interval from chi-square, count = people. Hopkins 2000
// (Sports Med 30:1-15). The same number is the standard error of measurement of Weir 2005
// (J Strength Cond Res 19:231-240). Its values in 100 ln(x) give the coefficient of variation by
// variationPercent.
[[nodiscard]] Result<Estimate> typicalError(const TrialVariance& variance, double level = kLevel);

// The coefficient of variation in percent of a typical error in ln-percent: 100 (e^(t/100) - 1).
// Hopkins 2000. NotInDomain for a negative or infinite error.
[[nodiscard]] Result<double> variationPercent(double logTypicalError);

// The change between two measurements, each the mean of `averaged` trials, that error alone
// exceeds in 1 - level of cases: z sqrt(2) error / sqrt(averaged); 2.77 errors at 0.95. Weir 2005.
// error >= 0, averaged >= 1, 0 < level < 1; NotInDomain otherwise.
[[nodiscard]] Result<double>
minimalDetectableChange(double error, int averaged = 1, double level = 0.95);

// Limits of agreement of Bland and Altman 1986 (Lancet i:307-310): where 95 in 100 differences
// between two methods lie, each line with its interval from Student's t.
struct Agreement {
    Estimate bias; // mean of first - second; count = pairs
    double spread = 0.0;
    Estimate lowerLimit; // bias - 1.96 spread
    Estimate upperLimit;
};

// Both of one length, at least two pairs, all finite; NotInDomain otherwise.
[[nodiscard]] Result<Agreement>
agreement(std::span<const double> first, std::span<const double> second, double level = 0.95);

} // namespace levelbar
