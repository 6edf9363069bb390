// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/report/group_summary.h"

#include "core/base/share.h"
#include "core/report/suppression.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>

namespace levelbar {

namespace {

struct Sums {
    GroupRow row;
    std::set<MemberId> people;
};

using Groups = std::map<std::string, Sums>;
using Owners = std::map<MemberId, std::string>;

void addMembers(const PeriodFacts& facts, Groups& groups)
{
    for (const MemberPeriod& member : facts.members) {
        Sums& sums = groups[member.group];
        sums.row.sets += member.sets;
        sums.row.counted += member.counted;
        sums.row.tests += member.tests;
        if (member.sets > 0 || member.tests > 0) {
            sums.people.insert(member.member);
        }
    }
}

void addMeetings(const PeriodFacts& facts, const Owners& owners, Groups& groups)
{
    for (const PeriodMeeting& meeting : facts.meetings) {
        for (const MemberId member : meeting.came) {
            Sums& sums = groups[owners.at(member)];
            sums.people.insert(member);
            ++sums.row.visits;
        }
        for (const MemberId member : meeting.missed) {
            Sums& sums = groups[owners.at(member)];
            sums.people.insert(member);
            ++sums.row.noShows;
        }
    }
}

// Whose strength was judged; who was not in the period does not count.
void addTrends(const Review& review, const Owners& owners, Groups& groups)
{
    for (const MemberReview& member : review.members) {
        const auto owner = owners.find(member.member.id);
        const StrengthReview* main = mainStrength(member);
        if (owner == owners.end() || main == nullptr || main->trend.call == TrendCall::TooEarly) {
            continue;
        }
        Sums& sums = groups[owner->second];
        if (sums.people.contains(member.member.id)) {
            ++sums.row.judged;
            sums.row.rising += main->trend.call == TrendCall::Rising ? 1 : 0;
        }
    }
}

GroupRow total(const std::vector<GroupRow>& rows)
{
    GroupRow all;
    for (const GroupRow& row : rows) {
        all.people += row.people;
        all.visits += row.visits;
        all.noShows += row.noShows;
        all.sets += row.sets;
        all.counted += row.counted;
        all.tests += row.tests;
        all.judged += row.judged;
        all.rising += row.rising;
    }
    return all;
}

void withholdShare(GroupRow& row)
{
    row.isShareWithheld = true;
    row.judged = 0;
    row.rising = 0;
}

void withhold(GroupRow& row)
{
    row = GroupRow{row.group, true};
    row.isShareWithheld = true;
}

void withholdSmall(std::vector<GroupRow>& rows, GroupRow& all)
{
    std::vector<int> people;
    std::vector<int> judged;
    for (const GroupRow& row : rows) {
        people.push_back(row.people);
        judged.push_back(row.judged);
    }
    const std::vector<bool> rowsGone = withheldGroups(people);
    const std::vector<bool> sharesGone = withheldGroups(judged, rowsGone);
    for (std::size_t i = 0; i < rows.size(); ++i) {
        if (rowsGone[i]) {
            withhold(rows[i]);
        } else if (sharesGone[i]) {
            withholdShare(rows[i]);
        }
    }
    if (all.people < kLeastGroup) {
        withhold(all);
    } else if (all.judged < kLeastGroup) {
        withholdShare(all);
    }
}

MeetingTally
tally(const PeriodFacts& facts, const Owners& owners, const std::optional<std::string>& only)
{
    const auto isAsked = [&](MemberId member) { return !only || owners.at(member) == *only; };
    MeetingTally result;
    for (const PeriodMeeting& meeting : facts.meetings) {
        const bool isTheirs = std::any_of(meeting.came.begin(), meeting.came.end(), isAsked) ||
                              std::any_of(meeting.booked.begin(), meeting.booked.end(), isAsked);
        if (only && !isTheirs) {
            continue;
        }
        if (meeting.isCancelled) {
            ++result.cancelled;
        } else if (meeting.came.empty()) {
            ++result.unknown;
        } else {
            ++result.held;
            if (meeting.capacity) {
                ++result.withPlaces;
                result.places += *meeting.capacity;
                result.came += static_cast<int>(meeting.came.size());
            }
        }
    }
    return result;
}

// A cell of CSV. What a spreadsheet would take for a formula gets a quote in front.
std::string cell(const std::string& text)
{
    const bool isFormula = !text.empty() && std::string("=+-@").find(text[0]) != std::string::npos;
    std::string quoted = isFormula ? "\"'" : "\"";
    for (const char c : text) {
        quoted += c == '"' ? "\"\"" : std::string(1, c);
    }
    return quoted + "\"";
}

std::string line(const GroupSummary& summary, const GroupRow& row, const std::string& name)
{
    std::string text =
        fmt::format("{},{},{}", isoText(summary.from), isoText(summary.to), cell(name));
    if (row.isWithheld) {
        return text + ",yes,,,,,,,,,,\r\n";
    }
    text += fmt::format(",no,{},{},{},{},{},{}",
                        row.people,
                        row.visits,
                        row.noShows,
                        row.sets,
                        row.counted,
                        row.tests);
    const auto share = risingShare(row);
    if (!share) {
        return text + ",,,,\r\n";
    }
    return text +
           fmt::format(",{},{},{:.3f},{:.3f}\r\n", row.judged, row.rising, share->low, share->high);
}

} // namespace

std::optional<Estimate> risingShare(const GroupRow& row)
{
    return row.isShareWithheld ? std::nullopt : shareOf(row.rising, row.judged);
}

GroupSummary
groupSummary(const PeriodFacts& facts, const Review& review, const std::optional<std::string>& only)
{
    Owners owners;
    for (const MemberPeriod& member : facts.members) {
        owners[member.member] = member.group;
    }
    Groups groups;
    addMembers(facts, groups);
    addMeetings(facts, owners, groups);
    addTrends(review, owners, groups);
    std::vector<GroupRow> rows;
    for (auto& [name, sums] : groups) {
        sums.row.group = name;
        sums.row.people = static_cast<int>(sums.people.size());
        if (sums.row.people > 0) {
            rows.push_back(sums.row);
        }
    }
    GroupSummary summary{facts.from, facts.to, only, {}, total(rows), {}};
    withholdSmall(rows, summary.all);
    if (!only) {
        summary.meetings = tally(facts, owners, only);
        summary.groups = std::move(rows);
        return summary;
    }
    const auto found = std::find_if(
        rows.begin(), rows.end(), [&](const GroupRow& row) { return row.group == *only; });
    summary.all = found == rows.end() ? GroupRow{*only, true} : *found;
    if (!summary.all.isWithheld) {
        summary.meetings = tally(facts, owners, only);
    }
    return summary;
}

std::string summaryCsv(const GroupSummary& summary)
{
    std::string text = "from,to,group,withheld,people,visits,no_shows,sets,counted_sets,tests,"
                       "judged,rising,rising_share_low,rising_share_high\r\n";
    text += line(summary, summary.all, summary.only.value_or("(everyone)"));
    for (const GroupRow& row : summary.groups) {
        text += line(summary, row, row.group.empty() ? "(no group)" : row.group);
    }
    return text;
}

} // namespace levelbar
