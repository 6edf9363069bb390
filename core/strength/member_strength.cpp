// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/strength/member_strength.h"

#include "core/base/square.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace levelbar {

namespace {

constexpr double kLongestLookBack = 8.0;
// The rep-curve factor of one exercise around the person's own (assumed; the trial's value).
constexpr double kFactorSpreadInPerson = 0.15;
// Where nothing but "at least" is known, plans rarely lie farther from what is possible.
constexpr double kBoundsOnlySpread = 0.15;
// and by how much "at least" falls short, nobody saw: more of them do not tell (assumed).
constexpr double kBoundsOnlyDoubt = 0.12;

// Iterations when a person has one exercise only, and of the two rounds when there are more.
constexpr FitOptions kAlone{3, 1e-3, false, false, false};
constexpr FitOptions kFirst{2, 1e-3, true, false, false};
constexpr FitOptions kAgain{2, 1e-3, false, false, false};

// What one exercise tells about a number that others share: the likelihood's centre and variance.
std::optional<NormalPrior> messageOf(double mean, double variance, const NormalPrior& prior)
{
    const double precision = 1.0 / variance - 1.0 / prior.variance;
    if (precision < 1e-6) {
        return std::nullopt;
    }
    const double centre = (mean / variance - prior.mean / prior.variance) / precision;
    return NormalPrior{centre, 1.0 / precision};
}

// Prior for one exercise: the general one and the others' messages, each blurred by how far
// exercises of one person differ.
NormalPrior
combine(const NormalPrior& general, const std::vector<NormalPrior>& messages, double ownVariance)
{
    double precision = 1.0 / (general.variance - ownVariance);
    double weighted = precision * general.mean;
    for (const NormalPrior& message : messages) {
        const double weight = 1.0 / (message.variance + ownVariance);
        precision += weight;
        weighted += weight * message.mean;
    }
    return {weighted / precision, 1.0 / precision + ownVariance};
}

NormalPrior generalFactor(const StrengthParameters& parameters)
{
    return {parameters.expectedFactor, square(parameters.factorSpread)};
}

struct Working {
    StrengthInput input;
    StrengthParameters parameters;
    ExerciseFit result;
};

double lookBackOf(const StrengthEvidence& evidence, double today)
{
    const double first = evidence.observations.front().weeks;
    return std::clamp(today - first, 1.0, kLongestLookBack);
}

std::optional<Working> prepare(const ExerciseHistory& history,
                               const StrengthPrior& prior,
                               Day today,
                               std::optional<Day> trainsOnFrom)
{
    Working working;
    working.result.evidence = gatherEvidence(history.both, history.left, history.right, today);
    const StrengthEvidence& evidence = working.result.evidence;
    if (evidence.observations.empty()) {
        return std::nullopt;
    }
    working.parameters = forPrior(prior);
    if (evidence.measured == 0) {
        working.parameters.startSpread = kBoundsOnlySpread;
    }
    const auto& seen = evidence.observations;
    if (std::all_of(seen.begin(), seen.end(), [](const StrengthObservation& set) {
            return set.evidence == SetEvidence::Tested;
        })) {
        learnsToTest(working.parameters);
    }
    working.input.today = weeksOf(today);
    working.input.lookBack = lookBackOf(evidence, working.input.today);
    working.result.lookBackWeeks = working.input.lookBack;
    working.input.hasSides = evidence.hasSides;
    working.input.factor = generalFactor(working.parameters);
    if (trainsOnFrom) {
        working.input.layOffsUntil = weeksOf(*trainsOnFrom);
    }
    return working;
}

using Fits = std::vector<std::optional<Working>>;

void shareFactor(Fits& all, const std::vector<std::optional<NormalPrior>>& messages)
{
    for (std::size_t j = 0; j < all.size(); ++j) {
        if (!all[j]) {
            continue;
        }
        std::vector<NormalPrior> others;
        for (std::size_t k = 0; k < all.size(); ++k) {
            if (k != j && messages[k]) {
                others.push_back(*messages[k]);
            }
        }
        all[j]->input.factor =
            combine(generalFactor(all[j]->parameters), others, square(kFactorSpreadInPerson));
    }
}

using DayMessages = std::map<std::int32_t, std::vector<std::pair<std::size_t, NormalPrior>>>;

// What each exercise says about each day's effect.
DayMessages dayMessages(const Fits& all)
{
    DayMessages byDay;
    for (std::size_t j = 0; j < all.size(); ++j) {
        if (!all[j]) {
            continue;
        }
        const ExerciseFit& result = all[j]->result;
        const NormalPrior general{0.0, square(all[j]->parameters.daySpread)};
        for (std::size_t d = 0; d < result.evidence.days.size(); ++d) {
            const NormalPrior& effect = result.fit.dayEffects[d];
            if (const auto message = messageOf(effect.mean, effect.variance, general)) {
                byDay[result.evidence.days[d].sinceEpoch].emplace_back(j, *message);
            }
        }
    }
    return byDay;
}

// Everyone has good and bad days, and they show in all exercises of the day.
void shareDays(Fits& all)
{
    DayMessages byDay = dayMessages(all);
    for (std::size_t j = 0; j < all.size(); ++j) {
        if (!all[j]) {
            continue;
        }
        Working& working = *all[j];
        working.input.days.clear();
        for (const Day day : working.result.evidence.days) {
            std::vector<NormalPrior> others;
            for (const auto& [from, message] : byDay[day.sinceEpoch]) {
                if (from != j) {
                    others.push_back(message);
                }
            }
            working.input.days.push_back(combine({0.0, square(working.parameters.daySpread)},
                                                 others,
                                                 square(working.parameters.exerciseDaySpread)));
        }
    }
}

// A lift never done is guessed from one that was.
std::optional<ExerciseFit> fromRelated(const RelatedLift& related, const ExerciseFit& base)
{
    ExerciseFit guess;
    guess.fit = base.fit;
    guess.fit.level += std::log(related.ratio);
    guess.fit.levelVariance += square(related.logSpread);
    guess.fit.factorVariance += square(kFactorSpreadInPerson);
    guess.fit.difference = 0.0;
    guess.fit.differenceVariance = 0.0;
    guess.fit.levelDifferenceCovariance = 0.0;
    guess.evidence.days = base.evidence.days;
    guess.lookBackWeeks = base.lookBackWeeks;
    guess.isFromRelated = true;
    return guess;
}

void useRelated(Fits& all, std::span<const ExerciseHistory> exercises)
{
    for (std::size_t j = 0; j < all.size(); ++j) {
        const auto& related = exercises[j].related;
        if (!all[j] || !related || !all[related->base]) {
            continue;
        }
        const StrengthFit& base = all[related->base]->result.fit;
        all[j]->input.level = NormalPrior{base.level + std::log(related->ratio),
                                          base.levelVariance + square(related->logSpread)};
    }
}

// The first round: each exercise alone. Returns what each says about the rep-curve factor.
std::vector<std::optional<NormalPrior>> fitAlone(Fits& all, const FitOptions& options)
{
    std::vector<std::optional<NormalPrior>> messages(all.size());
    for (std::size_t j = 0; j < all.size(); ++j) {
        if (!all[j]) {
            continue;
        }
        Working& working = *all[j];
        working.input.sets = working.result.evidence.observations;
        working.result.fit = fitStrength(working.input, working.parameters, options);
        messages[j] = messageOf(
            working.result.fit.factor, working.result.fit.factorVariance, working.input.factor);
    }
    return messages;
}

// The second round, from where the first one ended.
void fitAgain(Fits& all, const FitOptions& options)
{
    for (auto& working : all) {
        if (working) {
            const std::vector<StrengthPoint> start = std::move(working->result.fit.points);
            working->input.start = start;
            working->result.fit = fitStrength(working->input, working->parameters, options);
            working->input.start = {};
        }
    }
}

} // namespace

std::vector<std::optional<ExerciseFit>> fitMember(std::span<const ExerciseHistory> exercises,
                                                  const StrengthPrior& prior,
                                                  Day today,
                                                  const MemberFitOptions& options)
{
    Fits all;
    all.reserve(exercises.size());
    for (const ExerciseHistory& history : exercises) {
        all.push_back(prepare(history, prior, today, options.trainsOnFrom));
    }
    const auto known =
        std::count_if(all.begin(), all.end(), [](const auto& w) { return w.has_value(); });
    FitOptions first = known > 1 ? kFirst : kAlone;
    first.wantsPath = options.wantsPath && known == 1;
    const auto messages = fitAlone(all, first);
    if (known > 1) {
        shareFactor(all, messages);
        shareDays(all);
        useRelated(all, exercises);
        FitOptions again = kAgain;
        again.wantsPath = options.wantsPath;
        fitAgain(all, again);
    }
    std::vector<std::optional<ExerciseFit>> results(all.size());
    for (std::size_t j = 0; j < all.size(); ++j) {
        if (all[j]) {
            if (all[j]->result.evidence.measured == 0) {
                all[j]->result.fit.levelVariance += square(kBoundsOnlyDoubt);
            }
            results[j] = std::move(all[j]->result);
        }
    }
    for (std::size_t j = 0; j < all.size(); ++j) {
        const auto& related = exercises[j].related;
        if (!results[j] && related && results[related->base]) {
            results[j] = fromRelated(*related, *results[related->base]);
        }
    }
    return results;
}

} // namespace levelbar
