// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/ladder_row.h"

#include "storage/row_binder.h"

namespace levelbar::storage {

namespace {

// An unknown exercise becomes NULL, which the column refuses.
constexpr const char* kInsertRung = R"sql(
INSERT INTO ladder_rung (ladder, place, exercise, setting, up_amount, up_sets, up_sessions,
                         up_load_percent, down_pain, down_days_away, down_fewer_than,
                         down_sessions, source)
VALUES (?, ?, (SELECT id FROM exercise WHERE key = ?), ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
)sql";

std::int64_t headOf(SQLite::Database& database, const Ladder& ladder)
{
    SQLite::Statement upsert(database, R"sql(
INSERT INTO ladder (key, is_shipped, name, pattern) VALUES (?, ?, ?, ?)
ON CONFLICT (key, is_shipped) DO UPDATE SET name = excluded.name, pattern = excluded.pattern
)sql");
    Binder(upsert).add(ladder.key).add(ladder.isShipped).add(ladder.name).add(ladder.pattern);
    upsert.exec();
    SQLite::Statement select(database, "SELECT id FROM ladder WHERE key = ? AND is_shipped = ?");
    Binder(select).add(ladder.key).add(ladder.isShipped);
    select.executeStep();
    return select.getColumn(0).getInt64();
}

} // namespace

void writeLadder(SQLite::Database& database, const Ladder& ladder)
{
    const std::int64_t id = headOf(database, ladder);
    SQLite::Statement clear(database, "DELETE FROM ladder_rung WHERE ladder = ?");
    clear.bind(1, id);
    clear.exec();
    SQLite::Statement insert(database, kInsertRung);
    int place = 0;
    for (const Rung& rung : ladder.rungs) {
        insert.reset();
        Binder(insert)
            .add(id)
            .add(++place)
            .add(rung.exerciseKey)
            .add(rung.setting)
            .add(rung.up.amount)
            .add(rung.up.sets)
            .add(rung.up.sessions)
            .add(rung.up.loadPercent)
            .add(rung.down.pain)
            .add(rung.down.daysAway)
            .add(rung.down.fewerThan)
            .add(rung.down.sessions)
            .add(rung.source);
        insert.exec();
    }
}

} // namespace levelbar::storage
