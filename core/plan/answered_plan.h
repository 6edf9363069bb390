// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/plan/class_plan.h"

namespace levelbar {

// A planned set and the set that answered it.
struct AnsweredPlan {
    PlannedSet planned;
    PerformedSet done;
};

} // namespace levelbar
