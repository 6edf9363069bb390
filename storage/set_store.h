// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/exercise/done_set.h"
#include "core/plan/class_plan.h"
#include "storage/action.h"

#include <optional>
#include <vector>

namespace levelbar::storage {

// Identity of a done set.
struct SetKey {
    MemberId member;
    ExerciseId exercise;
    Side side = Side::Both;
    Day day;
    int number = 1;

    friend auto operator<=>(const SetKey&, const SetKey&) = default;
};

[[nodiscard]] SetKey keyOf(const DoneSet& set);

// Done and planned sets.
class SetStore {
public:
    explicit SetStore(const Logbook& logbook)
        : m_logbook(logbook)
    {
    }

    [[nodiscard]] std::optional<DoneSet> find(const SetKey& key) const;
    // Newest day first, within a day by order, exercise, side, number.
    [[nodiscard]] std::vector<DoneSet> ofMember(MemberId member) const;
    [[nodiscard]] std::vector<DoneSet> ofMeeting(MeetingId meeting) const;
    [[nodiscard]] std::vector<PlannedSet> plannedOf(MeetingId meeting) const;
    // The number that the next set of that day, exercise and side takes (1 for the first).
    [[nodiscard]] int nextNumber(MemberId member, ExerciseId exercise, Side side, Day day) const;
    // The place that the member's next set of the day takes (1 for the first).
    [[nodiscard]] int nextOrder(MemberId member, Day day) const;

    // Constraint when the key is taken.
    static void add(WriteScope& scope, const DoneSet& set);
    // Replaces the set of the same key; Constraint when there is none.
    static void update(WriteScope& scope, const DoneSet& set);
    static void remove(WriteScope& scope, const SetKey& key);
    static PlannedSetId plan(WriteScope& scope, const PlannedSet& planned);
    // Load, amount and reserve of a planned set.
    static void updatePlanned(WriteScope& scope, const PlannedSet& planned);
    static void removePlanned(WriteScope& scope, PlannedSetId planned);

private:
    const Logbook& m_logbook;
};

} // namespace levelbar::storage
