// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/today/due_attention.h"

#include <algorithm>
#include <iterator>
#include <map>
#include <vector>

namespace levelbar {

namespace {

constexpr int kRetestDays = 84;
constexpr int kGivenUpDays = 364;
constexpr int kTrainsDays = 28;
constexpr int kClearanceNoticeDays = 14;
constexpr int kGoneDays = 84;
constexpr int kMissedDays = 28;

bool trainedLately(const MemberHistory& history, Day asOf)
{
    return std::any_of(history.sets.begin(), history.sets.end(), [asOf](const SetSeries& series) {
        return std::any_of(series.sets.begin(), series.sets.end(), [asOf](const PerformedSet& set) {
            return set.day <= asOf && asOf - set.day <= kTrainsDays;
        });
    });
}

std::map<TestId, Day> lastTrials(const MemberHistory& history, Day asOf)
{
    std::map<TestId, Day> last;
    for (const TrialSeries& series : history.trials) {
        for (const Trial& trial : series.trials) {
            if (trial.isValid && trial.day <= asOf) {
                Day& day = last.try_emplace(series.test, trial.day).first->second;
                day = std::max(day, trial.day);
            }
        }
    }
    return last;
}

bool isShort(const AnsweredPlan& pair)
{
    const PerformedSet& done = pair.done;
    const bool isForOtherReasons = done.stopped == StopReason::Pain ||
                                   done.stopped == StopReason::Time ||
                                   done.stopped == StopReason::Capped;
    return done.known == HowKnown::Counted && done.kind == SetKind::Work && !isForOtherReasons &&
           done.reps && pair.planned.amount && *done.reps < *pair.planned.amount &&
           done.load.kilograms() <= pair.planned.load.kilograms() + 1e-9;
}

} // namespace

std::optional<Attention> retestDue(const MemberHistory& history, const Library& library, Day asOf)
{
    if (!trainedLately(history, asOf)) {
        return std::nullopt;
    }
    const TestKind* longest = nullptr;
    Day last = asOf;
    int others = -1;
    for (const auto& [id, day] : lastTrials(history, asOf)) {
        const TestKind* test = library.test(id);
        const int age = asOf - day;
        if (test == nullptr || test->maximumOf || test->direction == Direction::None ||
            age < kRetestDays || age >= kGivenUpDays) {
            continue;
        }
        ++others;
        if (longest == nullptr || day < last) {
            longest = test;
            last = day;
        }
    }
    if (longest == nullptr) {
        return std::nullopt;
    }
    Attention attention;
    attention.kind = AttentionKind::Retest;
    attention.arguments = {longest->name, shortText(last + kRetestDays)};
    if (others > 0) {
        attention.arguments.push_back(std::to_string(others));
    }
    attention.evidence = {last};
    return attention;
}

std::optional<Attention>
clearanceDue(std::optional<Day> clearedUntil, std::optional<Day> lastSeen, Day asOf)
{
    const bool isGone = lastSeen && asOf - *lastSeen > kGoneDays;
    if (!clearedUntil || *clearedUntil - asOf > kClearanceNoticeDays || isGone) {
        return std::nullopt;
    }
    Attention attention;
    attention.kind = AttentionKind::Clearance;
    attention.arguments = {shortText(*clearedUntil)};
    attention.evidence = {*clearedUntil, *clearedUntil < asOf ? 2 : 1};
    return attention;
}

std::optional<Attention>
targetMissed(std::span<const AnsweredPlan> answered, const Library& library, Day asOf)
{
    std::map<ExerciseId, std::map<Day, bool>> days; // whether a set came short
    for (const AnsweredPlan& pair : answered) {
        const Exercise* exercise = library.exercise(pair.planned.exercise);
        const bool isOfReps = exercise != nullptr && exercise->amount == AmountKind::Reps;
        if (isOfReps && pair.done.day <= asOf && pair.done.kind == SetKind::Work) {
            bool& missed = days[pair.planned.exercise][pair.done.day];
            missed = missed || isShort(pair);
        }
    }
    std::optional<Attention> newest;
    for (const auto& [id, missed] : days) {
        if (missed.size() < 2) {
            continue;
        }
        const auto second = missed.rbegin();
        const auto first = std::next(second);
        const bool isTwice = first->second && second->second;
        if (!isTwice || asOf - second->first > kMissedDays ||
            (newest && newest->evidence.day >= second->first)) {
            continue;
        }
        newest = Attention();
        newest->kind = AttentionKind::TargetMissed;
        newest->arguments = {
            library.exercise(id)->name, shortText(first->first), shortText(second->first)};
        newest->evidence = {second->first};
        newest->exercise = id;
    }
    return newest;
}

} // namespace levelbar
