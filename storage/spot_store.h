// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/floor/class_floor.h"
#include "storage/action.h"

#include <map>
#include <vector>

namespace levelbar::storage {

// Where somebody stands in an hour, and what was said of them there.
struct FloorSpot {
    RememberedPerson said;
    int bib = 1;  // 1 to 999
    int rack = 1; // 1 to 99
    int turn = 1; // 1 to 999

    friend bool operator==(const FloorSpot&, const FloorSpot&) = default;
};

// The places of an hour: what the floor comes back to after an interruption.
class SpotStore {
public:
    explicit SpotStore(const Logbook& logbook)
        : m_logbook(logbook)
    {
    }

    // Of those who were placed, by person.
    [[nodiscard]] std::vector<FloorSpot> ofMeeting(MeetingId meeting) const;

    // Who left early the last time they came before that day, and why.
    [[nodiscard]] std::map<MemberId, LeftWhy> leftLastTime(Day before) const;

    // Who is not in the meeting's list comes into it. Constraint for numbers outside the above.
    static void put(WriteScope& scope, MeetingId meeting, const FloorSpot& spot);

private:
    const Logbook& m_logbook;
};

} // namespace levelbar::storage
