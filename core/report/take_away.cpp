// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/report/take_away.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

namespace levelbar {

namespace {

constexpr int kLatelyDays = 84; // twelve weeks
constexpr int kPainDays = 28;
constexpr int kPainAt = 3; // of 10
constexpr int kTenths = 10;
constexpr int kLessThanBest = 2;
constexpr double kStartShare = 0.6;
constexpr std::size_t kMostCues = 3;

// What of the library can be done without a gym, and how it is set up there.
struct HomeWay {
    std::string_view key;
    HomeKit needs;
    std::string_view how;
};

constexpr std::array kHomeWays = {
    HomeWay{"wall-push-up", HomeKit::BodyWeight, "hands on a wall"},
    HomeWay{"incline-push-up", HomeKit::BodyWeight, "hands on a table that cannot slide"},
    HomeWay{"knee-push-up", HomeKit::BodyWeight, "on the floor, from the knees"},
    HomeWay{"push-up", HomeKit::BodyWeight, "on the floor"},
    HomeWay{"hand-release-push-up", HomeKit::BodyWeight, "on the floor"},
    HomeWay{"feet-raised-push-up", HomeKit::BodyWeight, "feet on the first stair"},
    HomeWay{"sit-to-stand", HomeKit::BodyWeight, "from a chair against a wall"},
    HomeWay{"bodyweight-box-squat", HomeKit::BodyWeight, "down to a chair against a wall"},
    HomeWay{"assisted-split-squat", HomeKit::BodyWeight, "one hand on a door frame"},
    HomeWay{"split-squat", HomeKit::BodyWeight, "no load"},
    HomeWay{"reverse-lunge", HomeKit::Dumbbells, "a dumbbell in each hand"},
    HomeWay{"glute-bridge", HomeKit::BodyWeight, "on the floor"},
    HomeWay{"dumbbell-romanian-deadlift", HomeKit::Dumbbells, "a dumbbell in each hand"},
    HomeWay{"dead-bug", HomeKit::BodyWeight, "on the floor"},
    HomeWay{"bench-plank", HomeKit::BodyWeight, "forearms on a low table that cannot slide"},
    HomeWay{"plank", HomeKit::BodyWeight, "on the floor"},
    HomeWay{"side-plank", HomeKit::BodyWeight, "on the floor"},
    HomeWay{"dumbbell-row", HomeKit::Dumbbells, "the other hand on a chair against a wall"},
    HomeWay{"suitcase-march", HomeKit::Dumbbells, "a dumbbell in one hand"},
    HomeWay{"standing-dumbbell-press", HomeKit::Dumbbells, "a dumbbell in each hand"},
};

const HomeWay* homeWay(std::string_view key, HomeKit kit)
{
    const auto found = std::find_if(
        kHomeWays.begin(), kHomeWays.end(), [&](const HomeWay& way) { return way.key == key; });
    const bool isThere =
        found != kHomeWays.end() && (found->needs == HomeKit::BodyWeight || kit == found->needs);
    return isThere ? &*found : nullptr;
}

const Exercise* exerciseOf(const Library& library, std::string_view key)
{
    const auto found = std::find_if(library.exercises.begin(),
                                    library.exercises.end(),
                                    [&](const Exercise& e) { return e.key == key; });
    return found == library.exercises.end() ? nullptr : &*found;
}

bool wasDone(const TakeAwayQuestion& question, ExerciseId exercise)
{
    return std::any_of(
        question.history.sets.begin(), question.history.sets.end(), [&](const SetSeries& series) {
            return series.exercise == exercise &&
                   std::any_of(series.sets.begin(), series.sets.end(), [&](const auto& set) {
                       return set.day <= question.asOf && question.asOf - set.day <= kLatelyDays;
                   });
        });
}

// Patterns that ask the same joints: what hurt in one is left out in all of them.
int regionOf(Pattern pattern)
{
    switch (pattern) {
    case Pattern::HorizontalPress:
    case Pattern::VerticalPress:
        return 1;
    case Pattern::HorizontalPull:
    case Pattern::VerticalPull:
        return 2;
    case Pattern::Squat:
    case Pattern::Hinge:
    case Pattern::SingleLeg:
        return 3;
    case Pattern::Trunk:
    case Pattern::Carry:
    case Pattern::Other:
        break;
    }
    return 4;
}

bool hurtLately(const TakeAwayQuestion& question, Pattern pattern)
{
    return std::any_of(
        question.history.sets.begin(), question.history.sets.end(), [&](const SetSeries& series) {
            const Exercise* exercise = question.library.exercise(series.exercise);
            return exercise != nullptr && regionOf(exercise->pattern) == regionOf(pattern) &&
                   std::any_of(series.sets.begin(), series.sets.end(), [&](const auto& set) {
                       const bool isLate =
                           set.day <= question.asOf && question.asOf - set.day <= kPainDays;
                       return isLate &&
                              (set.pain.value_or(0) >= kPainAt || set.stopped == StopReason::Pain);
                   });
        });
}

int amountOf(const PerformedSet& set, AmountKind kind)
{
    switch (kind) {
    case AmountKind::Reps:
        return set.reps.value_or(0);
    case AmountKind::Seconds:
        return set.secondsTenths.value_or(0) / kTenths;
    case AmountKind::Metres:
        return set.metresTenths.value_or(0) / kTenths;
    }
    return 0;
}

// The best set of the last day on which the exercise was done; of two sides the weaker's.
std::optional<int> lastBest(const TakeAwayQuestion& question, const Exercise& exercise)
{
    std::optional<int> least;
    for (const SetSeries& series : question.history.sets) {
        if (series.exercise != exercise.id) {
            continue;
        }
        std::optional<Day> last;
        int best = 0;
        for (const PerformedSet& set : series.sets) {
            if (set.day > question.asOf || set.kind == SetKind::Ramp) {
                continue;
            }
            best = last == set.day ? std::max(best, amountOf(set, exercise.amount))
                                   : amountOf(set, exercise.amount);
            last = set.day;
        }
        if (last && question.asOf - *last <= kLatelyDays && best > 0) {
            least = least ? std::min(*least, best) : best;
        }
    }
    return least;
}

// The place of the rung to do at home; nothing when none can be.
std::optional<std::size_t> homeRung(const TakeAwayQuestion& question, const Ladder& ladder)
{
    std::optional<std::size_t> done;
    for (std::size_t i = 0; i < ladder.rungs.size(); ++i) {
        const Exercise* exercise = exerciseOf(question.library, ladder.rungs[i].exerciseKey);
        if (exercise != nullptr && wasDone(question, exercise->id)) {
            done = i;
        }
    }
    std::optional<std::size_t> chosen;
    for (std::size_t i = 0; i < ladder.rungs.size(); ++i) {
        if (homeWay(ladder.rungs[i].exerciseKey, question.kit) == nullptr) {
            continue;
        }
        if (!chosen || (done && i <= *done)) {
            chosen = i;
        }
    }
    return chosen;
}

// The next rung up that is another exercise and can be done at home.
const Exercise*
nextAtHome(const TakeAwayQuestion& question, const Ladder& ladder, std::size_t place)
{
    for (std::size_t i = place + 1; i < ladder.rungs.size(); ++i) {
        const std::string& key = ladder.rungs[i].exerciseKey;
        if (key != ladder.rungs[place].exerciseKey && homeWay(key, question.kit) != nullptr) {
            return exerciseOf(question.library, key);
        }
    }
    return nullptr;
}

Phrase amountPhrase(const Exercise& exercise, int sets, int amount)
{
    const bool isOneSided = exercise.sidedness == Sidedness::SingleSided;
    const std::vector<std::string> numbers = {std::to_string(sets), std::to_string(amount)};
    switch (exercise.amount) {
    case AmountKind::Reps:
        return {isOneSided ? "%1 sets of %2 on each side." : "%1 sets of %2.", numbers};
    case AmountKind::Seconds:
        return {isOneSided ? "%1 times %2 seconds on each side." : "%1 times %2 seconds.", numbers};
    case AmountKind::Metres:
        break;
    }
    return {isOneSided ? "%1 times %2 metres on each side." : "%1 times %2 metres.", numbers};
}

std::vector<Phrase> aimPhrases(const Exercise& exercise, const Rung& rung, const Exercise* next)
{
    const GateUp& up = rung.up;
    std::vector<std::string> words = {
        std::to_string(up.amount), std::to_string(up.sets), std::to_string(up.sessions)};
    const bool isReps = exercise.amount == AmountKind::Reps;
    std::vector<Phrase> all = {
        {isReps ? "Next aim: %1 clean reps in %2 sets, %3 days running."
                : (exercise.amount == AmountKind::Seconds
                       ? "Next aim: %1 clean seconds in %2 sets, %3 days running."
                       : "Next aim: %1 clean metres in %2 sets, %3 days running."),
         std::move(words)}};
    if (next != nullptr) {
        all.push_back({"Then ask about: %1.", {next->name}});
    }
    return all;
}

TakeAwayItem itemOf(const TakeAwayQuestion& question, const Ladder& ladder, std::size_t place)
{
    const Rung& rung = ladder.rungs[place];
    const Exercise& exercise = *exerciseOf(question.library, rung.exerciseKey);
    const HomeWay& way = *homeWay(rung.exerciseKey, question.kit);
    const auto best = lastBest(question, exercise);
    const int start = static_cast<int>(std::ceil(kStartShare * rung.up.amount));
    const int amount = std::clamp(best ? *best - kLessThanBest : start, 1, rung.up.amount);
    TakeAwayItem item;
    item.exercise = exercise.id;
    item.name = exercise.name;
    item.how = way.how;
    item.amount = {amountPhrase(exercise, rung.up.sets, amount)};
    if (way.needs == HomeKit::Dumbbells) {
        item.amount.push_back({"A load that leaves about three in reserve.", {}});
    }
    item.aim = aimPhrases(exercise, rung, nextAtHome(question, ladder, place));
    const auto detail = question.details.find(exercise.id);
    if (detail != question.details.end()) {
        item.cues = detail->second.cues;
        item.cues.resize(std::min(item.cues.size(), kMostCues));
    }
    return item;
}

std::vector<Pattern> patternsFor(HomeKit kit)
{
    if (kit == HomeKit::Dumbbells) {
        return {Pattern::HorizontalPress,
                Pattern::HorizontalPull,
                Pattern::SingleLeg,
                Pattern::Hinge,
                Pattern::Trunk,
                Pattern::Squat};
    }
    return {Pattern::HorizontalPress,
            Pattern::Squat,
            Pattern::Trunk,
            Pattern::Hinge,
            Pattern::SingleLeg};
}

} // namespace

TakeAway chooseTakeAway(const TakeAwayQuestion& question)
{
    TakeAway page{question.history.member, question.asOf, question.kit, {}, {}, {}};
    for (const Pattern pattern : patternsFor(question.kit)) {
        const auto ladder = std::find_if(question.ladders.begin(),
                                         question.ladders.end(),
                                         [&](const Ladder& l) { return l.pattern == pattern; });
        if (page.items.size() == kMostTakeAway || ladder == question.ladders.end()) {
            continue;
        }
        const auto place = homeRung(question, *ladder);
        if (!place) {
            continue;
        }
        if (hurtLately(question, pattern)) {
            page.leftOut.push_back(
                {"%1: left out, it hurt lately. Ask before you do it at home.", {ladder->name}});
            continue;
        }
        page.items.push_back(itemOf(question, *ladder, *place));
    }
    page.stop = {{"Stop when something hurts, when you feel dizzy or short of breath, or when the "
                  "next rep would not look like the first.",
                  {}},
                 {"Pain that stays, spreads or comes back: ask a clinician.", {}},
                 {"Pain or pressure in the chest: call for help at once.", {}}};
    return page;
}

} // namespace levelbar
