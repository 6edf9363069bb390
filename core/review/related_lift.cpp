// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/review/related_lift.h"

#include <queue>

#include <cmath>
#include <map>
#include <string_view>

namespace levelbar {

namespace {

constexpr double kMostSpread = 0.25;

struct Way {
    double variance = 0.0; // of ln ratio
    double logRatio = 0.0; // ln of the asked lift's maximum over this one's
    std::string_view key;

    friend bool operator<(const Way& a, const Way& b) { return a.variance > b.variance; }
};

struct Step {
    std::string_view to;
    double logRatio = 0.0; // of `from` over `to`
    double variance = 0.0;
};

std::multimap<std::string_view, Step> stepsOf(const Library& library)
{
    std::multimap<std::string_view, Step> steps;
    for (const Exercise& exercise : library.exercises) {
        if (!exercise.ratioToBase || *exercise.ratioToBase <= 0.0) {
            continue;
        }
        const double spread = ratioSpread(exercise);
        const double logRatio = std::log(*exercise.ratioToBase);
        steps.insert({exercise.key, {exercise.baseExerciseKey, logRatio, spread * spread}});
        steps.insert({exercise.baseExerciseKey, {exercise.key, -logRatio, spread * spread}});
    }
    return steps;
}

bool hasHistory(const ExerciseSeries& series)
{
    return series.has(Side::Both) || series.has(Side::Left) || series.has(Side::Right);
}

} // namespace

std::optional<RelatedLift> relatedLift(const Exercise& exercise,
                                       const Library& library,
                                       const std::vector<ExerciseSeries>& series,
                                       const StrengthQuestion& question)
{
    std::map<std::string_view, std::size_t> known;
    for (std::size_t j = 0; j < question.places.size(); ++j) {
        if (hasHistory(series[question.places[j]])) {
            known.emplace(series[question.places[j]].exercise->key, j);
        }
    }
    const auto steps = stepsOf(library);
    std::map<std::string_view, double> settled;
    std::priority_queue<Way> ways; // Dijkstra 1959, over variances
    ways.push({0.0, 0.0, exercise.key});
    while (!ways.empty() && ways.top().variance <= kMostSpread * kMostSpread) {
        const Way way = ways.top();
        ways.pop();
        if (!settled.emplace(way.key, way.variance).second) {
            continue;
        }
        if (const auto found = known.find(way.key); found != known.end()) {
            return RelatedLift{found->second, std::exp(way.logRatio), std::sqrt(way.variance)};
        }
        const auto [first, last] = steps.equal_range(way.key);
        for (auto step = first; step != last; ++step) {
            ways.push({way.variance + step->second.variance,
                       way.logRatio + step->second.logRatio,
                       step->second.to});
        }
    }
    return std::nullopt;
}

} // namespace levelbar
