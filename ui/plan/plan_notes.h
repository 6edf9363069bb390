// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/plan/plan_reader.h"

#include <QStringList>

namespace levelbar::ui {

// What to know of the next meeting, a line each: clashes with a way out, minutes of each block and
// what to drop when it does not fit, who shares which rack.
[[nodiscard]] QStringList planNotes(const ClassPlan& plan, const MeetingPlanAnswer& answer);

} // namespace levelbar::ui
