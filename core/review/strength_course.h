// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/review/figures.h"
#include "core/review/person_days.h"

#include <vector>

namespace levelbar {

// What a person's page draws of one exercise and side: the past, what may come, and what
// happened on the way.
struct StrengthCourse {
    StrengthFigure figure;
    std::vector<BandPoint> forecast; // today first, then up to six weeks ahead; may be empty
    std::vector<LayOff> layOffs;     // of the person, since the figure's first day
    std::vector<PainfulDay> pains;   // of the exercise
};

[[nodiscard]] StrengthCourse strengthCourse(
    const MemberHistory& history, const Library& library, ExerciseId exercise, Side side, Day asOf);

// The strength filter run on past today without a set more: its damped slope leads on, and its
// doubt grows. For somebody who goes on training as they did: nothing here knows of a lay-off to
// come. Empty when there is nothing to show, or the evidence is too old to lead anywhere.
// Cost: a fit of the person's exercises a point (five).
[[nodiscard]] std::vector<BandPoint> strengthForecast(
    const MemberHistory& history, const Library& library, ExerciseId exercise, Side side, Day asOf);

} // namespace levelbar
