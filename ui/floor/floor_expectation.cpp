// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/floor/floor_expectation.h"

#include "core/plan/prediction.h"
#include "storage/history_reader.h"

#include <algorithm>

namespace levelbar::ui {

void expectReps(std::span<PlannedSet> sets,
                const storage::Logbook& logbook,
                const Library& library,
                Day day,
                Moment now)
{
    std::stable_sort(sets.begin(), sets.end(), [](const PlannedSet& a, const PlannedSet& b) {
        return a.member < b.member;
    });
    while (!sets.empty()) {
        const MemberId member = sets.front().member;
        const auto end = std::find_if(sets.begin(), sets.end(), [member](const PlannedSet& set) {
            return set.member != member;
        });
        const auto count = static_cast<std::size_t>(end - sets.begin());
        if (const auto history = storage::historyOf(logbook, member, day)) {
            predict(sets.first(count), *history, library, day, now);
        }
        sets = sets.subspan(count);
    }
}

} // namespace levelbar::ui
