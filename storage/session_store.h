// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/timetable/timetable.h"
#include "core/today/work_habit.h"
#include "storage/action.h"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace levelbar::storage {

using SheetId = Id<struct SheetTag>; // the number printed on it

struct PrintedRow {
    MemberId member;
    int station = 1;

    friend bool operator==(const PrintedRow&, const PrintedRow&) = default;
};

// A sheet on paper: who stands on it, in which order.
struct PrintedSheet {
    SheetId id;
    MeetingId meeting;
    Moment printedAt;
    std::vector<PrintedRow> rows;

    friend bool operator==(const PrintedSheet&, const PrintedSheet&) = default;
};

// What is written down when an hour ends, and its sheets.
class SessionStore {
public:
    explicit SessionStore(const Logbook& logbook)
        : m_logbook(logbook)
    {
    }

    // How hard it was, 0 to 10, of those who said it.
    [[nodiscard]] std::map<MemberId, int> ratingsOf(MeetingId meeting) const;
    // How long it lasted; nothing while nobody said it.
    [[nodiscard]] std::optional<int> minutesOf(MeetingId meeting) const;
    // Sessions with a rating and a known length, by person, then day. The length is what was
    // written down, else that of the weekly hour of the same weekday and start.
    [[nodiscard]] std::map<MemberId, std::vector<RatedSession>>
    rated(DayRange days, std::optional<MemberId> only = std::nullopt) const;
    [[nodiscard]] std::optional<PrintedSheet> sheet(SheetId id) const;
    [[nodiscard]] std::vector<PrintedSheet> sheetsOf(MeetingId meeting) const; // newest first

    // 0 to 10; Constraint otherwise. Who is not in the meeting's list comes into it.
    static void
    setRating(WriteScope& scope, MeetingId meeting, MemberId member, std::optional<int> rating);
    // 1 to 1440; Constraint otherwise.
    static void setMinutes(WriteScope& scope, MeetingId meeting, std::optional<int> minutes);
    static SheetId add(WriteScope& scope, const PrintedSheet& sheet);

private:
    const Logbook& m_logbook;
};

} // namespace levelbar::storage
