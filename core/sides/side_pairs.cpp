// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sides/side_pairs.h"

#include "core/strength/rep_curve.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <string>

namespace levelbar {

namespace {

constexpr double kMostReserveGap = 1.0;
constexpr int kCapDays = 28;

bool isBelievable(double logPercent)
{
    return std::abs(logPercent) <= kLargestLogPercent;
}

// ln(right / left) in percent; nothing unless both are above zero.
std::optional<double> logPercentFrom(double left, double right)
{
    return left > 0.0 && right > 0.0 ? std::optional(100.0 * std::log(right / left)) : std::nullopt;
}

using BestTrials = std::map<Day, const Trial*>;

BestTrials bestByDay(std::span<const Trial> trials, Direction direction)
{
    BestTrials best;
    for (const Trial& trial : trials) {
        if (!trial.isValid) {
            continue;
        }
        const auto at = best.emplace(trial.day, &trial).first;
        const double gain = trial.value() - at->second->value();
        if (direction == Direction::LessIsBetter ? gain < 0.0 : gain > 0.0) {
            at->second = &trial;
        }
    }
    return best;
}

// Reps in reserve when the set can size a difference: known, or nothing left.
std::optional<double> sizingReserve(const PerformedSet& set)
{
    const bool isCounted = set.known == HowKnown::Counted || set.known == HowKnown::Sheet;
    const bool isCut =
        set.isAtLeast || set.stopped == StopReason::Capped || set.stopped == StopReason::Pain;
    if (!isCounted || isCut || set.kind == SetKind::Ramp || !set.reps || *set.reps < 1 ||
        set.load.thousandths() <= 0) {
        return std::nullopt;
    }
    if (set.reserve) {
        return set.reserve->reps();
    }
    return set.stopped == StopReason::NoMore ? std::optional(0.0) : std::nullopt;
}

// ln 1RM that the set speaks for, through the person's curve.
double logMaximum(const PerformedSet& set, double reserve, const StrengthFit* fit)
{
    const double reps = std::clamp(*set.reps + reserve, 1.0, 40.0);
    StrengthFit plain;
    const StrengthFit& curve = fit != nullptr ? *fit : plain;
    const double share = loadForReps(curve, reps, 0.0).logLoad - curve.level;
    return std::log(set.load.kilograms()) - share;
}

// Days on which a side was stopped at the other's reps.
std::vector<Day> cappedDays(std::span<const PerformedSet> sets)
{
    std::vector<Day> days;
    for (const PerformedSet& set : sets) {
        if (set.stopped == StopReason::Capped && (days.empty() || days.back() != set.day)) {
            days.push_back(set.day);
        }
    }
    return days;
}

// Whether a side was capped in the four weeks up to a day.
bool wasCapped(const std::vector<Day>& days, Day day)
{
    const auto after = std::upper_bound(days.begin(), days.end(), day);
    return after != days.begin() && day - *std::prev(after) < kCapDays;
}

// 100 ln(right / left) of two sets of one day and number, when they are comparable.
std::optional<double>
compare(const PerformedSet& left, const PerformedSet& right, const StrengthFit* fit)
{
    if (left.day != right.day || left.number != right.number) {
        return std::nullopt;
    }
    const auto leftReserve = sizingReserve(left);
    const auto rightReserve = sizingReserve(right);
    if (!leftReserve || !rightReserve || std::abs(*leftReserve - *rightReserve) > kMostReserveGap) {
        return std::nullopt;
    }
    return 100.0 * (logMaximum(right, *rightReserve, fit) - logMaximum(left, *leftReserve, fit));
}

// Calls `visit` for all comparable sets of both sides.
template <typename Visit>
void forEachComparable(std::span<const PerformedSet> left,
                       std::span<const PerformedSet> right,
                       const StrengthFit* fit,
                       const Visit& visit)
{
    auto from = right.begin();
    for (const PerformedSet& set : left) {
        from = std::find_if(from, right.end(), [&](const PerformedSet& other) {
            return std::pair(other.day, other.number) >= std::pair(set.day, set.number);
        });
        if (from == right.end()) {
            return;
        }
        if (const auto difference = compare(set, *from, fit)) {
            visit(set, *from, *difference);
        }
    }
}

// Calls `visit` with both best trials of every day that has both, and their 100 ln(right / left),
// fewer seconds being the stronger side.
template <typename Visit>
void forEachTested(std::span<const Trial> left,
                   std::span<const Trial> right,
                   Direction direction,
                   const Visit& visit)
{
    const BestTrials rights = bestByDay(right, direction);
    for (const auto& [day, trial] : bestByDay(left, direction)) {
        const auto other = rights.find(day);
        if (other == rights.end()) {
            continue;
        }
        if (const auto logPercent = logPercentFrom(trial->value(), other->second->value())) {
            visit(*trial,
                  *other->second,
                  direction == Direction::LessIsBetter ? -*logPercent : *logPercent);
        }
    }
}

std::optional<Side> firstOf(const PerformedSet& left, const PerformedSet& right)
{
    if (left.order <= 0 || right.order <= 0 || left.order == right.order) {
        return std::nullopt;
    }
    return left.order < right.order ? Side::Left : Side::Right;
}

std::string text(const PerformedSet& set)
{
    return fmt::format("{} x {} {}", *set.reps, set.load.number(), unitWord(set.load.unit()));
}

std::string text(const Trial& trial)
{
    return fmt::format("{} {}", static_cast<double>(trial.valueThousandths) / 1000.0, trial.unit);
}

} // namespace

std::vector<SidePair>
pairsFromTrials(std::span<const Trial> left, std::span<const Trial> right, Direction direction)
{
    std::vector<SidePair> pairs;
    forEachTested(left, right, direction, [&](const Trial& l, const Trial&, double logPercent) {
        if (isBelievable(logPercent)) {
            pairs.push_back({l.day, logPercent, false, std::nullopt});
        }
    });
    return pairs;
}

std::vector<SidePair> pairsFromSets(std::span<const PerformedSet> left,
                                    std::span<const PerformedSet> right,
                                    const StrengthFit* fit)
{
    const std::vector<Day> leftCapped = cappedDays(left);
    const std::vector<Day> rightCapped = cappedDays(right);
    // What is left over under the cap is a selection: on its better days the capped side is
    // stopped, so only the days on which it did no more than the other would be seen.
    const auto isLeftOver = [&](const PerformedSet& set, double difference) {
        return set.kind == SetKind::Work &&
               ((difference <= 0.0 && wasCapped(rightCapped, set.day)) ||
                (difference >= 0.0 && wasCapped(leftCapped, set.day)));
    };
    std::vector<SidePair> pairs;
    int count = 0; // of the last pair's day
    forEachComparable(left, right, fit, [&](const auto& l, const auto& r, double difference) {
        if (!isBelievable(difference) || isLeftOver(l, difference)) {
            return;
        }
        if (pairs.empty() || pairs.back().day != l.day) {
            pairs.push_back({l.day, 0.0, false, firstOf(l, r)});
            count = 0;
        }
        SidePair& pair = pairs.back();
        ++count;
        pair.logPercent += (difference - pair.logPercent) / count;
        pair.isOpen = pair.isOpen || (l.kind == SetKind::Open && r.kind == SetKind::Open);
    });
    return pairs;
}

std::vector<SideSlip>
slipsOfTrials(std::span<const Trial> left, std::span<const Trial> right, Direction direction)
{
    std::vector<SideSlip> slips;
    forEachTested(left, right, direction, [&](const Trial& l, const Trial& r, double logPercent) {
        if (!isBelievable(logPercent)) {
            slips.push_back({l.day, text(l), text(r)});
        }
    });
    return slips;
}

std::vector<SideSlip> slipsOfSets(std::span<const PerformedSet> left,
                                  std::span<const PerformedSet> right,
                                  const StrengthFit* fit)
{
    std::vector<SideSlip> slips;
    forEachComparable(left, right, fit, [&](const auto& l, const auto& r, double difference) {
        if (!isBelievable(difference)) {
            slips.push_back({l.day, text(l), text(r)});
        }
    });
    return slips;
}

std::map<Day, double> dailyBest(std::span<const Trial> trials, Direction direction)
{
    std::map<Day, double> best;
    for (const auto& [day, trial] : bestByDay(trials, direction)) {
        if (trial->value() > 0.0) {
            const double logValue = std::log(trial->value());
            best[day] = direction == Direction::LessIsBetter ? -logValue : logValue;
        }
    }
    return best;
}

std::map<Day, double> dailyBest(std::span<const PerformedSet> sets, const StrengthFit* fit)
{
    std::map<Day, double> best;
    for (const PerformedSet& set : sets) {
        if (const auto reserve = sizingReserve(set)) {
            const double value = logMaximum(set, *reserve, fit);
            const auto at = best.emplace(set.day, value).first;
            at->second = std::max(at->second, value);
        }
    }
    return best;
}

std::vector<SidePair> joinPairs(std::vector<SidePair> tests, const std::vector<SidePair>& sets)
{
    const std::size_t tested = tests.size();
    for (const SidePair& pair : sets) {
        const bool isTested = std::any_of(tests.begin(),
                                          tests.begin() + static_cast<std::ptrdiff_t>(tested),
                                          [&](const SidePair& t) { return t.day == pair.day; });
        if (!isTested) {
            tests.push_back(pair);
        }
    }
    std::sort(tests.begin(), tests.end(), [](const SidePair& a, const SidePair& b) {
        return a.day < b.day;
    });
    return tests;
}

} // namespace levelbar
