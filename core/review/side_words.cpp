// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/review/side_words.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string>

namespace levelbar {

namespace {

std::string whole(double value)
{
    const double rounded = std::round(value);
    return fmt::format("{:.0f}", rounded == 0.0 ? 0.0 : rounded); // never "-0"
}

std::string shortNumber(double value)
{
    return fmt::format("{:g}", std::round(10.0 * value) / 10.0);
}

// "12 % left": a difference in percent with the weaker side named.
Phrase jumpPhrase(const SideJump& jump)
{
    const bool isLeft = jump.toPercent > 0.0;
    const double before = isLeft ? jump.fromPercent : -jump.fromPercent;
    return {isLeft ? "New in four weeks: left weaker by %1 %, where %2 % was usual."
                   : "New in four weeks: right weaker by %1 %, where %2 % was usual.",
            {whole(std::abs(jump.toPercent)), whole(before)}};
}

Phrase pausePhrase(const PainDay& pain)
{
    const Day again = pain.day + kPauseDays + 1;
    if (pain.isOwn()) {
        return {"Paused: it hurt on %1. Judged again from %2.",
                {shortText(pain.day), shortText(again)}};
    }
    return {"Paused: %1 hurt on %2 (%3). Judged again from %4.",
            {pain.exercise, shortText(pain.day), pain.area, shortText(again)}};
}

// Why a list was left, in words that stand after its name.
std::string_view leftBecause(const SideLeaving& left)
{
    switch (left.why) {
    case SideWhy::Paused:
        return "pain";
    case SideWhy::KnownReason:
        return "a known reason";
    case SideWhy::OneDay:
        return "measured on one day only in four months";
    case SideWhy::NotSure:
    case SideWhy::BeyondFive:
    case SideWhy::BeyondThreshold:
    case SideWhy::Hurts:
    case SideWhy::Jump:
        break;
    }
    return left.from == SideTier::SendOn ? "nothing new or painful in four weeks"
                                         : "not sure enough now";
}

std::string_view leftFrom(SideTier tier)
{
    switch (tier) {
    case SideTier::Act:
        return "Off the list to work on since %1: %2.";
    case SideTier::SendOn:
        return "Off the list to send on since %1: %2.";
    case SideTier::Look:
    case SideTier::None:
        break;
    }
    return "Off the list to check again since %1: %2.";
}

Phrase rulePhrase(SideRule rule, const SidePlan& plan)
{
    const bool isLeft = plan.first == Side::Left;
    switch (rule) {
    case SideRule::SentOn:
        return {"Send on: not ours to train. Neither side until then.", {}};
    case SideRule::PainEnds:
        return {"It hurt last time: neither side.", {}};
    case SideRule::NotListed:
        return {"No reason to train the sides differently: equal sets.", {}};
    case SideRule::NeverForThis:
        return {"Shown, never trained for.", {}};
    case SideRule::Paused:
        return {"No verdict while the area hurts: equal sets, if it is trained at all.", {}};
    case SideRule::Closed:
        return {"Probably under 5 % in two open pairs running: back to equal sets.", {}};
    case SideRule::UsualDifference:
        return {"Twelve weeks unchanged: this person's usual difference. Back to equal sets.", {}};
    case SideRule::Rests:
        return {"Trained for a time and ended: equal sets for twelve weeks.", {}};
    case SideRule::OpenPair:
        return {isLeft ? "Open pair due: left first, both sides to one in reserve, nobody capped; "
                         "rest %1 to %2 minutes between them."
                       : "Open pair due: right first, both sides to one in reserve, nobody "
                         "capped; rest %1 to %2 minutes between them.",
                {std::to_string(plan.leastRestSeconds / 60),
                 std::to_string(plan.mostRestSeconds / 60)}};
    case SideRule::WeakerFirst:
        return {isLeft ? "Left first; its clean reps are the right side's limit."
                       : "Right first; its clean reps are the left side's limit.",
                {}};
    case SideRule::ExtraSet:
        return {"One more set for the weaker side.", {}};
    case SideRule::ExtraSetTooMuch:
        return {"No extra set: it would be more than three to two.", {}};
    case SideRule::ExtraSetOver:
        return {"The extra set's eight weeks are over.", {}};
    case SideRule::UncappedSet:
        return {"The stronger side has four in reserve for weeks: its last set goes past the limit "
                "once this week.",
                {}};
    case SideRule::RepsFirst:
        return {"The next load is more than a tenth up: more reps before more load.", {}};
    case SideRule::NoLoad:
        break;
    }
    return {"No load that exists is light enough for the weaker side.", {}};
}

} // namespace

std::string inHundred(double probability)
{
    return fmt::format("{:.0f} in 100", std::clamp(std::round(100.0 * probability), 1.0, 99.0));
}

std::vector<Phrase> listingPhrases(const SideReview& review)
{
    switch (review.listing.why) {
    case SideWhy::OneDay:
        return {{"Measured on one day in four months: never listed on that.", {}}};
    case SideWhy::NotSure:
        return {{"Over %1 % with %2, over 5 % with %3: on no list.",
                 {shortNumber(review.thresholdPercent),
                  inHundred(review.probabilityBeyondThreshold),
                  inHundred(review.probabilityBeyondFive)}}};
    case SideWhy::BeyondFive:
        return {{"Over 5 % with %1.", {inHundred(review.probabilityBeyondFive)}}};
    case SideWhy::BeyondThreshold:
        return {
            {"Over %1 % with %2.",
             {shortNumber(review.thresholdPercent), inHundred(review.probabilityBeyondThreshold)}}};
    case SideWhy::Hurts:
        return {{"It hurt on %1, with a clear side.",
                 {review.listing.since ? shortText(*review.listing.since) : std::string()}}};
    case SideWhy::Jump:
        return {jumpPhrase(review.jump.value_or(SideJump{}))};
    case SideWhy::KnownReason:
        return reasonPhrases(review);
    case SideWhy::Paused:
        break;
    }
    return {pausePhrase(review.pause.value_or(PainDay{}))};
}

std::vector<Phrase> sincePhrases(const SideListing& listing)
{
    if (!listing.since) {
        return {};
    }
    return {
        {listing.isSinceBefore ? "Since %1 or before." : "Since %1.", {shortText(*listing.since)}}};
}

std::vector<Phrase> leavingPhrases(const SideReview& review)
{
    if (!review.left) {
        return {};
    }
    return {{leftFrom(review.left->from),
             {shortText(review.left->day), std::string(leftBecause(*review.left))}}};
}

std::vector<Phrase> reasonPhrases(const SideReview& review)
{
    if (!review.reason) {
        return {};
    }
    std::vector<Phrase> all = {
        {"Known since %1: %2.", {shortText(review.reason->since), review.reason->text}}};
    if (review.news) {
        const std::vector<std::string> day = {shortText(review.news->day)};
        switch (review.news->what) {
        case SideNews::Pain:
            all.push_back({"New since: it hurt on %1.", day});
            break;
        case SideNews::Jump:
            all.push_back({"New since: a jump on %1.", day});
            break;
        case SideNews::Larger:
            all.push_back({"New since: at least 5 points larger, seen on %1.", day});
            break;
        }
    }
    return all;
}

std::vector<Phrase> baselinePhrases(const SideReview& review)
{
    if (!review.baseline) {
        return {};
    }
    const Baseline& baseline = *review.baseline;
    const bool isLeft = baseline.operated == Side::Left;
    if (!baseline.percentOfIt) {
        return {{isLeft ? "Left, operated on %1: what the right did before is not known, and "
                          "today's right is no measure of it."
                        : "Right, operated on %1: what the left did before is not known, and "
                          "today's left is no measure of it.",
                 {shortText(baseline.surgery)}}};
    }
    const Estimate& share = *baseline.percentOfIt;
    return {
        {isLeft ? "Left, operated on %1: %2 % of what the right did before (%3 to %4). Whether "
                  "it is healed is not for this program to say."
                : "Right, operated on %1: %2 % of what the left did before (%3 to %4). Whether "
                  "it is healed is not for this program to say.",
         {shortText(baseline.surgery), whole(share.value), whole(share.low), whole(share.high)}}};
}

std::vector<Phrase> phrases(const SlipQuestion& question)
{
    return {{"%1, %2: left %3, right %4. A slip of the pen?",
             {question.measure.name,
              shortText(question.slip.day),
              question.slip.left,
              question.slip.right}}};
}

std::vector<Phrase> phrases(const SidePlan& plan)
{
    std::vector<Phrase> all;
    all.reserve(plan.rules.size() + 2);
    for (const SideRule rule : plan.rules) {
        all.push_back(rulePhrase(rule, plan));
    }
    if (plan.load && plan.leftSets + plan.rightSets > 0) {
        all.push_back({"%1 %2, %3 reps; sets: left %4, right %5.",
                       {plan.load->load.number(),
                        std::string(unitWord(plan.load->load.unit())),
                        std::to_string(plan.reps),
                        std::to_string(plan.leftSets),
                        std::to_string(plan.rightSets)}});
    }
    if (plan.twoSidedReplaced > 0) {
        all.push_back({"In place of %1 two-sided lift of the same kind this week.",
                       {std::to_string(plan.twoSidedReplaced)}});
    }
    return all;
}

} // namespace levelbar
