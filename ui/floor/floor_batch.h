// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/id.h"
#include "core/exercise/done_set.h"
#include "core/plan/class_plan.h"
#include "core/sides/side_records.h"
#include "core/today/follow_up.h"
#include "storage/spot_store.h"

#include <optional>
#include <vector>

namespace levelbar::ui {

// A set that is new. What was performed is as keyed; its number and order are given on storing.
struct NewSet {
    PlannedSet planned;
    DoneSet done;
    std::optional<PlannedSet> sameLoad; // the other side's open set, which takes the load over
    std::optional<SidePrescription> prescription;
};

// Somebody new, whom no name is written of: see addNewcomer.
struct NewcomerPlan {
    MeetingId meeting;
    storage::FloorSpot spot;      // whose person is not stored yet
    std::vector<PlannedSet> sets; // likewise
};

// What one entry of the pad changes in the logbook: one action.
struct FloorBatch {
    std::vector<NewSet> added;
    std::vector<DoneSet> corrected;
    std::vector<PlannedSet> replanned; // each takes the place of the one with its id
    std::optional<MeetingId> saidIn;   // something was said of a person of this hour
    std::optional<NewcomerPlan> newcomer;
    std::vector<FollowUp> followUps; // pain that no set could be written beside

    [[nodiscard]] bool isEmpty() const
    {
        return added.empty() && corrected.empty() && replanned.empty() && !saidIn && !newcomer &&
               followUps.empty();
    }
};

} // namespace levelbar::ui
