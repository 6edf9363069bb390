// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/command.h"
#include "app/cli/json_print.h"
#include "app/cli/sides_json.h"
#include "app/cli/table.h"
#include "core/review/side_words.h"
#include "storage/case_folding.h"
#include "storage/gym_store.h"
#include "storage/history_reader.h"
#include "storage/library_store.h"
#include "storage/member_store.h"
#include "storage/side_store.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace levelbar::cli {

namespace {

constexpr int kMostQuestions = 10;
constexpr double kLikelyDiffers = 0.5; // over 5 %: else a pause is no news for the lists

std::string whole(double value)
{
    return fmt::format("{:.0f}", std::abs(std::round(value)) + 0.0);
}

std::string signedWhole(double value)
{
    const double rounded = std::round(value);
    return fmt::format("{:.0f}", rounded == 0.0 ? 0.0 : rounded);
}

// "left 12 (7 to 18)": the weaker side, by how many percent.
std::string differenceCell(const SideReview& review)
{
    const Estimate& d = review.differencePercent;
    if (!review.weaker) {
        return fmt::format("- 0 ({} to {})", signedWhole(d.low), signedWhole(d.high));
    }
    const bool isLeft = *review.weaker == Side::Left;
    return fmt::format("{} {} ({} to {})",
                       sideWord(*review.weaker),
                       whole(d.value),
                       signedWhole(isLeft ? d.low : -d.high),
                       signedWhole(isLeft ? d.high : -d.low));
}

// The reason in a few words; --member gives the sentence.
std::string whyCell(const SideReview& review)
{
    switch (review.listing.why) {
    case SideWhy::BeyondThreshold:
        return fmt::format("over {:g} %: {}",
                           review.thresholdPercent,
                           inHundred(review.probabilityBeyondThreshold));
    case SideWhy::BeyondFive:
        return "over 5 %: " + inHundred(review.probabilityBeyondFive);
    case SideWhy::Hurts:
        return "it hurt";
    case SideWhy::Jump:
        return fmt::format("new: was {} %",
                           signedWhole(review.weaker == Side::Left ? review.jump->fromPercent
                                                                   : -review.jump->fromPercent));
    case SideWhy::KnownReason:
        return review.reason ? review.reason->text : "";
    case SideWhy::Paused:
        return review.pause && !review.pause->isOwn() ? review.pause->exercise + " hurt"
                                                      : "it hurt";
    case SideWhy::OneDay:
        return "one day only";
    case SideWhy::NotSure:
        break;
    }
    return "not sure enough";
}

std::string sinceCell(const SideListing& listing)
{
    if (!listing.since) {
        return "";
    }
    return (listing.isSinceBefore ? "by " : "") + shortText(*listing.since);
}

// One list; nothing is printed when nobody is on it.
void printList(const Review& review, const char* title, bool (*belongs)(const SideReview&))
{
    struct Line {
        const Member* member;
        const SideReview* side;
    };

    std::vector<Line> lines;
    for (const MemberReview& member : review.members) {
        for (const SideReview& side : member.sides) {
            if (belongs(side)) {
                lines.push_back({&member.member, &side});
            }
        }
    }
    std::stable_sort(lines.begin(), lines.end(), [](const Line& a, const Line& b) {
        return a.side->probabilityBeyondThreshold > b.side->probabilityBeyondThreshold;
    });
    Table table({{"id", Table::Align::Left, 8},
                 {"name", Table::Align::Left, 12},
                 {"measure", Table::Align::Left, 19},
                 {"weaker by %", Table::Align::Left, 20},
                 {"why", Table::Align::Left, 22},
                 {"since", Table::Align::Left, 9}});
    for (const Line& line : lines) {
        table.add({line.member->code,
                   line.member->name,
                   line.side->measure.name,
                   differenceCell(*line.side),
                   whyCell(*line.side),
                   sinceCell(line.side->listing)});
    }
    if (!table.isEmpty()) {
        fmt::print("{}\n\n{}\n", title, table.text());
    }
}

void printQuestions(const Review& review)
{
    int asked = 0;
    for (const MemberReview& member : review.members) {
        for (const SlipQuestion& question : member.slips) {
            if (++asked == 1) {
                fmt::print("To be asked: they count for nothing until then\n\n");
            }
            if (asked <= kMostQuestions) {
                fmt::print("{}",
                           wrapped(member.member.code + "  " + sentence(phrases(question)), 0));
            }
        }
    }
    if (asked > kMostQuestions) {
        fmt::print("and {} more\n", asked - kMostQuestions);
    }
    fmt::print("{}", asked > 0 ? "\n" : "");
}

void printLists(const Review& review)
{
    fmt::print("Left and right, as of {}\n\n", isoText(review.asOf));
    printList(review, "Work on it: weaker side first", [](const SideReview& side) {
        return side.tier == SideTier::Act;
    });
    printList(review, "Check again: both sides, starting side swapped", [](const SideReview& side) {
        return side.tier == SideTier::Look;
    });
    printList(review, "Send on: not ours to train", [](const SideReview& side) {
        return side.tier == SideTier::SendOn;
    });
    printList(review, "Paused, it hurts", [](const SideReview& side) {
        return side.tier == SideTier::None && side.listing.why == SideWhy::Paused &&
               side.probabilityBeyondFive >= kLikelyDiffers;
    });
    printList(review, "Known reason, nothing new since", [](const SideReview& side) {
        return side.tier == SideTier::None && side.listing.why == SideWhy::KnownReason;
    });
    printQuestions(review);
    fmt::print("{} to check again or to work on, {:.1f} of them expected to be chance; {} of those "
               "to work on,\n{:.1f} expected to be chance. Informs a trained instructor; does not "
               "diagnose.\n",
               review.look,
               review.expectedFalseLook,
               review.act,
               review.expectedFalseAct);
}

void printMeasureOf(const SideReview& side, const std::optional<SidePlan>& plan)
{
    fmt::print("\n{} ({} {})\n", side.measure.name, side.days, side.days == 1 ? "day" : "days");
    const auto print = [](const std::vector<Phrase>& all) {
        if (!all.empty()) {
            fmt::print("{}", wrapped(sentence(all), 2));
        }
    };
    print(phrases(side));
    std::vector<Phrase> listing = listingPhrases(side);
    const bool isDated = side.tier == SideTier::Act || side.tier == SideTier::Look ||
                         side.listing.why == SideWhy::Jump;
    if (isDated) {
        const auto since = sincePhrases(side.listing);
        listing.insert(listing.end(), since.begin(), since.end());
    }
    print(listing);
    print(leavingPhrases(side));
    if (side.listing.why != SideWhy::KnownReason) {
        print(reasonPhrases(side));
    }
    print(baselinePhrases(side));
    if (plan) {
        fmt::print("{}", wrapped("Next: " + sentence(phrases(*plan)), 2));
    }
}

void printMember(const MemberReview& member, const std::vector<std::optional<SidePlan>>& plans)
{
    fmt::print("{}\n\n", cutTo(member.member.code + "  " + member.member.name, kPageWidth));
    Table table({{"measure", Table::Align::Left, 31},
                 {"weaker by %", Table::Align::Left, 20},
                 {"side", Table::Align::Left, 14},
                 {"over 5 %", Table::Align::Right, 9},
                 {"limit", Table::Align::Right, 6},
                 {"over it", Table::Align::Right, 9}});
    for (const SideReview& side : member.sides) {
        table.add({side.measure.name,
                   differenceCell(side),
                   std::string(probabilityWord(side.probabilitySide)),
                   inHundred(side.probabilityBeyondFive),
                   fmt::format("{:g} %", side.thresholdPercent),
                   inHundred(side.probabilityBeyondThreshold)});
    }
    fmt::print("{}", table.isEmpty() ? "No measure of both sides on one day.\n" : table.text());
    for (std::size_t i = 0; i < member.sides.size(); ++i) {
        printMeasureOf(member.sides[i], plans[i]);
    }
    for (const SlipQuestion& question : member.slips) {
        fmt::print("\n{}", wrapped(sentence(phrases(question)), 0));
    }
}

void printIndices(const MemberReview& member)
{
    if (member.sides.empty()) {
        return;
    }
    std::vector<Table::Column> columns = {{"", Table::Align::Left, 31}};
    constexpr std::size_t kMostMeasures = 4;
    const std::size_t count = std::min(member.sides.size(), kMostMeasures);
    for (std::size_t i = 0; i < count; ++i) {
        columns.push_back({member.sides[i].measure.name, Table::Align::Right, 14});
    }
    Table table(std::move(columns));
    for (const SideIndex& index : sideIndices()) {
        std::vector<std::string> cells = {std::string(index.name)};
        for (std::size_t i = 0; i < count; ++i) {
            const auto value = index.value(bothSidesOf(member.sides[i]));
            cells.push_back(value ? fmt::format("{:.1f}", *value) : "");
        }
        table.add(std::move(cells));
    }
    fmt::print("\nThe same in the indices of papers (signed ones: positive, the right is "
               "stronger)\n\n{}",
               table.text());
}

void printMeasure(const MeasureSteadiness& measure)
{
    fmt::print("{}\n\n", measure.measure.name);
    fmt::print("People with a pair in four months   {}, {} of them on two days or more\n",
               measure.people,
               measure.repeated);
    fmt::print("Worked on from                      {:g} %\n", measure.thresholdPercent);
    fmt::print("One day's difference lies around the person's own by {:.1f} % (standard deviation;"
               "\nnine in ten people: {:.1f} to {:.1f})\n",
               measure.daySpread,
               measure.steadiest,
               measure.unsteadiest);
    if (!measure.typicalError) {
        fmt::print("\nReliability: too few people with two days.\n");
        return;
    }
    const Estimate& error = *measure.typicalError;
    fmt::print("\nFrom everyone's last two days ({} people)\n\n", error.count);
    fmt::print("typical error            {:5.1f} %   {:.1f} to {:.1f}\n",
               error.value,
               error.low,
               error.high);
    if (measure.intraclass) {
        fmt::print("intraclass correlation   {:5.2f}     {:.2f} to {:.2f}   (3,1)\n",
                   measure.intraclass->value,
                   measure.intraclass->low,
                   measure.intraclass->high);
    }
    fmt::print("detectable change        {:5.1f} %   between two days, 95 in 100\n",
               measure.detectable.value_or(0.0));
}

int showMember(const SidesOptions& options,
               const storage::Logbook& logbook,
               const Library& library,
               const Review& review)
{
    const auto member = storage::MemberStore(logbook).find(options.member);
    const auto found =
        std::find_if(review.members.begin(), review.members.end(), [&](const MemberReview& one) {
            return member && one.member.id == member->id;
        });
    if (found == review.members.end()) {
        return atFault(options.logbook,
                       sentence(Fault{FaultCode::UnknownMember, {excerpt(options.member)}}));
    }
    const auto history = storage::historyOf(logbook, member->id, review.asOf);
    const SideRecords records = storage::SideStore(logbook).ofMember(member->id);
    const Kit kit = storage::GymStore(logbook).kit();
    std::vector<std::optional<SidePlan>> plans;
    for (const SideReview& side : found->sides) {
        const auto plan =
            planSides(SidePlanBasis{*history, library, kit, side, records, review.asOf, {}});
        plans.push_back(plan ? std::optional(*plan) : std::nullopt);
    }
    if (options.json) {
        printJson(memberSidesJson(*found, plans));
    } else {
        printMember(*found, plans);
        printIndices(*found);
    }
    return kDone;
}

int showMeasure(const SidesOptions& options, const Review& review)
{
    const std::string wanted = storage::foldCase(options.measure); // names go without case
    const auto found = std::find_if(
        review.measures.begin(), review.measures.end(), [&](const MeasureSteadiness& one) {
            return storage::foldCase(one.measure.name) == wanted;
        });
    if (found == review.measures.end()) {
        return atFault(
            options.logbook,
            fmt::format("nobody's sides were compared in '{}'", excerpt(options.measure)));
    }
    if (options.json) {
        printJson(measureJson(*found));
    } else {
        printMeasure(*found);
    }
    return kDone;
}

} // namespace

int runSides(const SidesOptions& options, const Clock& clock)
{
    const storage::Logbook logbook = openForReading(options.logbook, clock);
    const Library library = storage::LibraryStore(logbook).all();
    const Day asOf = options.on.value_or(clock.today);
    Reviewer reviewer(library, asOf, storage::SideStore(logbook).reviewSettings());
    storage::forEachHistory(logbook, asOf, [&](MemberHistory& history) { reviewer.add(history); });
    const Review review = reviewer.finish();
    if (!options.member.empty()) {
        return showMember(options, logbook, library, review);
    }
    if (!options.measure.empty()) {
        return showMeasure(options, review);
    }
    if (options.json) {
        printJson(sideListsJson(review));
    } else {
        printLists(review);
    }
    return kDone;
}

} // namespace levelbar::cli
