// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/plan/meeting_plan.h"
#include "tests/support/rack_tasks.h"
#include "tests/support/random.h"
#include "tests/support/sets.h"

#include <benchmark/benchmark.h>

// The plan of a meeting: twenty-two people with three years of two sessions a week, three
// exercises.
namespace levelbar {
namespace {

constexpr int kPeople = 22;
constexpr int kSessions = 300;
const Day kToday{20600};

Library library()
{
    Library made;
    for (int id = 1; id <= 3; ++id) {
        Exercise exercise;
        exercise.id = ExerciseId{id};
        exercise.key = "lift-" + std::to_string(id);
        exercise.name = exercise.key;
        exercise.pattern = Pattern::HorizontalPress;
        exercise.implement = Implement::Barbell;
        made.exercises.push_back(exercise);
    }
    return made;
}

std::vector<MemberHistory> people()
{
    tests::Random random(3);
    std::vector<MemberHistory> all;
    for (int id = 1; id <= kPeople; ++id) {
        MemberHistory history;
        history.member.id = MemberId{id};
        for (int exercise = 1; exercise <= 3; ++exercise) {
            SetSeries series;
            series.exercise = ExerciseId{exercise};
            const double load = 40.0 + 2.5 * random.below(20);
            for (int session = kSessions; session >= 1; --session) {
                series.sets.push_back(tests::set(
                    kToday - 7 * session / 2, 1, load, 7 + random.below(3), random.below(4)));
            }
            history.sets.push_back(std::move(series));
        }
        all.push_back(std::move(history));
    }
    return all;
}

void planOfAMeeting(benchmark::State& state)
{
    const Library known = library();
    const Kit kit = assumedKit();
    const auto who = people();
    std::vector<PlanItem> items;
    for (int exercise = 1; exercise <= 3; ++exercise) {
        items.push_back({{ExerciseId{exercise}, 3, 8}, exercise, {}, {}, {}});
    }
    MeetingPlanQuestion question;
    question.people = who;
    question.items = items;
    question.library = &known;
    question.kit = &kit;
    question.racks = 6;
    question.on = kToday;
    question.isProofWanted = state.range(0) == 1;
    for (auto _ : state) {
        benchmark::DoNotOptimize(planMeeting(question));
    }
}

// With the proof that no rack sharing is better, and without, as before a class.
BENCHMARK(planOfAMeeting)->ArgName("proof")->Arg(1)->Arg(0)->Unit(benchmark::kMillisecond);

// Compared to: each load asked for by itself, with the account of the last day.
void loadsAskedOneByOne(benchmark::State& state)
{
    const Library known = library();
    const Kit kit = assumedKit();
    const auto who = people();
    for (auto _ : state) {
        for (const MemberHistory& history : who) {
            for (int exercise = 1; exercise <= 3; ++exercise) {
                benchmark::DoNotOptimize(targetFor(
                    history, known, kit, {ExerciseId{exercise}, {}, 8, Reserve{20}, kToday}));
            }
        }
    }
}

BENCHMARK(loadsAskedOneByOne)->Unit(benchmark::kMillisecond);

// Twenty-four on six racks: as they come, and with people kept apart and spotters.
void racksShared(benchmark::State& state)
{
    tests::Random random(5);
    const RackSharingTask task = tests::drawnRackTask(random, 24, 6, 4);
    RackRules rules;
    if (state.range(0) == 1) {
        rules.apart = {{0, 1}, {2, 3}, {4, 5}, {6, 7}};
        rules.spotters = {0, 2, 4, 6, 8, 10};
    }
    for (auto _ : state) {
        benchmark::DoNotOptimize(shareRacks(task, rules));
    }
}

BENCHMARK(racksShared)->Arg(0)->Arg(1)->Unit(benchmark::kMillisecond);

} // namespace
} // namespace levelbar
