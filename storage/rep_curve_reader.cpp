// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/rep_curve_reader.h"

#include "core/plan/class_week.h"
#include "core/review/exercise_series.h"
#include "core/strength/rep_curve_learner.h"
#include "storage/history_reader.h"
#include "storage/library_store.h"
#include "storage/member_store.h"

#include <algorithm>

namespace levelbar::storage {

namespace {

constexpr std::size_t kMostPeople = 100;
constexpr int kDaysLookedAt = 364; // more than a year of sets teaches little more and takes longer

// Numbers that lie about evenly (the finishing step of SplitMix64, Steele 2014): a new person
// takes at most one other's place among those who are asked.
std::uint64_t scattered(MemberId member)
{
    auto z = static_cast<std::uint64_t>(member.value) * 0x9E3779B97F4A7C15U;
    z = (z ^ (z >> 30U)) * 0xBF58476D1CE4E5B9U;
    z = (z ^ (z >> 27U)) * 0x94D049BB133111EBU;
    return z ^ (z >> 31U);
}

std::vector<MemberId> peopleToAsk(const Logbook& logbook)
{
    std::vector<MemberId> ids;
    for (const Member& member : MemberStore(logbook).all()) {
        ids.push_back(member.id);
    }
    if (ids.size() > kMostPeople) {
        const auto end = ids.begin() + static_cast<std::ptrdiff_t>(kMostPeople);
        std::nth_element(ids.begin(), end, ids.end(), [](MemberId a, MemberId b) {
            return scattered(a) < scattered(b);
        });
        ids.erase(end, ids.end());
    }
    std::sort(ids.begin(), ids.end()); // sums come out the same, bit by bit
    return ids;
}

void forgetBefore(MemberHistory& history, Day day)
{
    for (SetSeries& series : history.sets) {
        std::erase_if(series.sets, [day](const PerformedSet& set) { return set.day < day; });
    }
}

std::optional<Day> lastDayOf(const MemberHistory& history)
{
    std::optional<Day> last;
    for (const SetSeries& series : history.sets) {
        if (!series.sets.empty()) {
            last = std::max(last.value_or(series.sets.back().day), series.sets.back().day);
        }
    }
    return last;
}

RepCurveExpectation learnBefore(const Logbook& logbook, Day monday)
{
    const Library library = LibraryStore(logbook).all();
    RepCurveLearner learner;
    for (const MemberId member : peopleToAsk(logbook)) {
        auto found = bareHistoryOf(logbook, member);
        if (!found) {
            continue;
        }
        MemberHistory history = historyBefore(std::move(*found), monday);
        forgetBefore(history, monday - kDaysLookedAt);
        if (const auto last = lastDayOf(history)) {
            const std::vector<ExerciseSeries> series = seriesOf(history, library);
            learner.add(strengthQuestion(series).exercises, history.member.experience, *last);
        }
    }
    return learner.learnt();
}

} // namespace

void forgetWhenChanged(const Logbook& logbook)
{
    RememberedCurves& remembered = logbook.rememberedCurves();
    const FileState state = logbook.state();
    if (remembered.state != state) {
        remembered = {state, false, {}};
    }
}

RepCurveExpectation repCurveOn(const Logbook& logbook, Day day)
{
    const Day monday = mondayOf(day);
    RememberedCurves& remembered = logbook.rememberedCurves();
    if (!remembered.isHeld) {
        forgetWhenChanged(logbook);
    }
    auto known = remembered.before.find(monday);
    if (known == remembered.before.end()) {
        known = remembered.before.emplace(monday, learnBefore(logbook, monday)).first;
    }
    return known->second;
}

} // namespace levelbar::storage
