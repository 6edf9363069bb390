// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/review/person_days.h"

#include <algorithm>
#include <map>
#include <set>

namespace levelbar {

std::vector<Day> seenDays(const MemberHistory& history, Day asOf)
{
    std::set<Day> days;
    const auto add = [&](Day day) {
        if (day <= asOf) {
            days.insert(day);
        }
    };
    for (const SetSeries& series : history.sets) {
        for (const PerformedSet& set : series.sets) {
            add(set.day);
        }
    }
    for (const TrialSeries& series : history.trials) {
        for (const Trial& trial : series.trials) {
            add(trial.day);
        }
    }
    return {days.begin(), days.end()};
}

std::vector<LayOff> layOffs(std::span<const Day> seen, Day asOf)
{
    std::vector<LayOff> found;
    for (std::size_t i = 0; i < seen.size(); ++i) {
        const Day next = i + 1 < seen.size() ? seen[i + 1] : asOf;
        if (next - seen[i] >= kLayOffFromDays) {
            found.push_back({seen[i], next});
        }
    }
    return found;
}

std::vector<PainfulDay> painfulDays(const MemberHistory& history, ExerciseId exercise, Day asOf)
{
    std::map<Day, int> scores;
    for (const SetSeries& series : history.sets) {
        if (series.exercise != exercise) {
            continue;
        }
        for (const PerformedSet& set : series.sets) {
            if (set.pain.value_or(0) > 0 && set.day <= asOf) {
                int& score = scores[set.day];
                score = std::max(score, *set.pain);
            }
        }
    }
    std::vector<PainfulDay> days;
    days.reserve(scores.size());
    for (const auto& [day, score] : scores) {
        days.push_back({day, score});
    }
    return days;
}

} // namespace levelbar
