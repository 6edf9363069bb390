// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/plan/answered_plan.h"
#include "core/review/attention.h"
#include "core/review/history.h"

#include <optional>
#include <span>

namespace levelbar {

// Plain facts that call for attention beside what a review finds.

// A test last done twelve weeks ago or more (common practice is 8 to 12, no source), by somebody
// who trained in the last four weeks. A test not done for a year counts as given up; tested
// maxima are left out, because sets tell them, and so is what has no better or worse.
[[nodiscard]] std::optional<Attention>
retestDue(const MemberHistory& history, const Library& library, Day asOf);

// A clearance that ends within two weeks or has ended. Not for somebody gone for twelve weeks.
[[nodiscard]] std::optional<Attention>
clearanceDue(std::optional<Day> clearedUntil, std::optional<Day> lastSeen, Day asOf);

// An exercise in which somebody, on its last two days with a plan, did fewer reps than planned
// with the planned load or less in a counted work set, and not for pain, time or the other side.
// The second day no more than four weeks ago. `answered`: one person's.
[[nodiscard]] std::optional<Attention>
targetMissed(std::span<const AnsweredPlan> answered, const Library& library, Day asOf);

} // namespace levelbar
