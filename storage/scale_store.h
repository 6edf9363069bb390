// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/bodyweight/push_up_review.h"
#include "storage/action.h"

#include <vector>

namespace levelbar::storage {

// Readings of a bathroom scale under a person's hands, on the floor or on a bar's height.
class ScaleStore {
public:
    explicit ScaleStore(const Logbook& logbook)
        : m_logbook(logbook)
    {
    }

    // By day, then height.
    [[nodiscard]] std::vector<DatedReading> ofMember(MemberId member) const;

    // Adds a reading, or replaces the one of the same day and height. Only of push-ups on the
    // floor and with hands raised, without added mass.
    static void put(WriteScope& scope, MemberId member, const DatedReading& reading);
    static void remove(WriteScope& scope, MemberId member, Day day, Length hands);

private:
    const Logbook& m_logbook;
};

} // namespace levelbar::storage
