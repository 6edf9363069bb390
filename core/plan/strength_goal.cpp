// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/plan/strength_goal.h"

#include "core/base/distributions.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace levelbar {

namespace {

constexpr double kRounding = 1e-6; // of a percentage
constexpr CivilDate kLastDate{2100, 12, 31};

// P(1RM of that day >= the goal), between two points of the forecast: ln 1RM is normal there, its
// centre and spread taken along a straight line.
std::optional<double> probabilityOn(Day day, double kilograms, std::span<const BandPoint> forecast)
{
    const auto after = std::find_if(
        forecast.begin(), forecast.end(), [day](const BandPoint& p) { return p.day >= day; });
    if (after == forecast.begin() || after == forecast.end()) {
        return std::nullopt;
    }
    const BandPoint& to = *after;
    const BandPoint& from = *(after - 1);
    const double share = static_cast<double>(day - from.day) / (to.day - from.day);
    const auto between = [share](double a, double b) { return a + share * (b - a); };
    const auto spread = [](const BandPoint& p) {
        return std::log(p.high / p.low) / (2.0 * kNormalQuantile);
    };
    const double centre = between(std::log(from.value), std::log(to.value));
    const double deviation = std::max(between(spread(from), spread(to)), 1e-6);
    return normalBelow((centre - std::log(kilograms)) / deviation);
}

GoalStanding standingOf(const StrengthGoal& goal,
                        const StrengthReview& review,
                        const std::optional<double>& needed,
                        Day asOf)
{
    const double kilograms = goal.load.kilograms();
    const Estimate& today = review.strength.oneRepMax;
    if (today.low >= kilograms) {
        return GoalStanding::Reached;
    }
    if (today.high >= kilograms) {
        return GoalStanding::There;
    }
    if (goal.by && *goal.by <= asOf) {
        return GoalStanding::Past;
    }
    const auto& pace = review.trend.percentPerWeek;
    if (!needed || !pace) {
        return GoalStanding::Open;
    }
    if (*needed < pace->low) {
        return GoalStanding::OnPace;
    }
    return *needed <= pace->high ? GoalStanding::Possible : GoalStanding::TooFast;
}

Phrase headPhrase(const StrengthGoal& goal, const GoalOutlook& outlook)
{
    const std::string load = goal.load.number() + " " + std::string(unitWord(goal.load.unit()));
    const std::string toGo = fmt::format("{:.0f}", std::ceil(outlook.percentToGo - kRounding));
    const bool isThere =
        outlook.standing == GoalStanding::Reached || outlook.standing == GoalStanding::There;
    if (isThere) {
        return {"Goal %1:", {load}};
    }
    if (goal.by) {
        return {"Goal %1 by %2: %3 % to go.", {load, shortText(*goal.by), toGo}};
    }
    return {"Goal %1: %2 % to go.", {load, toGo}};
}

std::string_view verdictOf(GoalStanding standing)
{
    switch (standing) {
    case GoalStanding::Reached:
        return "reached.";
    case GoalStanding::There:
        return "within today's range; a test would tell.";
    case GoalStanding::OnPace:
        return "The pace so far leads there.";
    case GoalStanding::Possible:
        return "The pace so far may lead there.";
    case GoalStanding::TooFast:
        return "Faster than so far: a later day or a smaller goal.";
    case GoalStanding::Past:
        return "Its day is over: set a new one.";
    case GoalStanding::Open:
        break;
    }
    return {};
}

} // namespace

Result<StrengthGoal> checkGoal(StrengthGoal goal)
{
    if (goal.load.thousandths() <= 0) {
        return refuse(FaultCode::OutOfRange, {goal.load.number(), "0.001", "1000"});
    }
    if (goal.by && *goal.by <= goal.setOn) {
        return refuse(FaultCode::DateOutOfRange,
                      {isoText(*goal.by), isoText(goal.setOn + 1), isoText(*dayOf(kLastDate))});
    }
    return goal;
}

GoalOutlook goalOutlook(const StrengthGoal& goal,
                        const StrengthReview& review,
                        std::span<const BandPoint> forecast,
                        Day asOf)
{
    GoalOutlook outlook;
    const double kilograms = goal.load.kilograms();
    const double logToGo = std::log(kilograms / review.strength.oneRepMax.value);
    outlook.percentToGo = std::max(0.0, 100.0 * std::expm1(logToGo));
    if (goal.by && *goal.by > asOf) {
        outlook.percentPerWeekNeeded = std::max(0.0, 100.0 * logToGo / ((*goal.by - asOf) / 7.0));
        outlook.probabilityOnTheDay = probabilityOn(*goal.by, kilograms, forecast);
    }
    outlook.standing = standingOf(goal, review, outlook.percentPerWeekNeeded, asOf);
    return outlook;
}

std::vector<Phrase>
phrases(const StrengthGoal& goal, const GoalOutlook& outlook, const Trend& trend)
{
    std::vector<Phrase> all = {headPhrase(goal, outlook)};
    const bool isAhead = outlook.standing == GoalStanding::OnPace ||
                         outlook.standing == GoalStanding::Possible ||
                         outlook.standing == GoalStanding::TooFast;
    if (isAhead) {
        all.push_back({"That takes %1 % a week; the pace so far is %2 to %3.",
                       {fmt::format("{:.1f}", *outlook.percentPerWeekNeeded),
                        fmt::format("{:.1f}", trend.percentPerWeek->low),
                        fmt::format("{:.1f}", trend.percentPerWeek->high)}});
    }
    if (const std::string_view verdict = verdictOf(outlook.standing); !verdict.empty()) {
        all.push_back({verdict, {}});
    }
    if (isAhead && outlook.probabilityOnTheDay) {
        all.push_back({"If it goes on so: %1 in 100 to be there.",
                       {fmt::format("{:.0f}", 100.0 * *outlook.probabilityOnTheDay)}});
    }
    return all;
}

} // namespace levelbar
