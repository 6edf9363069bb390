// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/contact_store.h"

#include "storage/row_query.h"

namespace levelbar::storage {

namespace {

EmergencyContact readContact(Columns& columns)
{
    EmergencyContact contact;
    contact.name = columns.text();
    contact.relation = columns.text();
    contact.phone = columns.text();
    return contact;
}

} // namespace

std::vector<EmergencyContact> ContactStore::of(MemberId member) const
{
    return rowsOf(
        m_logbook,
        "SELECT name, relation, phone FROM emergency_contact WHERE member = ? ORDER BY rank",
        &readContact,
        member);
}

void ContactStore::set(WriteScope& scope, MemberId member, const std::vector<EmergencyContact>& all)
{
    if (ContactStore(scope.logbook()).of(member) == all) {
        return;
    }
    execute(scope, "DELETE FROM emergency_contact WHERE member = ?", member);
    int rank = 0;
    for (const EmergencyContact& contact : all) {
        execute(scope,
                "INSERT INTO emergency_contact (member, rank, name, relation, phone) "
                "VALUES (?, ?, ?, ?, ?)",
                member,
                ++rank,
                contact.name,
                contact.relation,
                contact.phone);
    }
}

} // namespace levelbar::storage
