// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/plan/answered_plan.h"
#include "storage/logbook.h"

#include <vector>

namespace levelbar::storage {

// Planned sets that were answered from the first to the last of the days, with what was expected
// of them when they were given. By person, day, exercise, side, number. Archived people count,
// too.
[[nodiscard]] std::vector<AnsweredPlan> answeredPlans(const Logbook& logbook, Day first, Day last);

} // namespace levelbar::storage
