// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/day.h"
#include "core/base/estimate.h"
#include "core/base/id.h"
#include "core/review/review.h"

#include <optional>
#include <string>
#include <vector>

namespace levelbar {

// One meeting of a class in the period. Who logged a set there came, whatever else is noted.
struct PeriodMeeting {
    bool isCancelled = false;
    std::optional<int> capacity; // places
    std::vector<MemberId> came;
    std::vector<MemberId> booked;
    std::vector<MemberId> missed; // booked, and known not to have come
};

// What one person did in the period.
struct MemberPeriod {
    MemberId member;
    std::string group; // empty: none
    int sets = 0;
    int counted = 0; // of the sets
    int tests = 0;   // person, test and day once, whatever the trials and sides
};

// What the store says of a period; `from` and `to` belong to it.
struct PeriodFacts {
    Day from;
    Day to;
    std::vector<PeriodMeeting> meetings;
    std::vector<MemberPeriod> members;
};

// Sums over a group, or over everyone. No names, nobody's number alone.
struct GroupRow {
    std::string group;
    bool isWithheld = false; // too few people, here or elsewhere; all below is 0 then
    int people = 0;          // with a set, a test or a meeting in the period, missed ones too
    int visits = 0;
    int noShows = 0;
    int sets = 0;
    int counted = 0;
    int tests = 0;
    bool isShareWithheld = false; // too few judged; what is below is 0 then
    int judged = 0;               // with enough days to call a trend at the period's end
    int rising = 0;               // of the judged

    friend bool operator==(const GroupRow&, const GroupRow&) = default;
};

struct MeetingTally {
    int held = 0; // somebody came
    int cancelled = 0;
    int unknown = 0;    // neither cancelled nor anybody noted
    int withPlaces = 0; // held ones whose places are known
    int places = 0;     // of those
    int came = 0;       // to those
};

struct GroupSummary {
    Day from;
    Day to;
    std::optional<std::string> only; // the group asked for; nothing: everyone
    MeetingTally meetings;           // of `only`: those to which somebody of it came or was booked
    GroupRow all;                    // of `only`: that group's row
    std::vector<GroupRow> groups;    // by name; of `only`: none
};

// The manager's summary. `review` is of the period's last day: the trend of a person's main
// strength is read off it. Small groups are withheld as withheldGroups() says, on the whole
// roster also when one group is asked for, so that no two summaries give one away.
[[nodiscard]] GroupSummary groupSummary(const PeriodFacts& facts,
                                        const Review& review,
                                        const std::optional<std::string>& only = std::nullopt);

// The share of the judged whose strength rises, 0 to 1; nothing when it is withheld.
[[nodiscard]] std::optional<Estimate> risingShare(const GroupRow& row);

// RFC 4180, UTF-8, one line a row, everyone first; empty cells where something is withheld.
[[nodiscard]] std::string summaryCsv(const GroupSummary& summary);

} // namespace levelbar
