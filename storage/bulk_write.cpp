// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/bulk_write.h"

#include "storage/row_binder.h"
#include "storage/sqlite_errors.h"

#include <array>

namespace levelbar::storage {

namespace {

// Two million sets touch every page of the index of meetings again and again: with 64 MiB those
// pages stay in memory, instead of SQLite's ordinary 2 MB.
class Cache {
public:
    explicit Cache(SQLite::Database& database)
        : m_database(database)
    {
        m_database.exec("PRAGMA cache_size = -65536");
    }

    Cache(const Cache&) = delete;
    Cache& operator=(const Cache&) = delete;

    ~Cache() { static_cast<void>(m_database.tryExec("PRAGMA cache_size = -2000")); }

private:
    SQLite::Database& m_database;
};

} // namespace

struct BulkWrite::Transaction {
    explicit Transaction(SQLite::Database& database)
        : cache(database)
        , transaction(database, SQLite::TransactionBehavior::IMMEDIATE)
    {
    }

    Cache cache; // goes last
    SQLite::Transaction transaction;
    ImportId import;
};

BulkWrite::BulkWrite(Logbook& logbook, const std::string& source, Moment now)
    : WriteScope(logbook)
{
    if (!logbook.canWrite()) {
        throw StoreError(StoreErrorKind::ReadOnly,
                         logbook.path().string() + " was opened for reading only.");
    }
    translateErrors(logbook.path(), [&] {
        m_transaction = std::make_unique<Transaction>(logbook.database());
        SQLite::Statement insert(logbook.database(),
                                 "INSERT INTO import (at, source) VALUES (?, ?)");
        Binder(insert).add(now).add(source);
        insert.exec();
        m_transaction->import = ImportId{logbook.database().getLastInsertRowid()};
    });
}

BulkWrite::~BulkWrite() = default;

std::optional<ImportId> BulkWrite::import() const
{
    return m_transaction->import;
}

void BulkWrite::commit()
{
    translateErrors(logbook().path(), [&] { m_transaction->transaction.commit(); });
}

int takeBackImport(Logbook& logbook, ImportId import, Moment now)
{
    BulkWrite scope(logbook, "taking back import " + std::to_string(import.value), now);
    const int removed = translateErrors(logbook.path(), [&] {
        SQLite::Database& database = logbook.database();
        // Children first. A parent that something else has come to lean on stays.
        constexpr std::array kDeletes = {
            "DELETE FROM done_set WHERE import = ?",
            "DELETE FROM trial WHERE import = ?",
            "DELETE FROM attendance WHERE import = ?",
            "DELETE FROM meeting WHERE import = ? AND id NOT IN (SELECT meeting FROM done_set "
            "WHERE "
            "meeting IS NOT NULL) AND id NOT IN (SELECT meeting FROM attendance) AND id NOT IN "
            "(SELECT meeting FROM planned_set) AND id NOT IN (SELECT meeting FROM guest)",
            "DELETE FROM class_member WHERE import = ?",
            "DELETE FROM class WHERE import = ? AND id NOT IN (SELECT class FROM meeting) AND id "
            "NOT "
            "IN (SELECT class FROM class_member) AND id NOT IN (SELECT class FROM class_template) "
            "AND id NOT IN (SELECT class FROM class_slot)",
            "DELETE FROM test_kind WHERE import = ? AND id NOT IN (SELECT test FROM trial)",
            "DELETE FROM exercise WHERE import = ? AND id NOT IN (SELECT exercise FROM done_set) "
            "AND "
            "id NOT IN (SELECT exercise FROM planned_set) AND id NOT IN (SELECT exercise FROM "
            "class_template) AND id NOT IN (SELECT maximum_of FROM test_kind WHERE maximum_of IS "
            "NOT "
            "NULL) AND id NOT IN (SELECT exercise FROM setup_card)",
            "DELETE FROM member WHERE import = ? AND id NOT IN (SELECT member FROM done_set) AND "
            "id "
            "NOT IN (SELECT member FROM trial) AND id NOT IN (SELECT member FROM attendance) AND "
            "id "
            "NOT IN (SELECT member FROM planned_set) AND id NOT IN (SELECT member FROM "
            "class_member) "
            "AND id NOT IN (SELECT member FROM member_limit) AND id NOT IN (SELECT member FROM "
            "consent) AND id NOT IN (SELECT member FROM screening) AND id NOT IN (SELECT member "
            "FROM "
            "emergency_contact) AND id NOT IN (SELECT member FROM setup_card)",
        };
        int count = 0;
        for (const char* sql : kDeletes) {
            SQLite::Statement remove(database, sql);
            remove.bind(1, import.value);
            count += remove.exec();
        }
        return count;
    });
    scope.commit();
    return removed;
}

} // namespace levelbar::storage
