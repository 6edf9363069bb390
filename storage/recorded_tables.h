// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <string_view>

namespace levelbar::storage {

// The kinds of rows that a change can touch: see Change.
enum class TableKind { Sets, Trials, Roster, Classes, Library, Today };

// A table whose changes actions record. `memberColumn`: the place of the column that names a
// person, or -1. A test compares this list with the schema.
struct RecordedTable {
    const char* name;
    TableKind kind;
    int memberColumn;
};

inline constexpr std::array kRecordedTables = {
    RecordedTable{"member", TableKind::Roster, 0},
    RecordedTable{"member_limit", TableKind::Roster, 1},
    RecordedTable{"consent", TableKind::Roster, 1},
    RecordedTable{"emergency_contact", TableKind::Roster, 0},
    RecordedTable{"screening", TableKind::Roster, 1},
    RecordedTable{"setting", TableKind::Library, -1},
    RecordedTable{"exercise", TableKind::Library, -1},
    RecordedTable{"exercise_change", TableKind::Library, -1},
    RecordedTable{"exercise_name", TableKind::Library, -1},
    RecordedTable{"test_kind", TableKind::Library, -1},
    RecordedTable{"setup_card", TableKind::Roster, 0},
    RecordedTable{"class", TableKind::Classes, -1},
    RecordedTable{"class_slot", TableKind::Classes, -1},
    RecordedTable{"class_member", TableKind::Roster, 1},
    RecordedTable{"class_template", TableKind::Classes, -1},
    RecordedTable{"meeting", TableKind::Classes, -1},
    RecordedTable{"attendance", TableKind::Classes, 1},
    RecordedTable{"guest", TableKind::Classes, -1},
    RecordedTable{"planned_set", TableKind::Classes, 3},
    RecordedTable{"done_set", TableKind::Sets, 0},
    RecordedTable{"trial", TableKind::Trials, 0},
    RecordedTable{"kit_piece", TableKind::Library, -1},
    RecordedTable{"exercise_detail", TableKind::Library, -1},
    RecordedTable{"ladder", TableKind::Library, -1},
    RecordedTable{"ladder_rung", TableKind::Library, -1},
    RecordedTable{"side_reason", TableKind::Roster, 1},
    RecordedTable{"side_threshold", TableKind::Library, -1},
    RecordedTable{"side_prescription", TableKind::Roster, 0},
    RecordedTable{"surgery", TableKind::Roster, 1},
    RecordedTable{"settled", TableKind::Today, 0},
    RecordedTable{"follow_up", TableKind::Today, 7},
    RecordedTable{"calendar_days", TableKind::Classes, -1},
    RecordedTable{"class_block", TableKind::Classes, -1},
    RecordedTable{"class_week", TableKind::Classes, -1},
    RecordedTable{"class_week_item", TableKind::Classes, -1},
    RecordedTable{"incident", TableKind::Classes, 4},
    RecordedTable{"printed_sheet", TableKind::Classes, -1},
    RecordedTable{"printed_row", TableKind::Classes, 2},
    RecordedTable{"room", TableKind::Library, -1},
    RecordedTable{"rack", TableKind::Library, -1},
    RecordedTable{"bench", TableKind::Library, -1},
    RecordedTable{"gone_piece", TableKind::Library, -1},
    RecordedTable{"scale_reading", TableKind::Roster, 0},
    RecordedTable{"strength_goal", TableKind::Roster, 0},
    RecordedTable{"never_together", TableKind::Roster, 0},
    RecordedTable{"spotter", TableKind::Roster, 0},
};

// Tables that are never recorded: the history of actions itself, and imports.
inline constexpr std::array kUnrecordedTables = {
    std::string_view("action"), std::string_view("action_member"), std::string_view("import")};

} // namespace levelbar::storage
