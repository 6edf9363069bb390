// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "storage/action.h"
#include "storage/row_binder.h"
#include "storage/row_columns.h"
#include "storage/sqlite_errors.h"

#include <utility>
#include <vector>

// Short statements, values bound in order; inside storage only.
namespace levelbar::storage {

// Every row that a query finds.
template <typename Read, typename... Values>
auto rowsOf(const Logbook& logbook, const char* sql, const Read& read, const Values&... values)
{
    return translateErrors(logbook.path(), [&] {
        SQLite::Statement select(logbook.database(), sql);
        Binder binder(select);
        (binder.add(values), ...);
        std::vector<decltype(read(std::declval<Columns&>()))> rows;
        while (select.executeStep()) {
            Columns columns(select);
            rows.push_back(read(columns));
        }
        return rows;
    });
}

// The rowid of what was inserted, when something was.
template <typename... Values>
std::int64_t execute(WriteScope& scope, const char* sql, const Values&... values)
{
    return translateErrors(scope.logbook().path(), [&] {
        SQLite::Statement statement(scope.logbook().database(), sql);
        Binder binder(statement);
        (binder.add(values), ...);
        statement.exec();
        return static_cast<std::int64_t>(scope.logbook().database().getLastInsertRowid());
    });
}

} // namespace levelbar::storage
