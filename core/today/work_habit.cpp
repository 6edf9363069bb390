// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/today/work_habit.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <map>
#include <utility>
#include <vector>

namespace levelbar {

namespace {

constexpr int kWeeks = kHabitDays / 7 - 1; // that make the habit
constexpr double kFarMore = 1.5;
constexpr double kMoreHardSets = 5.0;

// Work of one day, in whatever unit.
using WorkByDay = std::map<Day, double>;

std::optional<WorkHabit> habitOf(const WorkByDay& days, Day asOf)
{
    std::array<double, kWeeks + 1> weeks{}; // 0 is the last seven days
    WorkHabit habit;
    for (const auto& [day, work] : days) {
        const int week = (asOf - day) / 7;
        if (day > asOf || week > kWeeks) {
            continue;
        }
        weeks.at(static_cast<std::size_t>(week)) += work;
        habit.last = day;
    }
    std::vector<double> before;
    std::copy_if(weeks.begin() + 1, weeks.end(), std::back_inserter(before), [](double work) {
        return work > 0.0;
    });
    if (weeks[0] <= 0.0 || before.size() < static_cast<std::size_t>(kHabitWeeks)) {
        return std::nullopt;
    }
    std::sort(before.begin(), before.end());
    const std::size_t middle = before.size() / 2;
    habit.lately = weeks[0];
    habit.usual =
        before.size() % 2 == 1 ? before[middle] : (before[middle - 1] + before[middle]) / 2.0;
    habit.most = before.back();
    habit.weeks = static_cast<int>(before.size());
    return habit;
}

bool isHard(const PerformedSet& set)
{
    return set.kind != SetKind::Ramp && set.reps.value_or(1) > 0 &&
           (!set.reserve || *set.reserve <= kHardReserve);
}

bool isFarMore(const WorkHabit& habit, double atLeastMore)
{
    return habit.lately >= kFarMore * habit.usual && habit.lately > habit.most &&
           habit.lately >= habit.usual + atLeastMore;
}

Attention jump(const WorkHabit& habit, const char* what)
{
    Attention attention;
    attention.kind = AttentionKind::LoadJump;
    attention.arguments = {what,
                           fmt::format("{:.0f}", habit.lately),
                           fmt::format("{:g}", habit.usual),
                           fmt::format("{:.0f}", habit.most)};
    attention.evidence = {habit.last};
    return attention;
}

} // namespace

std::optional<WorkHabit> hardSetHabit(const MemberHistory& history, Day asOf)
{
    // By exercise and day: both at once, and the side of which more was done.
    std::map<std::pair<ExerciseId, Day>, std::array<double, 3>> counts;
    for (const SetSeries& series : history.sets) {
        for (const PerformedSet& set : series.sets) {
            if (isHard(set)) {
                counts[{series.exercise, set.day}].at(static_cast<std::size_t>(series.side)) += 1.0;
            }
        }
    }
    WorkByDay days;
    for (const auto& [key, sides] : counts) {
        days[key.second] += sides[0] + std::max(sides[1], sides[2]);
    }
    return habitOf(days, asOf);
}

std::optional<WorkHabit> sessionLoadHabit(std::span<const RatedSession> sessions, Day asOf)
{
    WorkByDay days;
    for (const RatedSession& session : sessions) {
        days[session.day] += static_cast<double>(session.rating) * session.minutes;
    }
    return habitOf(days, asOf);
}

std::optional<Attention> loadJump(const std::optional<WorkHabit>& hardSets,
                                  const std::optional<WorkHabit>& sessionLoad)
{
    if (hardSets && isFarMore(*hardSets, kMoreHardSets)) {
        return jump(*hardSets, "Hard sets");
    }
    if (sessionLoad && isFarMore(*sessionLoad, 0.0)) {
        return jump(*sessionLoad, "Session rating times minutes");
    }
    return std::nullopt;
}

Phrase hardSetsPhrase(const WorkHabit& habit)
{
    return {"Hard sets in seven days: %1; usually %2 a week.",
            {fmt::format("{:.0f}", habit.lately), fmt::format("{:g}", habit.usual)}};
}

Phrase sessionLoadPhrase(const WorkHabit& habit)
{
    return {"Session load (rating times minutes) in seven days: %1; usually %2 a week.",
            {fmt::format("{:.0f}", habit.lately), fmt::format("{:.0f}", habit.usual)}};
}

} // namespace levelbar
