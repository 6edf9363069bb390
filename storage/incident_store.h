// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/day.h"
#include "core/base/id.h"
#include "storage/action.h"

#include <optional>
#include <string>
#include <vector>

namespace levelbar::storage {

using IncidentId = Id<struct IncidentTag>;
using GuestId = Id<struct GuestTag>;

// What happened to whom: a person, a guest, or somebody who is in no list (`who`).
struct Incident {
    IncidentId id;
    Day day;
    std::optional<TimeOfDay> at;
    std::optional<MemberId> member;
    std::optional<GuestId> guest; // not together with a member
    std::string who;
    std::optional<MeetingId> meeting;
    std::string what; // 1 to 10,000 characters
    std::string firstAid;
    std::string witness;
    std::string followUp;
    Moment writtenAt;
    std::string writtenBy; // initials

    friend bool operator==(const Incident&, const Incident&) = default;
};

// What the emergency card says besides a person's contacts.
struct EmergencyCard {
    std::string address;       // to be read out on the telephone
    std::string defibrillator; // where it hangs
    std::string caller;        // who calls

    friend bool operator==(const EmergencyCard&, const EmergencyCard&) = default;
};

class IncidentStore {
public:
    explicit IncidentStore(const Logbook& logbook)
        : m_logbook(logbook)
    {
    }

    [[nodiscard]] std::vector<Incident> all() const; // newest first
    [[nodiscard]] std::vector<Incident> ofMember(MemberId member) const;
    [[nodiscard]] EmergencyCard emergencyCard() const; // empty until written

    // Constraint when nothing is said of what happened.
    static IncidentId add(WriteScope& scope, const Incident& incident);
    static void update(WriteScope& scope, const Incident& incident);
    static void setEmergencyCard(WriteScope& scope, const EmergencyCard& card);

private:
    const Logbook& m_logbook;
};

} // namespace levelbar::storage
