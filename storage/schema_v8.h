// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace levelbar::storage {

// Schema version 8: strengths that people work towards, and who stands where in an hour.
//
// strength_goal: one an exercise and side. by_day empty: no day set. set_day: when it was agreed.
// attendance.bib, rack, turn: where somebody stands in the hour; empty: not placed yet.
// late_minutes, left_minute and left_reason are from the first schema. easy_at: since then their
// sets of the hour count as "at least", milliseconds since 1970.
// never_together: two people who must not share a rack, a row each way. spotter: who can spot for
// others.
// Rules as in schema_v1.h.
extern const char* const kSchemaV8;

} // namespace levelbar::storage
