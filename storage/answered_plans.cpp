// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/answered_plans.h"

#include "storage/done_set_row.h"
#include "storage/planned_set_row.h"
#include "storage/sqlite_errors.h"

#include <string>

namespace levelbar::storage {

namespace {

// "a, b" becomes "p.a, p.b".
std::string ofTable(std::string columns, const std::string& table)
{
    for (std::size_t at = 0; at != std::string::npos; at = columns.find(", ", at + 2)) {
        columns.insert(at == 0 ? 0 : at + 2, table + ".");
    }
    return columns;
}

} // namespace

std::vector<AnsweredPlan> answeredPlans(const Logbook& logbook, Day first, Day last)
{
    return translateErrors(logbook.path(), [&] {
        // The few planned sets first, then the index over done_set.planned.
        SQLite::Statement select(
            logbook.database(),
            "SELECT " + ofTable(kPlannedSetColumns, "p") + ", " + ofTable(kDoneSetColumns, "d") +
                " FROM planned_set p CROSS JOIN done_set d ON d.planned = p.id "
                "WHERE d.day BETWEEN ? AND ? "
                "ORDER BY d.member, d.day, d.exercise, d.side, d.number");
        select.bind(1, first.sinceEpoch);
        select.bind(2, last.sinceEpoch);
        std::vector<AnsweredPlan> pairs;
        while (select.executeStep()) {
            pairs.push_back(
                {readPlannedSet(select), readDoneSet(select, kPlannedSetColumnCount).performed});
        }
        return pairs;
    });
}

} // namespace levelbar::storage
