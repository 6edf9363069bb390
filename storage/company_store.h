// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/plan/rack_line_up.h"
#include "storage/action.h"

namespace levelbar::storage {

// Who must not share a rack, and who can spot for others.
class CompanyStore {
public:
    explicit CompanyStore(const Logbook& logbook)
        : m_logbook(logbook)
    {
    }

    // Each pair once, the smaller id first; all by id.
    [[nodiscard]] RackCompany all() const;

    // Two different people.
    static void setApart(WriteScope& scope, MemberId one, MemberId other, bool isApart);
    static void setSpotter(WriteScope& scope, MemberId member, bool isSpotter);

private:
    const Logbook& m_logbook;
};

} // namespace levelbar::storage
