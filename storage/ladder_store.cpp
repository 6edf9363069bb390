// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/ladder_store.h"

#include "storage/ladder_row.h"
#include "storage/row_binder.h"
#include "storage/row_columns.h"
#include "storage/sqlite_errors.h"

#include <array>

namespace levelbar::storage {

namespace {

constexpr const char* kSelectLadder = R"sql(
SELECT l.key, l.is_shipped, l.name, l.pattern, e.key, r.setting, r.up_amount, r.up_sets,
       r.up_sessions, r.up_load_percent, r.down_pain, r.down_days_away, r.down_fewer_than,
       r.down_sessions, r.source
FROM ladder l JOIN ladder_rung r ON r.ladder = l.id JOIN exercise e ON e.id = r.exercise
WHERE l.is_shipped = 0
   OR NOT EXISTS (SELECT 1 FROM ladder o WHERE o.key = l.key AND o.is_shipped = 0)
ORDER BY l.pattern, l.id, r.place
)sql";

Ladder readHead(Columns& columns)
{
    Ladder ladder;
    ladder.key = columns.text();
    ladder.isShipped = columns.flag();
    ladder.name = columns.text();
    ladder.pattern = columns.word<Pattern>();
    return ladder;
}

Rung readRung(Columns& columns)
{
    Rung rung;
    rung.exerciseKey = columns.text();
    rung.setting = columns.text();
    rung.up.amount = columns.whole();
    rung.up.sets = columns.whole();
    rung.up.sessions = columns.whole();
    rung.up.loadPercent = columns.whole();
    rung.down.pain = columns.whole();
    rung.down.daysAway = columns.whole();
    rung.down.fewerThan = columns.whole();
    rung.down.sessions = columns.whole();
    rung.source = columns.text();
    return rung;
}

} // namespace

std::vector<Ladder> LadderStore::all() const
{
    return translateErrors(m_logbook.path(), [&] {
        std::vector<Ladder> ladders;
        SQLite::Statement select(m_logbook.database(), kSelectLadder);
        while (select.executeStep()) {
            Columns columns(select);
            Ladder head = readHead(columns);
            if (ladders.empty() || ladders.back().key != head.key) {
                ladders.push_back(std::move(head));
            }
            ladders.back().rungs.push_back(readRung(columns));
        }
        return ladders;
    });
}

void LadderStore::put(WriteScope& scope, Ladder ladder)
{
    ladder.isShipped = false;
    translateErrors(scope.logbook().path(),
                    [&] { writeLadder(scope.logbook().database(), ladder); });
}

void LadderStore::removeOwn(WriteScope& scope, std::string_view key)
{
    translateErrors(scope.logbook().path(), [&] {
        constexpr std::array kDeletes = {"DELETE FROM ladder_rung WHERE ladder IN "
                                         "(SELECT id FROM ladder WHERE key = ? AND is_shipped = 0)",
                                         "DELETE FROM ladder WHERE key = ? AND is_shipped = 0"};
        for (const char* sql : kDeletes) {
            SQLite::Statement remove(scope.logbook().database(), sql);
            remove.bind(1, std::string(key));
            remove.exec();
        }
    });
}

} // namespace levelbar::storage
