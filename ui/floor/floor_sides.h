// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/plan/person_plan.h"
#include "ui/background_review.h"
#include "ui/floor/floor_sheet.h"

#include <map>
#include <optional>
#include <utility>

namespace levelbar::ui {

// How each person trains left and right today: which side starts, whether its reps are the other
// side's limit, whether both go to one in reserve. Decided once a class and day, so that what is
// logged now does not turn it round in the middle of the class.
class FloorSides {
public:
    // The newest review. The one that a class began with stays until another class or day.
    // True when this class had none yet.
    bool setRoster(const ReviewedRosterPointer& roster);

    // Tells every cell of a single-sided exercise what left and right mean for it. Throws
    // StoreError.
    void lay(const storage::Logbook& logbook, const FloorReference& reference, FloorSheet& sheet);

    // How somebody's differences are trained today, in the exercises of the sheet's plan. Throws
    // StoreError.
    [[nodiscard]] SidePlans plansOf(const storage::Logbook& logbook,
                                    const FloorReference& reference,
                                    const FloorSheet& sheet,
                                    MemberId member);

private:
    struct Decided {
        SidePlan plan;
        std::optional<SidePrescription> prescription; // begins or ends with today's first set
    };

    using Key = std::pair<MemberId, ExerciseId>;

    static void tellCell(FloorCell* cell, const Decided& decided, bool isOver);

    // Another class or day begins with the newest review.
    void begin(const FloorSheet& sheet);
    const Decided& decide(const storage::Logbook& logbook, const FloorSheet& sheet, Key key);
    // With the review at hand: on a list, or trained already.
    [[nodiscard]] SidePlan planListed(const storage::Logbook& logbook,
                                      const FloorSheet& sheet,
                                      Key key,
                                      const SideReview& review,
                                      const SideRecords& records) const;
    [[nodiscard]] const SideReview* reviewOf(Key key) const;

    ReviewedRosterPointer m_newest;
    ReviewedRosterPointer m_roster; // what this class and day go by
    std::optional<std::pair<ClassId, Day>> m_meeting;
    std::map<Key, Decided> m_decided;
};

// Which side began on the last day before `day` that both were done; nothing when that is not
// known. `done`: a person's sets, any order.
[[nodiscard]] std::optional<Side>
lastFirstSide(const std::vector<DoneSet>& done, ExerciseId exercise, Day day);

} // namespace levelbar::ui
