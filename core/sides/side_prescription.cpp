// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sides/side_prescription.h"

#include "core/base/distributions.h"
#include "core/base/square.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace levelbar {

namespace {

constexpr int kLongDays = 28;
constexpr int kUncappedDays = 7;
constexpr double kPlentyInReserve = 4.0;
constexpr double kOpenReserve = 1.0;
constexpr int kLeastOpenRest = 120;
constexpr int kMostOpenRest = 180;
constexpr double kLeastMove = 2.0; // percent
constexpr double kSureMove = 0.90;

bool isOneSide(Side side)
{
    return side != Side::Both;
}

bool has(const SidePlan& plan, SideRule rule)
{
    return std::find(plan.rules.begin(), plan.rules.end(), rule) != plan.rules.end();
}

bool isClosed(std::span<const OpenPairVerdict> pairs)
{
    return pairs.size() >= 2 &&
           std::all_of(pairs.end() - 2, pairs.end(), [](const OpenPairVerdict& verdict) {
               return verdict.probabilityUnderFive >= kProbablySmall;
           });
}

// Why nothing is prescribed on account of a difference, if so.
std::optional<SideRule> whyEqual(const SidePlanQuestion& q)
{
    if (!q.isTrainable) {
        return SideRule::NeverForThis;
    }
    if (q.isPaused) {
        return SideRule::Paused;
    }
    if (q.tier != SideTier::Act && !q.started) {
        return SideRule::NotListed;
    }
    if (!q.weaker) {
        return SideRule::NotListed;
    }
    if (q.restsUntil) {
        return SideRule::Rests;
    }
    if (isClosed(q.openPairs)) {
        return SideRule::Closed;
    }
    if (q.started && q.today - *q.started >= kUnchangedDays && !q.isClosing) {
        return SideRule::UsualDifference;
    }
    return std::nullopt;
}

bool isOpenPairDue(const SidePlanQuestion& q)
{
    if (!q.started) {
        return false; // the first day is measured by what put the name on the list
    }
    const Day last = q.openPairs.empty() ? *q.started : q.openPairs.back().day;
    return q.today - last >= kOpenPairDays;
}

Side alternated(std::optional<Side> last)
{
    return last ? otherSide(*last) : Side::Left;
}

void planOpenPair(const SidePlanQuestion& q, SidePlan& plan)
{
    plan.rules.push_back(SideRule::OpenPair);
    plan.isOpenPair = true;
    plan.first =
        q.openPairs.empty() ? alternated(q.lastFirst) : otherSide(q.openPairs.back().first);
    plan.leastReserve = kOpenReserve;
    plan.mostReserve = kOpenReserve;
    plan.leastRestSeconds = kLeastOpenRest;
    plan.mostRestSeconds = kMostOpenRest;
}

SideRule extraSetRule(const SidePlanQuestion& q)
{
    if (2 * (q.sets + 1) > 3 * q.sets) {
        return SideRule::ExtraSetTooMuch;
    }
    return q.started && q.today - *q.started >= kExtraSetDays ? SideRule::ExtraSetOver
                                                              : SideRule::ExtraSet;
}

void planCapped(const SidePlanQuestion& q, SidePlan& plan)
{
    plan.rules.push_back(SideRule::WeakerFirst);
    plan.first = *q.weaker;
    plan.isCapped = true;
    if (q.wantsExtraSet) {
        plan.rules.push_back(extraSetRule(q));
        const int extra = has(plan, SideRule::ExtraSet) ? 1 : 0;
        (*q.weaker == Side::Left ? plan.leftSets : plan.rightSets) += extra;
    }
    const bool isLong = q.started && q.today - *q.started >= kLongDays;
    const bool isDue = !q.lastUncapped || q.today - *q.lastUncapped >= kUncappedDays;
    if (isLong && isDue && q.strongerReserve >= kPlentyInReserve) {
        plan.rules.push_back(SideRule::UncappedSet);
        plan.uncapped = otherSide(*q.weaker);
    }
}

// ln-percent and its standard error, from an interval taken as symmetric in the logarithm.
struct LogEstimate {
    double value = 0.0;
    double error = 0.0;
};

LogEstimate logOf(const Estimate& estimate)
{
    const double z = normalQuantile((1.0 + estimate.level) / 2.0);
    return {100.0 * std::log(estimate.value),
            100.0 * std::log(estimate.high / estimate.low) / (2.0 * z)};
}

bool isUsable(const Estimate& e)
{
    return e.low > 0.0 && e.low <= e.value && e.value <= e.high && std::isfinite(e.high) &&
           e.level > 0.0 && e.level < 1.0;
}

SideMove moveOf(const Estimate& before, const Estimate& now)
{
    const LogEstimate from = logOf(before);
    const LogEstimate to = logOf(now);
    const double change = to.value - from.value;
    const double error = std::hypot(from.error, to.error);
    const bool isSure = error == 0.0 || normalBelow(std::abs(change) / error) >= kSureMove;
    if (!isSure || std::abs(100.0 * std::expm1(change / 100.0)) < kLeastMove) {
        return SideMove::Held;
    }
    return change > 0.0 ? SideMove::Rose : SideMove::Fell;
}

SideOutcome outcomeOf(SideMove weaker, SideMove stronger)
{
    if (stronger == SideMove::Fell) {
        return SideOutcome::StrongerFell;
    }
    switch (weaker) {
    case SideMove::Fell:
        return SideOutcome::WeakerFell;
    case SideMove::Rose:
        return SideOutcome::WeakerRose;
    case SideMove::Held:
        break;
    }
    return stronger == SideMove::Rose ? SideOutcome::StrongerRose : SideOutcome::NothingMoved;
}

} // namespace

Result<SidePlan> planSides(const SidePlanQuestion& question)
{
    const SidePlanQuestion& q = question;
    const bool areSides = isOneSide(q.weaker.value_or(Side::Left)) &&
                          isOneSide(q.lastFirst.value_or(Side::Left)) &&
                          std::all_of(q.openPairs.begin(), q.openPairs.end(), [](const auto& pair) {
                              return isOneSide(pair.first);
                          });
    if (q.sets < 1 || !areSides) {
        return refuse(FaultCode::NotInDomain,
                      {fmt::format("{}", q.sets), "one set or more, sides left or right"});
    }
    SidePlan plan;
    if (q.tier == SideTier::SendOn) {
        plan.rules = {SideRule::SentOn};
        return plan;
    }
    if (q.weakerLoad.rule == ProgressionRule::Pain) {
        plan.rules = {SideRule::PainEnds};
        return plan;
    }
    plan.leftSets = q.sets;
    plan.rightSets = q.sets;
    plan.load = q.weakerLoad.load;
    plan.reps = q.weakerLoad.reps;
    if (const auto equal = whyEqual(q)) {
        plan.rules.push_back(*equal);
        plan.first = alternated(q.lastFirst);
    } else {
        isOpenPairDue(q) ? planOpenPair(q, plan) : planCapped(q, plan);
        plan.twoSidedReplaced = std::min(1, std::max(0, q.twoSidedLifts));
    }
    if (q.weakerLoad.rule == ProgressionRule::RepsFirst) {
        plan.rules.push_back(SideRule::RepsFirst);
    }
    if (!plan.load) {
        plan.rules.push_back(SideRule::NoLoad);
    }
    return plan;
}

SideCap capAfter(const PerformedSet& first)
{
    if (first.stopped == StopReason::Pain) {
        return {std::nullopt, true, false};
    }
    // Accepted and group sets say "at least": no limit can be read from them, nor from a miss.
    const bool isSeen = first.known == HowKnown::Counted || first.known == HowKnown::Sheet;
    if (!isSeen || first.kind == SetKind::Open || !first.reps || *first.reps < 1) {
        return {};
    }
    const bool isLessOne = first.isClean == false && *first.reps > 1;
    return {*first.reps - (isLessOne ? 1 : 0), false, isLessOne};
}

Result<SideChange> changeOfSides(const SideStrength& before, const SideStrength& now, Side weaker)
{
    for (const Estimate* estimate : {&before.left, &before.right, &now.left, &now.right}) {
        if (!isUsable(*estimate)) {
            return refuse(FaultCode::NotInDomain,
                          {fmt::format("{}", estimate->value), "above 0, within its interval"});
        }
    }
    if (!isOneSide(weaker)) {
        return refuse(FaultCode::NotInDomain, {std::string(sideWord(weaker)), "left or right"});
    }
    SideChange change;
    change.leftPercent = 100.0 * (now.left.value / before.left.value - 1.0);
    change.rightPercent = 100.0 * (now.right.value / before.right.value - 1.0);
    change.left = moveOf(before.left, now.left);
    change.right = moveOf(before.right, now.right);
    const bool isLeft = weaker == Side::Left;
    change.outcome =
        outcomeOf(isLeft ? change.left : change.right, isLeft ? change.right : change.left);
    return change;
}

} // namespace levelbar
