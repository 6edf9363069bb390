// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/exercise/done_set.h"
#include "core/member/member.h"
#include "core/plan/class_plan.h"
#include "core/review/history.h"
#include "storage/class_store.h"

#include <compare>
#include <map>
#include <optional>
#include <vector>

namespace levelbar::ui {

// One cell of the class floor by what it means, so that it is found again when rows and columns
// come and go. number: the planned one, within the meeting.
struct CellKey {
    MemberId member;
    ExerciseId exercise;
    int number = 1;
    Side side = Side::Both;

    friend auto operator<=>(const CellKey&, const CellKey&) = default;
};

struct FloorColumn {
    ExerciseId exercise;
    int number = 1;
    Side side = Side::Both;

    friend bool operator==(const FloorColumn&, const FloorColumn&) = default;
};

// Neither plan nor done set: nothing is known, and nothing is said to have been missed.
struct FloorCell {
    std::optional<PlannedSet> planned;
    std::optional<DoneSet> done;

    [[nodiscard]] bool isOpen() const { return planned.has_value() && !done.has_value(); }
};

struct FloorRow {
    MemberId member;
    std::vector<FloorCell> cells; // as many as there are columns
};

// What the class does: its own template, or one proposed from what it did before.
struct FloorTemplate {
    std::vector<TemplateItem> items;
    bool isProposed = false;
    int meetingsSeen = 0; // how many meetings the proposal was made from
};

// A class on a day, as the logbook has it.
struct FloorSheet {
    ClassId groupClass;
    Day day;
    std::optional<storage::Meeting> meeting; // nothing until something is written
    std::vector<storage::Attendance> attendance;
    FloorTemplate items;
    std::vector<FloorColumn> columns;
    std::vector<FloorRow> rows; // by name
};

// People and exercises by id: read once, read again when they change.
struct FloorReference {
    Library library;
    std::map<MemberId, Member> people; // archived ones too
};

[[nodiscard]] FloorReference readReference(const storage::Logbook& logbook);

// Throws StoreError.
[[nodiscard]] FloorSheet readSheet(const storage::Logbook& logbook,
                                   const FloorReference& reference,
                                   ClassId groupClass,
                                   Day day);

// The sides on which an exercise is planned.
[[nodiscard]] std::vector<Side> plannedSides(const Exercise* exercise);

} // namespace levelbar::ui
