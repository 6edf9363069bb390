// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/plan/answered_plan.h"
#include "core/today/today_list.h"
#include "core/today/work_habit.h"
#include "storage/logbook.h"

#include <map>
#include <vector>

namespace levelbar::ui {

// What the day's lines need beside the review.
struct DayFacts {
    FactsByMember reasons;
    std::map<MemberId, Day> clearedUntil;
};

// Gathers them while the histories pass by, so that these are read once.
class DayFactsReader {
public:
    // The library must outlive the reader. Throws StoreError.
    DayFactsReader(const storage::Logbook& logbook, const Library& library, Day today);

    void add(const MemberHistory& history);
    [[nodiscard]] DayFacts finish(const Review& review);

private:
    const Library& m_library;
    Day m_today;
    DayFacts m_facts;
    std::map<MemberId, std::vector<AnsweredPlan>> m_answered;
    std::map<MemberId, std::vector<RatedSession>> m_rated;
};

} // namespace levelbar::ui
