// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/review/calibration.h"

#include "core/base/distributions.h"
#include "core/base/square.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace levelbar {

namespace {

bool saysHowMany(const PerformedSet& done)
{
    const bool isStoppedOtherwise =
        done.stopped == StopReason::Pain || done.stopped == StopReason::Form ||
        done.stopped == StopReason::Time || done.stopped == StopReason::Capped;
    const bool isEnd = done.reserve || done.stopped == StopReason::NoMore || done.reps == 0;
    return done.known == HowKnown::Counted && done.kind != SetKind::Ramp && done.reps && isEnd &&
           !isStoppedOtherwise;
}

std::optional<Estimate> leanOf(const std::map<MemberId, double>& sums,
                               const std::map<MemberId, int>& counts,
                               double mean,
                               int checks)
{
    const auto people = static_cast<double>(sums.size());
    if (people < 2.0) {
        return std::nullopt;
    }
    double between = 0.0;
    for (const auto& [member, sum] : sums) {
        between += square(sum - mean * counts.at(member));
    }
    const double error = std::sqrt(between * people / (people - 1.0)) / checks;
    const double reach = studentQuantile(0.5 + kLevel / 2.0, people - 1.0) * error;
    return Estimate{mean, mean - reach, mean + reach, kLevel, checks};
}

RangeScore scoreOf(std::span<const RangeCheck* const> checks)
{
    RangeScore score;
    std::map<MemberId, double> sums;
    std::map<MemberId, int> counts;
    double sum = 0.0;
    for (const RangeCheck* check : checks) {
        score.inside += check->isInside() ? 1 : 0;
        sum += check->seen - check->expected;
        sums[check->member] += check->seen - check->expected;
        ++counts[check->member];
    }
    score.checks = static_cast<int>(checks.size());
    score.people = static_cast<int>(sums.size());
    if (score.checks > 0) {
        score.share = wilsonShare(score.inside, score.checks);
        score.leanReps = sum / score.checks;
        score.lean = leanOf(sums, counts, score.leanReps, score.checks);
    }
    return score;
}

template <typename Key, typename KeyOf>
std::vector<std::pair<Key, RangeScore>> scoresBy(std::span<const RangeCheck* const> checks,
                                                 const KeyOf& keyOf)
{
    std::map<Key, std::vector<const RangeCheck*>> groups;
    for (const RangeCheck* check : checks) {
        groups[keyOf(*check)].push_back(check);
    }
    std::vector<std::pair<Key, RangeScore>> scores;
    for (const auto& [key, group] : groups) {
        scores.emplace_back(key, scoreOf(group));
    }
    return scores;
}

} // namespace

std::optional<RangeCheck> rangeCheck(const AnsweredPlan& answered)
{
    const auto& [planned, done] = answered;
    const bool isSameLoad = std::abs(done.load.kilograms() - planned.load.kilograms()) < 1e-6;
    if (!planned.prediction || !isSameLoad || !saysHowMany(done)) {
        return std::nullopt;
    }
    const GivenPrediction& given = *planned.prediction;
    const double left = done.reserve ? done.reserve->reps() : 0.0;
    return RangeCheck{planned.member,
                      planned.exercise,
                      given.experience,
                      given.reps,
                      given.low,
                      given.high,
                      *done.reps + left};
}

Estimate wilsonShare(int hits, int of)
{
    const double z = normalQuantile(0.5 + kLevel / 2.0);
    const double n = of;
    const double share = hits / n;
    const double centre = (share + z * z / (2.0 * n)) / (1.0 + z * z / n);
    const double reach =
        z / (1.0 + z * z / n) * std::sqrt(share * (1.0 - share) / n + z * z / (4.0 * n * n));
    return {share, std::max(0.0, centre - reach), std::min(1.0, centre + reach), kLevel, of};
}

Calibration calibrationOf(std::span<const AnsweredPlan> answered)
{
    Calibration result;
    std::vector<RangeCheck> checks;
    for (const AnsweredPlan& pair : answered) {
        if (const auto check = rangeCheck(pair)) {
            checks.push_back(*check);
        } else if (pair.planned.prediction) {
            ++result.unread;
        }
    }
    std::vector<const RangeCheck*> all;
    for (const RangeCheck& check : checks) {
        all.push_back(&check);
    }
    result.all = scoreOf(all);
    result.byExercise =
        scoresBy<ExerciseId>(all, [](const RangeCheck& check) { return check.exercise; });
    std::stable_sort(
        result.byExercise.begin(), result.byExercise.end(), [](const auto& a, const auto& b) {
            return a.second.checks > b.second.checks;
        });
    result.byExperience = scoresBy<std::optional<Experience>>(
        all, [](const RangeCheck& check) { return check.experience; });
    return result;
}

LoadLean loadLean(const RangeScore& score)
{
    if (!score.lean || (score.lean->low <= 0.0 && score.lean->high >= 0.0)) {
        return LoadLean::NotClear;
    }
    return score.leanReps < 0.0 ? LoadLean::TooHeavy : LoadLean::TooLight;
}

} // namespace levelbar
