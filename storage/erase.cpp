// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/erase.h"

#include "storage/sqlite_errors.h"

#include <SQLiteCpp/SQLiteCpp.h>

#include <array>

namespace levelbar::storage {

namespace {

// Children before parents. A test checks that no table with a member column is missing.
constexpr std::array kDeletes = {
    "DELETE FROM side_reason WHERE member = ?",
    "DELETE FROM side_prescription WHERE member = ?",
    "DELETE FROM surgery WHERE member = ?",
    "DELETE FROM done_set WHERE member = ?",
    "DELETE FROM planned_set WHERE member = ?",
    "DELETE FROM trial WHERE member = ?",
    "DELETE FROM incident WHERE member = ?",
    "DELETE FROM printed_row WHERE member = ?",
    "DELETE FROM attendance WHERE member = ?",
    "DELETE FROM class_member WHERE member = ?",
    "DELETE FROM setup_card WHERE member = ?",
    "DELETE FROM scale_reading WHERE member = ?",
    "DELETE FROM strength_goal WHERE member = ?",
    "DELETE FROM never_together WHERE member = ?1 OR other = ?1",
    "DELETE FROM spotter WHERE member = ?",
    "DELETE FROM screening WHERE member = ?",
    "DELETE FROM emergency_contact WHERE member = ?",
    "DELETE FROM consent WHERE member = ?",
    "DELETE FROM member_limit WHERE member = ?",
    "DELETE FROM settled WHERE member = ?",
    "DELETE FROM follow_up WHERE member = ?",
    "UPDATE action SET reverses = NULL WHERE reverses IN "
    "(SELECT action FROM action_member WHERE member = ?)",
    // Their changesets hold the person's values; the ids go into a temporary list first.
    "INSERT INTO temp.named_action SELECT action FROM action_member WHERE member = ?",
};

} // namespace

void eraseMember(Logbook& logbook, MemberId member)
{
    if (!logbook.canWrite()) {
        throw StoreError(StoreErrorKind::ReadOnly,
                         logbook.path().string() + " was opened for reading only.");
    }
    SQLite::Database& database = logbook.database();
    translateErrors(logbook.path(), [&] {
        database.exec("PRAGMA secure_delete = ON");
        database.exec("CREATE TEMP TABLE IF NOT EXISTS named_action (id INTEGER PRIMARY KEY)");
        {
            SQLite::Transaction transaction(database, SQLite::TransactionBehavior::IMMEDIATE);
            database.exec("DELETE FROM temp.named_action");
            for (const char* sql : kDeletes) {
                SQLite::Statement remove(database, sql);
                remove.bind(1, member.value);
                remove.exec();
            }
            database.exec("DELETE FROM action_member WHERE action IN "
                          "(SELECT id FROM temp.named_action)");
            database.exec("DELETE FROM action WHERE id IN (SELECT id FROM temp.named_action)");
            SQLite::Statement last(database, "DELETE FROM member WHERE id = ?");
            last.bind(1, member.value);
            last.exec();
            transaction.commit();
        }
        database.exec("DROP TABLE temp.named_action");
        database.exec("VACUUM");
        if (!logbook.path().empty() &&
            database.execAndGet("PRAGMA wal_checkpoint(TRUNCATE)").getInt() != 0) {
            throw StoreError(
                StoreErrorKind::Busy,
                "The person is removed, but another program still reads older pages of " +
                    logbook.path().string() + "; close it and erase again.");
        }
    });
}

} // namespace levelbar::storage
