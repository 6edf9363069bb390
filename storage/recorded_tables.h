// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <string_view>

namespace levelbar::storage {

// The kinds of rows that a change can touch: see Change.
enum class TableKind { Sets, Trials, Roster, Classes, Library };

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
};

// Tables that are never recorded: the history of actions itself, and imports.
inline constexpr std::array kUnrecordedTables = {
    std::string_view("action"), std::string_view("action_member"), std::string_view("import")};

} // namespace levelbar::storage
