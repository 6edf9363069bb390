// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/plan/class_plan.h"
#include "core/review/history.h"
#include "storage/logbook.h"

#include <span>

namespace levelbar::ui {

// Writes into sets that are about to be planned how many reps are expected of them, so that it
// can be told later how right that was. Any people's. Throws StoreError.
void expectReps(std::span<PlannedSet> sets,
                const storage::Logbook& logbook,
                const Library& library,
                Day day,
                Moment now);

} // namespace levelbar::ui
