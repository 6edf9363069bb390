// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/plan/class_plan.h"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

namespace levelbar {

namespace {

std::vector<Side> sidesOf(const Exercise& exercise)
{
    if (exercise.sidedness == Sidedness::SingleSided) {
        return {Side::Left, Side::Right};
    }
    return {Side::Both};
}

std::optional<int> amountOf(const PerformedSet& set, AmountKind kind)
{
    switch (kind) {
    case AmountKind::Reps:
        return set.reps;
    case AmountKind::Seconds:
        return set.secondsTenths;
    case AmountKind::Metres:
        break;
    }
    return set.metresTenths;
}

// The set to go by: of the last day with work sets of the exercise and side, the one of the same
// place, else the last.
const DoneSet* lastLike(std::span<const DoneSet> done, ExerciseId exercise, Side side, int number)
{
    const auto isWork = [&](const DoneSet& set) {
        return set.exercise == exercise && set.side == side &&
               set.performed.kind != SetKind::Ramp && set.performed.reps.value_or(1) > 0;
    };
    std::vector<const DoneSet*> last;
    for (const DoneSet& set : done) {
        if (!isWork(set)) {
            continue;
        }
        if (!last.empty() && set.performed.day > last.front()->performed.day) {
            last.clear();
        }
        if (last.empty() || set.performed.day == last.front()->performed.day) {
            last.push_back(&set);
        }
    }
    if (last.empty()) {
        return nullptr;
    }
    std::sort(last.begin(), last.end(), [](const DoneSet* a, const DoneSet* b) {
        return a->performed.number < b->performed.number;
    });
    const auto place = static_cast<std::size_t>(number - 1);
    return place < last.size() ? last[place] : last.back();
}

PlannedSet planOne(const TemplateItem& item,
                   const Exercise& exercise,
                   Side side,
                   int number,
                   std::span<const DoneSet> done)
{
    PlannedSet planned;
    planned.exercise = item.exercise;
    planned.side = side;
    planned.number = number;
    planned.amount = item.reps;
    const DoneSet* last = lastLike(done, item.exercise, side, number);
    planned.isNew = last == nullptr;
    if (last != nullptr) {
        planned.load = last->performed.load;
        if (!item.reps) {
            planned.amount = amountOf(last->performed, exercise.amount);
        }
    }
    return planned;
}

} // namespace

std::vector<PlannedSet> planFromLast(MeetingId meeting,
                                     MemberId member,
                                     std::span<const TemplateItem> items,
                                     std::span<const Exercise> exercises,
                                     std::span<const DoneSet> done)
{
    std::vector<PlannedSet> plan;
    for (const TemplateItem& item : items) {
        const auto exercise = std::find_if(exercises.begin(), exercises.end(), [&](const auto& e) {
            return e.id == item.exercise;
        });
        if (exercise == exercises.end()) {
            continue;
        }
        for (int number = 1; number <= item.sets; ++number) {
            for (const Side side : sidesOf(*exercise)) {
                PlannedSet planned = planOne(item, *exercise, side, number, done);
                planned.meeting = meeting;
                planned.member = member;
                plan.push_back(planned);
            }
        }
    }
    return plan;
}

std::vector<TemplateItem> templateFromHistory(std::span<const DoneSet> done)
{
    struct Use {
        std::set<std::pair<MeetingId, MemberId>> people;
        std::map<std::tuple<MeetingId, MemberId, Side>, int> sets;
    };

    std::map<ExerciseId, Use> uses;
    std::set<std::pair<MeetingId, MemberId>> everyone;
    for (const DoneSet& set : done) {
        if (!set.meeting || set.performed.kind == SetKind::Ramp) {
            continue;
        }
        const std::pair visit(*set.meeting, set.member);
        everyone.insert(visit);
        Use& use = uses[set.exercise];
        use.people.insert(visit);
        ++use.sets[{*set.meeting, set.member, set.side}];
    }
    std::vector<std::pair<std::size_t, TemplateItem>> found;
    for (const auto& [exercise, use] : uses) {
        if (3 * use.people.size() < everyone.size()) {
            continue;
        }
        std::vector<int> counts;
        counts.reserve(use.sets.size());
        for (const auto& [key, count] : use.sets) {
            counts.push_back(count);
        }
        std::nth_element(counts.begin(),
                         counts.begin() + static_cast<std::ptrdiff_t>(counts.size() / 2),
                         counts.end());
        found.push_back({use.people.size(),
                         {exercise, std::clamp(counts[counts.size() / 2], 1, 20), std::nullopt}});
    }
    std::stable_sort(
        found.begin(), found.end(), [](const auto& a, const auto& b) { return a.first > b.first; });
    std::vector<TemplateItem> items;
    items.reserve(found.size());
    for (const auto& [people, item] : found) {
        items.push_back(item);
    }
    return items;
}

} // namespace levelbar
