// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/review/strength_course.h"

#include <algorithm>
#include <array>

namespace levelbar {

namespace {

// Denser where the band opens fastest.
constexpr std::array kWeeksAhead = {0, 1, 2, 4, 6};

// Without what comes after a day: the forecast of an earlier day must not see it.
SideHistory upTo(const SideHistory& side, Day asOf)
{
    const auto isUpTo = [asOf](const auto& entry) { return entry.day <= asOf; };
    const auto sets =
        std::partition_point(side.sets.begin(), side.sets.end(), isUpTo) - side.sets.begin();
    const auto tests =
        std::partition_point(side.tests.begin(), side.tests.end(), isUpTo) - side.tests.begin();
    return {side.sets.first(static_cast<std::size_t>(sets)),
            side.tests.first(static_cast<std::size_t>(tests))};
}

} // namespace

std::vector<BandPoint> strengthForecast(
    const MemberHistory& history, const Library& library, ExerciseId exercise, Side side, Day asOf)
{
    const std::vector<ExerciseSeries> all = seriesOf(history, library);
    StrengthQuestion question = strengthQuestion(all);
    const auto place = std::find_if(question.places.begin(),
                                    question.places.end(),
                                    [&](std::size_t p) { return all[p].exercise->id == exercise; });
    if (place == question.places.end()) {
        return {};
    }
    const auto last = all[*place].lastDay(side, asOf);
    if (!last || evidenceOf(*last, asOf) == Evidence::TooOld) {
        return {};
    }
    for (ExerciseHistory& entry : question.exercises) {
        for (SideHistory* one : {&entry.both, &entry.left, &entry.right}) {
            *one = upTo(*one, asOf);
        }
    }
    const auto at = static_cast<std::size_t>(place - question.places.begin());
    std::vector<BandPoint> forecast;
    for (const int weeks : kWeeksAhead) {
        const Day day = asOf + 7 * weeks;
        const auto fits = fitMember(question.exercises, history.prior(), day, {false, asOf});
        if (!fits[at] || fits[at]->isFromRelated) {
            return {};
        }
        const Estimate max = strengthOf(*fits[at], side, day).oneRepMax;
        forecast.push_back({day, max.value, max.low, max.high});
    }
    return forecast;
}

StrengthCourse strengthCourse(
    const MemberHistory& history, const Library& library, ExerciseId exercise, Side side, Day asOf)
{
    StrengthCourse course;
    course.figure = strengthFigure(history, library, exercise, side, asOf);
    if (course.figure.dots.empty()) {
        return course;
    }
    course.forecast = strengthForecast(history, library, exercise, side, asOf);
    course.layOffs = layOffs(seenDays(history, asOf), asOf);
    const Day first = course.figure.dots.front().day;
    std::erase_if(course.layOffs, [first](const LayOff& stretch) { return stretch.to <= first; });
    course.pains = painfulDays(history, exercise, asOf);
    return course;
}

} // namespace levelbar
