// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/strength/rep_curve_expectation.h"
#include "storage/logbook.h"

namespace levelbar::storage {

// Where the rep curve of this gym's average person lies, as a question of that day knows it: from
// the sets of the year before the Monday of its week, so that nobody's numbers move within a week
// because somebody else has lifted. Learnt from everybody, or from a hundred people taken by a
// rule that picks the same ones again; remembered in the logbook until something in the file has
// changed. A hundred people with two sessions of three lifts a week take a tenth of a second.
[[nodiscard]] RepCurveExpectation repCurveOn(const Logbook& logbook, Day day);

// For WriteScope: drops what is remembered of another state of the file.
void forgetWhenChanged(const Logbook& logbook);

} // namespace levelbar::storage
