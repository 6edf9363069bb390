// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/id.h"
#include "storage/action.h"

#include <string>
#include <vector>

namespace levelbar::storage {

// Whom to call when something happens to a person.
struct EmergencyContact {
    std::string name;     // not empty
    std::string relation; // "sister"; may be empty
    std::string phone;    // not empty

    friend bool operator==(const EmergencyContact&, const EmergencyContact&) = default;
};

class ContactStore {
public:
    static constexpr std::size_t kMostContacts = 9;

    explicit ContactStore(const Logbook& logbook)
        : m_logbook(logbook)
    {
    }

    [[nodiscard]] std::vector<EmergencyContact> of(MemberId member) const; // first to call first

    // Replaces what was there; writes nothing when it is the same. Constraint for more than
    // kMostContacts.
    static void set(WriteScope& scope, MemberId member, const std::vector<EmergencyContact>& all);

private:
    const Logbook& m_logbook;
};

} // namespace levelbar::storage
