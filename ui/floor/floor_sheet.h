// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/exercise/done_set.h"
#include "core/exercise/effort.h"
#include "core/floor/class_floor.h"
#include "core/gym/kit.h"
#include "core/member/member.h"
#include "core/plan/class_plan.h"
#include "core/plan/class_week.h"
#include "core/plan/rack_line_up.h"
#include "core/review/history.h"
#include "core/sides/side_prescription.h"
#include "core/sides/side_records.h"
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

// What left and right mean for a cell of a single-sided exercise.
struct CellSides {
    std::optional<Side> first;        // the side that starts; nothing: not single-sided
    bool isFirst = false;             // it is this cell's
    bool isCapped = false;            // the first side's clean reps are the other one's limit
    std::optional<int> stopAt;        // that limit, once the first side is known
    bool isLessOne = false;           // the first side's last rep was not clean
    bool isOpenPair = false;          // both to one in reserve, neither capped
    bool isUncapped = false;          // the stronger side's set that goes past the limit
    bool isExtra = false;             // the set more of the weaker side
    bool isOver = false;              // pain ended the exercise for both sides
    std::optional<SideRule> notToday; // SentOn or PainEnds: nothing for either side
    // What the first set of today begins or ends.
    std::optional<SidePrescription> prescription;
};

// Neither plan nor done set: nothing is known, and nothing is said to have been missed.
struct FloorCell {
    std::optional<PlannedSet> planned;
    std::optional<DoneSet> done;
    CellSides sides;
    // What the pad made of it during the hour.
    std::optional<NotAsked> notAsked;
    bool waits = false;       // for a choice
    bool isWorthEyes = false; // to be watched and counted

    [[nodiscard]] bool isPlannedOnly() const { return planned.has_value() && !done.has_value(); }

    // Still to be done.
    [[nodiscard]] bool isOpen() const
    {
        return isPlannedOnly() && !sides.isOver && !sides.notToday && !notAsked;
    }
};

struct FloorRow {
    MemberId member;
    std::vector<FloorCell> cells; // as many as there are columns
    int bib = 0;                  // 0: none yet
    int rack = 1;
    int turn = 1; // at the rack
    bool isEasyDay = false;
};

// What the class does: its own template, or one proposed from what it did before.
struct FloorTemplate {
    std::vector<TemplateItem> items;
    bool isProposed = false;
    int meetingsSeen = 0; // how many meetings the proposal was made from
};

// Only days before `day` count for a proposal. Throws StoreError.
[[nodiscard]] FloorTemplate
templateFor(const storage::Logbook& logbook, ClassId groupClass, Day day);

// A class on a day, as the logbook has it.
struct FloorSheet {
    ClassId groupClass;
    Day day;
    std::optional<storage::Meeting> meeting; // nothing until something is written
    std::vector<storage::Attendance> attendance;
    FloorTemplate items;
    std::vector<PlanItem> plan;    // what this week makes of the template
    std::optional<ClassWeek> week; // where it is not an ordinary one
    std::vector<FloorColumn> columns;
    std::vector<FloorRow> rows; // as read by name; on the page by rack and turn
};

// What the class does on a day: its template, or what is proposed for it, with this week's changes.
// Throws StoreError.
[[nodiscard]] std::vector<PlanItem> itemsOn(const storage::Logbook& logbook,
                                            ClassId groupClass,
                                            Day day,
                                            const FloorTemplate& proposed);

// People and exercises by id: read once, read again when they change.
struct FloorReference {
    Library library;
    std::map<MemberId, Member> people; // archived ones too
    EffortScale effort = EffortScale::Reserve;
    Kit kit; // less what is gone today
    RackCompany company;
};

// The racks written down on the Gym page less what is gone on the day, at least one; nothing where
// none are written down. Throws StoreError.
[[nodiscard]] std::optional<int> writtenRacks(const storage::Logbook& logbook, Day day);

[[nodiscard]] FloorReference readReference(const storage::Logbook& logbook, Day today = {});

// Throws StoreError.
[[nodiscard]] FloorSheet readSheet(const storage::Logbook& logbook,
                                   const FloorReference& reference,
                                   ClassId groupClass,
                                   Day day);

// The sides on which an exercise is planned.
[[nodiscard]] std::vector<Side> plannedSides(const Exercise* exercise);

} // namespace levelbar::ui
