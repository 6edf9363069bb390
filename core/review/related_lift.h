// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/review/exercise_series.h"

#include <optional>
#include <vector>

namespace levelbar {

// For an exercise never done: the lift with a history that the library's ratios lead to, up or
// down and over lifts between, by the surest way (ratios multiply, squared spreads add). Its
// place counts in question.exercises. Nothing when no way leads to one, or only by a spread over
// a quarter, which would say nothing.
[[nodiscard]] std::optional<RelatedLift> relatedLift(const Exercise& exercise,
                                                     const Library& library,
                                                     const std::vector<ExerciseSeries>& series,
                                                     const StrengthQuestion& question);

} // namespace levelbar
