// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/plan/meeting_plan.h"
#include "core/timetable/timetable.h"
#include "storage/logbook.h"
#include "ui/plan/sheet_pages.h"

#include <map>
#include <memory>
#include <optional>
#include <vector>

namespace levelbar::ui {

// What a class does and for whom, as the logbook has it.
struct ClassPlan {
    ClassId groupClass;
    Library library;
    Kit kit;
    std::vector<PlanItem> usual; // the template, or what is proposed for it
    int proposedFrom = 0;        // so many meetings; 0: it is the class's own
    std::vector<PlanBlock> blocks;
    std::vector<ClassWeek> weeks;
    std::optional<TimetabledMeeting> next; // nothing in the timetable for eight weeks: nothing
    std::vector<MemberHistory> people;     // of the next meeting, by code
    std::map<std::pair<MemberId, ExerciseId>, RackSetting> settings;
    RackCompany company;
    int racks = 4; // on that day: see racksOn
};

inline constexpr int kPlanWeeks = 8;

// Those written down on the Gym page less what is gone on the day, at least one; where none are
// written down, four (assumed).
[[nodiscard]] int racksOn(const storage::Logbook& logbook, Day day);

// Throws StoreError.
[[nodiscard]] ClassPlan
readClassPlan(const storage::Logbook& logbook, ClassId groupClass, Day today);

// The plan of the next meeting, or of today when there is none. Without the proof of its rack
// sharing it takes a fraction of the time.
[[nodiscard]] MeetingPlanAnswer
planNext(const ClassPlan& plan, int racks, Day today, bool isProofWanted = true);

// Rack by rack in the order of turns in the first exercise with a bar; whoever is at no rack comes
// last. Numbers of rows go down the whole sheet.
[[nodiscard]] MeetingSheet
sheetOf(const ClassPlan& plan, const MeetingPlanAnswer& answer, const QString& className);

// Who stands on the sheet, in its order, with the rack (the one after the last: no rack).
[[nodiscard]] std::vector<std::pair<MemberId, int>> sheetOrder(const ClassPlan& plan,
                                                               const MeetingPlanAnswer& answer);

[[nodiscard]] QString exerciseName(const Library& library, ExerciseId exercise);
[[nodiscard]] QString personName(const Member& member);
[[nodiscard]] QString aimText(const PlannedTarget& target, const PlanItem& item);

} // namespace levelbar::ui
