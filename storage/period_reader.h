// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/report/group_summary.h"
#include "storage/logbook.h"

#include <string>
#include <vector>

namespace levelbar::storage {

// What happened from one day to another, both included, for the manager's summary: one read
// transaction. Archived people are in it: they were there. Came is who is noted so or has a set of
// that meeting, unless the meeting was cancelled; missed is who was booked and noted as not there.
[[nodiscard]] PeriodFacts readPeriod(const Logbook& logbook, Day from, Day to);

// The groups that people stand in, by name; the empty one, for people in none, last and only when
// there are such.
[[nodiscard]] std::vector<std::string> groupsOf(const Logbook& logbook);

} // namespace levelbar::storage
