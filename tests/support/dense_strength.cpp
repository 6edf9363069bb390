// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/dense_strength.h"

#include "tests/support/dense_exercise.h"

#include <cstddef>
#include <map>
#include <optional>

namespace levelbar::tests {

namespace {

// What an exercise alone says of a number, without what was expected of it.
std::optional<Normal> evidenceOf(const Normal& posterior, const Normal& prior)
{
    const double precision = 1.0 / posterior.variance - 1.0 / prior.variance;
    if (precision < 1e-6) {
        return std::nullopt;
    }
    return Normal{(posterior.mean / posterior.variance - prior.mean / prior.variance) / precision,
                  1.0 / precision};
}

// A person's number has the variance that is not the exercise's own around 0; every other exercise
// shows it with its own part added, and this exercise adds its own again.
Normal expected(const std::vector<Normal>& others, const Normal& general, double ownVariance)
{
    double precision = 1.0 / (general.variance - ownVariance);
    double sum = precision * general.mean;
    for (const Normal& other : others) {
        precision += 1.0 / (other.variance + ownVariance);
        sum += other.mean / (other.variance + ownVariance);
    }
    return {sum / precision, 1.0 / precision + ownVariance};
}

// What one exercise says of the person's factor and days.
struct Said {
    std::optional<Normal> factor;
    std::map<double, Normal> days; // by week
};

Said saidBy(const DenseExercise& exercise)
{
    Said said{evidenceOf(exercise.factor(), {kFactorMean, kFactorVariance}), {}};
    for (std::size_t d = 0; d < exercise.days().size(); ++d) {
        if (const auto day = evidenceOf(exercise.day(d), {0.0, kDayVariance})) {
            said.days[exercise.days()[d]] = *day;
        }
    }
    return said;
}

void learn(DenseExercise& exercise, const std::vector<Said>& others)
{
    std::vector<Normal> factors;
    for (const Said& said : others) {
        if (said.factor) {
            factors.push_back(*said.factor);
        }
    }
    exercise.expectFactor(
        expected(factors, {kFactorMean, kFactorVariance}, kFactorVarianceInPerson));
    for (std::size_t d = 0; d < exercise.days().size(); ++d) {
        std::vector<Normal> effects;
        for (const Said& said : others) {
            if (const auto day = said.days.find(exercise.days()[d]); day != said.days.end()) {
                effects.push_back(day->second);
            }
        }
        exercise.expectDay(d, expected(effects, {0.0, kDayVariance}, kDayVarianceOfExercise));
    }
}

void learnFromOthers(std::vector<DenseExercise>& exercises)
{
    std::vector<Said> all;
    all.reserve(exercises.size());
    for (const DenseExercise& exercise : exercises) {
        all.push_back(saidBy(exercise));
    }
    for (std::size_t i = 0; i < exercises.size(); ++i) {
        std::vector<Said> others = all;
        others.erase(others.begin() + static_cast<std::ptrdiff_t>(i));
        learn(exercises[i], others);
    }
}

} // namespace

std::vector<DenseStrength> denseStrength(const std::vector<std::vector<DenseTest>>& exercises,
                                         double today)
{
    std::vector<DenseExercise> all;
    all.reserve(exercises.size());
    for (const std::vector<DenseTest>& tests : exercises) {
        all.emplace_back(tests, today);
    }
    const bool isAlone = all.size() == 1;
    for (DenseExercise& exercise : all) {
        exercise.iterate(isAlone ? 3 : 2, !isAlone);
    }
    if (!isAlone) {
        learnFromOthers(all);
        for (DenseExercise& exercise : all) {
            exercise.iterate(2, false);
        }
    }
    std::vector<DenseStrength> answers;
    answers.reserve(all.size());
    for (const DenseExercise& exercise : all) {
        answers.push_back(exercise.answer());
    }
    return answers;
}

} // namespace levelbar::tests
