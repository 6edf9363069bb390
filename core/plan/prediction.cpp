// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/plan/prediction.h"

#include "core/base/square.h"
#include "core/review/exercise_series.h"
#include "core/strength/expected_reps.h"
#include "core/strength/set_reading.h"
#include "core/strength/side_offset.h"
#include "core/strength/strength.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace levelbar {

namespace {

constexpr double kMostReps = 40.0; // more are no evidence of strength: see evidence.h

std::optional<GivenPrediction>
predictOne(const PlannedSet& planned, const StrengthFit& fit, const StrengthParameters& p)
{
    const double logLoad = std::log(planned.load.kilograms());
    const double side = sideOffset(planned.side);
    const ExpectedReps fresh = expectedReps(fit, logLoad, side);
    constexpr double kStep = 0.005;
    const double perLevel = (expectedReps(fit, logLoad - kStep, side).reps -
                             expectedReps(fit, logLoad + kStep, side).reps) /
                            (2.0 * kStep);
    StrengthObservation set;
    set.logLoad = logLoad;
    set.side = side;
    set.earlierSets = planned.number - 1;
    const double able = std::max(0.0, fresh.reps - p.fatigue * tiringSets(set));
    set.reps = std::min(able, static_cast<double>(planned.amount.value_or(0)));
    // What is left is told too low, on average.
    const double told = able > set.reps ? std::max(set.reps, able - p.reserveBias) : able;
    const double ownDay = square(p.daySpread) + square(p.exerciseDaySpread) +
                          (planned.side == Side::Both ? 0.0 : square(p.sideDaySpread) / 4.0);
    const double variance =
        fresh.variance + square(perLevel) * ownDay + valueOf(set, able, p).highVariance;
    const double reach = kPredictionSpreadScale * kNormalQuantile * std::sqrt(variance);
    if (!std::isfinite(told) || !std::isfinite(reach) || told > kMostReps) {
        return std::nullopt;
    }
    GivenPrediction given;
    given.reps = told;
    given.low = std::max(0.0, told - reach);
    given.high = told + reach;
    return given;
}

} // namespace

void predict(std::span<PlannedSet> planned,
             const MemberHistory& history,
             const Library& library,
             Day on,
             Moment now)
{
    const auto series = seriesOf(history, library);
    const StrengthQuestion question = strengthQuestion(series);
    const auto experience = history.member.experience;
    const auto fits = fitMember(question.exercises, history.prior(), on - 1);
    std::map<ExerciseId, const StrengthFit*> fitOf;
    for (std::size_t i = 0; i < fits.size(); ++i) {
        if (fits[i] && !fits[i]->isFromRelated) {
            fitOf[series[question.places[i]].exercise->id] = &fits[i]->fit;
        }
    }
    const StrengthParameters parameters = forPrior(history.prior());
    for (PlannedSet& set : planned) {
        set.prediction.reset();
        const auto fit = fitOf.find(set.exercise);
        if (fit == fitOf.end() || set.load.kilograms() <= 0.0) {
            continue;
        }
        set.prediction = predictOne(set, *fit->second, parameters);
        if (set.prediction) {
            set.prediction->experience = experience;
            set.prediction->modelVersion = kPredictionVersion;
            set.prediction->givenAt = now;
        }
    }
}

} // namespace levelbar
