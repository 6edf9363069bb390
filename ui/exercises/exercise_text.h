// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/exercise/exercise_detail.h"
#include "core/exercise/ladder.h"
#include "core/review/history.h"

#include <QString>

namespace levelbar::ui {

// Everything the library says of one exercise, as rich text; what comes from the gym is escaped.
[[nodiscard]] QString exerciseHtml(const Exercise& exercise,
                                   const ExerciseDetail& detail,
                                   const Library& library,
                                   const std::vector<Ladder>& ladders);

// "12 clean in 2 sets, in 2 sessions in a row" and what sends back.
[[nodiscard]] QString gateUpText(const Rung& rung, AmountKind amount);
[[nodiscard]] QString gateDownText(const Rung& rung);

// The exercise of a rung, with its setting: "Incline push-up, bar at hip height".
[[nodiscard]] QString rungName(const Rung& rung, const Library& library);

} // namespace levelbar::ui
