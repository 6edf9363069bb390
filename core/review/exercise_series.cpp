// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/review/exercise_series.h"

#include <algorithm>
#include <map>

namespace levelbar {

namespace {

constexpr double kUsualRatioSpread = 0.10; // of ln ratio, where the library names none

std::size_t at(Side side)
{
    return static_cast<std::size_t>(side);
}

std::vector<TestedMaximum> maximaOf(const std::vector<Trial>& trials)
{
    std::vector<TestedMaximum> best;
    for (const Trial& trial : trials) {
        if (!trial.isValid || trial.value() <= 0.0) {
            continue;
        }
        if (best.empty() || best.back().day != trial.day) {
            best.push_back({trial.day, trial.value()});
        } else {
            best.back().kilograms = std::max(best.back().kilograms, trial.value());
        }
    }
    return best;
}

} // namespace

bool ExerciseSeries::has(Side side) const
{
    return !sets[at(side)].empty() || !maxima[at(side)].empty();
}

bool ExerciseSeries::isStrength() const
{
    return exercise->load == LoadKind::External && exercise->amount == AmountKind::Reps;
}

std::optional<Day> ExerciseSeries::lastDay(Side side, Day today) const
{
    std::optional<Day> last;
    for (const PerformedSet& set : sets[at(side)]) {
        if (set.day <= today) {
            last = std::max(last.value_or(set.day), set.day);
        }
    }
    for (const TestedMaximum& test : maxima[at(side)]) {
        if (test.day <= today) {
            last = std::max(last.value_or(test.day), test.day);
        }
    }
    return last;
}

std::vector<ExerciseSeries> seriesOf(const MemberHistory& history, const Library& library)
{
    std::map<ExerciseId, ExerciseSeries> found;
    for (const SetSeries& series : history.sets) {
        if (const Exercise* exercise = library.exercise(series.exercise)) {
            ExerciseSeries& target = found[series.exercise];
            target.exercise = exercise;
            target.sets[at(series.side)] = series.sets;
        }
    }
    for (const TrialSeries& series : history.trials) {
        const TestKind* test = library.test(series.test);
        const Exercise* exercise =
            test != nullptr && test->maximumOf ? library.exercise(*test->maximumOf) : nullptr;
        if (exercise != nullptr) {
            ExerciseSeries& target = found[exercise->id];
            target.exercise = exercise;
            target.trials[at(series.side)] = series.trials;
            target.maxima[at(series.side)] = maximaOf(series.trials);
            target.direction = test->direction;
        }
    }
    std::vector<ExerciseSeries> all;
    all.reserve(found.size());
    for (auto& [id, series] : found) {
        all.push_back(std::move(series));
    }
    return all;
}

double ratioSpread(const Exercise& exercise)
{
    return exercise.ratioSpreadPercent ? *exercise.ratioSpreadPercent / 100.0 : kUsualRatioSpread;
}

StrengthQuestion strengthQuestion(const std::vector<ExerciseSeries>& series)
{
    StrengthQuestion question;
    for (std::size_t i = 0; i < series.size(); ++i) {
        if (!series[i].isStrength()) {
            continue;
        }
        const auto side = [&](Side s) {
            return SideHistory{series[i].sets[at(s)], series[i].maxima[at(s)]};
        };
        question.exercises.push_back(
            {side(Side::Both), side(Side::Left), side(Side::Right), std::nullopt});
        question.places.push_back(i);
    }
    for (std::size_t j = 0; j < question.places.size(); ++j) {
        const Exercise& exercise = *series[question.places[j]].exercise;
        for (std::size_t k = 0; k < question.places.size(); ++k) {
            const Exercise& base = *series[question.places[k]].exercise;
            if (k != j && exercise.ratioToBase && base.key == exercise.baseExerciseKey) {
                question.exercises[j].related =
                    RelatedLift{k, *exercise.ratioToBase, ratioSpread(exercise)};
            }
        }
    }
    return question;
}

} // namespace levelbar
