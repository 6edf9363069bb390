// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/company_store.h"

#include "storage/row_query.h"

namespace levelbar::storage {

RackCompany CompanyStore::all() const
{
    RackCompany company;
    company.apart = rowsOf(
        m_logbook,
        "SELECT member, other FROM never_together WHERE member < other ORDER BY member, other",
        [](Columns& columns) {
            const auto one = columns.id<MemberId>();
            return std::pair(one, columns.id<MemberId>());
        });
    company.spotters = rowsOf(m_logbook,
                              "SELECT member FROM spotter ORDER BY member",
                              [](Columns& columns) { return columns.id<MemberId>(); });
    return company;
}

void CompanyStore::setApart(WriteScope& scope, MemberId one, MemberId other, bool isApart)
{
    const char* const sql =
        isApart ? "INSERT OR IGNORE INTO never_together (member, other) VALUES (?, ?)"
                : "DELETE FROM never_together WHERE member = ? AND other = ?";
    execute(scope, sql, one, other);
    execute(scope, sql, other, one);
}

void CompanyStore::setSpotter(WriteScope& scope, MemberId member, bool isSpotter)
{
    execute(scope,
            isSpotter ? "INSERT OR IGNORE INTO spotter (member) VALUES (?)"
                      : "DELETE FROM spotter WHERE member = ?",
            member);
}

} // namespace levelbar::storage
