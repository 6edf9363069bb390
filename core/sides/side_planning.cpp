// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sides/side_planning.h"

#include "core/exercise/pain.h"
#include "core/plan/target.h"

#include <algorithm>
#include <map>
#include <set>
#include <utility>

namespace levelbar {

namespace {

constexpr int kFourWeeks = 28;
constexpr int kWeek = 7;

using Sets = std::span<const PerformedSet>;

// The sets of one exercise and side before a day.
Sets setsBefore(const MemberHistory& history, ExerciseId exercise, Side side, Day on)
{
    for (const SetSeries& series : history.sets) {
        if (series.exercise == exercise && series.side == side) {
            const auto end = std::find_if(series.sets.begin(),
                                          series.sets.end(),
                                          [on](const PerformedSet& set) { return set.day >= on; });
            return {series.sets.begin(), end};
        }
    }
    return {};
}

// The place of a side's first set of each day, where the order is known.
std::map<Day, int> firstPlaces(Sets sets)
{
    std::map<Day, int> places;
    for (const PerformedSet& set : sets) {
        if (set.order > 0 && set.kind != SetKind::Ramp) {
            const auto at = places.emplace(set.day, set.order).first;
            at->second = std::min(at->second, set.order);
        }
    }
    return places;
}

// Which side began on the last day on which that is known.
std::optional<Side> lastFirstOf(Sets left, Sets right)
{
    const auto lefts = firstPlaces(left);
    const auto rights = firstPlaces(right);
    const auto last = std::find_if(lefts.rbegin(), lefts.rend(), [&rights](const auto& day) {
        const auto other = rights.find(day.first);
        return other != rights.end() && other->second != day.second;
    });
    if (last == lefts.rend()) {
        return std::nullopt;
    }
    return last->second < rights.at(last->first) ? Side::Left : Side::Right;
}

// Whether a set of the last day, of either side, hurt.
bool hurtLastTime(Sets left, Sets right)
{
    Day last;
    for (const Sets sets : {left, right}) {
        last = sets.empty() ? last : std::max(last, sets.back().day);
    }
    const auto hurtThen = [last](const PerformedSet& set) { return set.day == last && hurts(set); };
    return std::any_of(left.begin(), left.end(), hurtThen) ||
           std::any_of(right.begin(), right.end(), hurtThen);
}

// What the stronger side had left when it was stopped at the other's reps, at least, in four weeks.
double leastReserveUnderCap(Sets stronger, Day on)
{
    std::optional<double> least;
    for (const PerformedSet& set : stronger) {
        if (set.stopped == StopReason::Capped && set.reserve && on - set.day <= kFourWeeks) {
            least = std::min(least.value_or(set.reserve->reps()), set.reserve->reps());
        }
    }
    return least.value_or(0.0);
}

// The last work set in which the stronger side went past the weaker one's reps.
std::optional<Day> lastUncappedOf(Sets weaker, Sets stronger, Day started)
{
    std::map<Day, int> most;
    for (const PerformedSet& set : weaker) {
        most[set.day] = std::max(most[set.day], set.reps.value_or(0));
    }
    std::optional<Day> last;
    for (const PerformedSet& set : stronger) {
        const auto other = most.find(set.day);
        const bool isPast = set.kind == SetKind::Work && set.stopped != StopReason::Capped &&
                            other != most.end() && set.reps.value_or(0) > other->second;
        if (isPast && set.day >= started) {
            last = set.day;
        }
    }
    return last;
}

// Lifts with both sides at once of the same pattern in the week before, each day's once.
int twoSidedLifts(const MemberHistory& history,
                  const Library& library,
                  const Exercise& exercise,
                  Day on)
{
    std::set<std::pair<ExerciseId, Day>> lifts;
    for (const SetSeries& series : history.sets) {
        const Exercise* other = library.exercise(series.exercise);
        if (series.side != Side::Both || other == nullptr || other->pattern != exercise.pattern) {
            continue;
        }
        for (const PerformedSet& set : series.sets) {
            if (set.day < on && on - set.day <= kWeek) {
                lifts.emplace(series.exercise, set.day);
            }
        }
    }
    return static_cast<int>(lifts.size());
}

// The weaker side's load; without any set or test to go by, none.
Result<Progression> loadOf(const SidePlanBasis& basis, ExerciseId exercise, Side weaker)
{
    const TargetQuestion question{exercise, weaker, basis.aim.reps, basis.aim.reserve, basis.on};
    const auto target = targetsFor(basis.history, basis.library, basis.kit, {&question, 1}).front();
    if (!target && target.error().code != FaultCode::NothingKnown) {
        return tl::unexpected(target.error());
    }
    return target ? target->progression : Progression{};
}

// What the sets of both sides say.
void readSets(const SidePlanBasis& basis, const Exercise& exercise, SidePlanQuestion& question)
{
    const Sets left = setsBefore(basis.history, exercise.id, Side::Left, basis.on);
    const Sets right = setsBefore(basis.history, exercise.id, Side::Right, basis.on);
    question.lastFirst = lastFirstOf(left, right);
    if (hurtLastTime(left, right)) {
        question.weakerLoad.rule = ProgressionRule::Pain; // either side's pain ends both
    }
    if (question.weaker) {
        const bool isLeft = *question.weaker == Side::Left;
        const Sets weaker = isLeft ? left : right;
        const Sets stronger = isLeft ? right : left;
        question.strongerReserve = leastReserveUnderCap(stronger, basis.on);
        question.lastUncapped =
            lastUncappedOf(weaker, stronger, question.started.value_or(basis.on));
    }
    question.twoSidedLifts = twoSidedLifts(basis.history, basis.library, exercise, basis.on);
}

} // namespace

Result<SidePlanQuestion> sidePlanQuestion(const SidePlanBasis& basis)
{
    const SideReview& review = basis.review;
    SidePlanQuestion question;
    question.today = basis.on;
    question.tier = review.tier;
    question.weaker = review.weaker;
    question.isTrainable = review.measure.isTrainable();
    question.isPaused = review.pause.has_value();
    question.isClosing = review.isClosing;
    question.sets = basis.aim.sets;
    if (!question.isTrainable) {
        return question;
    }
    const Exercise* exercise = basis.library.exercise(*review.measure.exercise);
    if (exercise == nullptr) {
        return refuse(FaultCode::UnknownExercise, {review.measure.name});
    }
    question.restsUntil = basis.records.restsUntil(exercise->id, basis.on);
    if (const auto* running = basis.records.prescriptionFor(exercise->id, basis.on)) {
        question.started = running->started;
        question.wantsExtraSet = running->wantsExtraSet;
        const auto end =
            std::find_if(review.openPairs.begin(),
                         review.openPairs.end(),
                         [&](const OpenPairVerdict& pair) { return pair.day >= basis.on; });
        question.openPairs = {review.openPairs.begin(), end};
    }
    const auto load = loadOf(basis, exercise->id, review.weaker.value_or(Side::Left));
    if (!load) {
        return tl::unexpected(load.error());
    }
    question.weakerLoad = *load;
    readSets(basis, *exercise, question);
    return question;
}

Result<SidePlan> planSides(const SidePlanBasis& basis)
{
    const auto question = sidePlanQuestion(basis);
    return question ? planSides(*question) : tl::unexpected(question.error());
}

std::optional<SideEnd> endOf(const SidePlan& plan)
{
    for (const SideRule rule : plan.rules) {
        switch (rule) {
        case SideRule::Closed:
            return SideEnd::Closed;
        case SideRule::UsualDifference:
            return SideEnd::UsualDifference;
        case SideRule::PainEnds:
            return SideEnd::Pain;
        case SideRule::SentOn:
            return SideEnd::SentOn;
        default:
            break;
        }
    }
    return std::nullopt;
}

} // namespace levelbar
