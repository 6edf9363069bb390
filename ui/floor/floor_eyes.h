// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/floor/class_floor.h"
#include "core/strength/strength_filter.h"
#include "storage/logbook.h"
#include "ui/floor/floor_sheet.h"

#include <map>
#include <optional>
#include <set>

namespace levelbar::ui {

// What somebody did up to the day before, as far as it says which sets are worth watching.
struct EyesHistory {
    std::map<ExerciseId, StrengthFit> fits;
    std::map<ExerciseId, Mass> heaviest;
    int days = 0;
    std::optional<Day> lastDay;
    bool hadPain = false; // on the last day
};

// Which sets of the coming round are worth the instructor's eyes. What people did before is read
// once a person and day.
class FloorEyes {
public:
    // Throws StoreError.
    [[nodiscard]] std::set<CellKey> pick(const storage::Logbook& logbook,
                                         const FloorReference& reference,
                                         const ClassFloor& hour,
                                         Day day);

private:
    const EyesHistory&
    historyOf(const storage::Logbook& logbook, const Library& library, MemberId member, Day day);

    std::map<std::pair<MemberId, Day>, EyesHistory> m_known;
};

} // namespace levelbar::ui
