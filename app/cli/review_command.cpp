// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/command.h"
#include "app/cli/json_print.h"
#include "app/cli/review_json.h"
#include "app/cli/table.h"
#include "core/review/wording.h"
#include "storage/history_reader.h"
#include "storage/library_store.h"
#include "storage/member_store.h"
#include "storage/side_store.h"

#include <fmt/format.h>

namespace levelbar::cli {

namespace {

Review makeReview(const storage::Logbook& logbook, const Library& library, Day asOf)
{
    Reviewer reviewer(library, asOf, storage::SideStore(logbook).reviewSettings());
    storage::forEachHistory(logbook, asOf, [&](MemberHistory& history) { reviewer.add(history); });
    return reviewer.finish();
}

std::string label(const Member& member)
{
    return member.name.empty() ? member.code : member.code + "  " + member.name;
}

void printAttention(const Review& review, const std::set<MemberId>& only)
{
    int people = 0;
    fmt::print("People to look at, as of {}\n\n", isoText(review.asOf));
    for (const MemberReview& member : review.members) {
        if (member.attention.empty() || (!only.empty() && !only.contains(member.member.id))) {
            continue;
        }
        ++people;
        fmt::print("{}\n", cutTo(label(member.member), kPageWidth));
        for (const Attention& reason : member.attention) {
            fmt::print("{}", wrapped(sentence(reason), 4));
        }
    }
    if (people == 0) {
        fmt::print("Nobody.\n");
    }
    fmt::print(
        "\nLeft and right: {} listed to check again or to work on, {:.1f} of them expected to "
        "be chance;\n{} of those to work on, {:.1f} expected to be chance.\n",
        review.look,
        review.expectedFalseLook,
        review.act,
        review.expectedFalseAct);
}

std::string trendCell(const Trend& trend)
{
    if (!trend.percentPerWeek) {
        return trend.askAgainOn ? "too early, ask " + shortText(*trend.askAgainOn) : "too early";
    }
    return fmt::format("{} {:+.1f} ({:+.1f} to {:+.1f})",
                       trendWord(trend.call),
                       trend.percentPerWeek->value,
                       trend.percentPerWeek->low,
                       trend.percentPerWeek->high);
}

std::string evidenceCell(Evidence evidence)
{
    switch (evidence) {
    case Evidence::Recent:
        return "recent";
    case Evidence::GettingOld:
        return "getting old";
    case Evidence::TooOld:
        break;
    }
    return "too old";
}

void printStrength(const Review& review, const Library& library, const std::set<MemberId>& only)
{
    Table table({{"id", Table::Align::Left, 10},
                 {"exercise", Table::Align::Left, 31},
                 {"side", Table::Align::Left, 5},
                 {"1RM kg", Table::Align::Right, 7},
                 {"range", Table::Align::Right, 9},
                 {"evidence", Table::Align::Left, 11},
                 {"% a week", Table::Align::Left, 29}});
    for (const MemberReview& member : review.members) {
        if (!only.empty() && !only.contains(member.member.id)) {
            continue;
        }
        for (const StrengthReview& row : member.strength) {
            const Estimate& max = row.strength.oneRepMax;
            table.add({member.member.code,
                       library.exercise(row.exercise)->name,
                       std::string(sideWord(row.side)),
                       roundedToDoubt(max.value, max),
                       fmt::format("{:.0f}–{:.0f}", max.low, max.high),
                       evidenceCell(row.strength.evidence),
                       trendCell(row.trend)});
        }
    }
    if (!table.isEmpty()) {
        fmt::print("\nStrength (nine times in ten within the range)\n\n{}", table.text());
    }
}

std::string tierCell(SideTier tier)
{
    switch (tier) {
    case SideTier::Look:
        return "check again";
    case SideTier::Act:
        return "work on it";
    case SideTier::SendOn:
        return "send on";
    case SideTier::None:
        break;
    }
    return "";
}

void printSides(const Review& review, const std::set<MemberId>& only)
{
    Table table({{"id", Table::Align::Left, 10},
                 {"measure", Table::Align::Left, 31},
                 {"days", Table::Align::Right, 4},
                 {"difference", Table::Align::Left, 40},
                 {"list", Table::Align::Left, 11}});
    for (const MemberReview& member : review.members) {
        if (!only.empty() && !only.contains(member.member.id)) {
            continue;
        }
        for (const SideReview& row : member.sides) {
            table.add({member.member.code,
                       row.measure.name,
                       std::to_string(row.days),
                       sentence(phrases(row)),
                       tierCell(row.tier)});
        }
    }
    if (!table.isEmpty()) {
        fmt::print("\nLeft and right\n\n{}", table.text());
    }
}

} // namespace

int runReview(const ReviewOptions& options, const Clock& clock)
{
    const storage::Logbook logbook = openForReading(options.logbook, clock);
    std::set<MemberId> only;
    for (const std::string& code : options.members) {
        const auto member = storage::MemberStore(logbook).find(code);
        if (!member) {
            return atFault(options.logbook,
                           sentence(Fault{FaultCode::UnknownMember, {excerpt(code)}}));
        }
        only.insert(member->id);
    }
    const Library library = storage::LibraryStore(logbook).all();
    const Review review = makeReview(logbook, library, options.on.value_or(clock.today));
    if (options.json) {
        printJson(reviewJson(review, library, only));
        return kDone;
    }
    printAttention(review, only);
    if (!only.empty()) {
        printStrength(review, library, only);
        printSides(review, only);
    } else {
        fmt::print(
            "\nFor one person's strength and sides: --member ID. Informs a trained instructor; "
            "does not diagnose.\n");
    }
    return kDone;
}

} // namespace levelbar::cli
