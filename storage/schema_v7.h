// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace levelbar::storage {

// Schema version 7: the timetable, the plan by weeks, and what is written down about an hour.
//
// calendar_days.kind: 1 term, 2 holiday. A class's room and capacity are the usual ones; a slot's
// go before them. A meeting's empty room or instructor is that of its slot, its minutes empty as
// long as planned. is_extra: in the timetable without a slot.
// attendance.booking: 1 booked, 2 waiting, 3 drop-in, 4 cancelled; empty: see is_booked, which
// older programs wrote. place_order: who was first. rating: of the session, 0 to 10.
// class_block: the minutes of a block and whether the halves of the class take turns (2) or not
// (1). class_week: a week of a class, by its Monday, that differs from the template; kind 1 as
// usual, 2 a lighter week. class_week_item: what that week does in the template's place.
// An incident names a person, a guest or, when neither is in the logbook, whom it says.
// printed_row: people in the order in which they stand on the paper; the sheet's id is its number.
// Rules as in schema_v1.h.
extern const char* const kSchemaV7Timetable;
extern const char* const kSchemaV7Plan;
extern const char* const kSchemaV7Hour;

} // namespace levelbar::storage
