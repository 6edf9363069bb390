// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sides/side_pairs.h"

#include "core/strength/rep_curve.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace levelbar {

namespace {

constexpr double kMostReserveGap = 1.0;

void addPair(std::vector<SidePair>& pairs, Day day, double left, double right)
{
    if (left <= 0.0 || right <= 0.0) {
        return;
    }
    const double logPercent = 100.0 * std::log(right / left);
    if (std::abs(logPercent) <= kLargestLogPercent) {
        pairs.push_back({day, logPercent});
    }
}

std::map<Day, double> bestByDay(std::span<const Trial> trials, Direction direction)
{
    std::map<Day, double> best;
    for (const Trial& trial : trials) {
        if (!trial.isValid) {
            continue;
        }
        const auto [at, isFirst] = best.emplace(trial.day, trial.value());
        if (!isFirst) {
            at->second = direction == Direction::LessIsBetter ? std::min(at->second, trial.value())
                                                              : std::max(at->second, trial.value());
        }
    }
    return best;
}

// Reps in reserve when the set can size a difference: known, or nothing left.
std::optional<double> sizingReserve(const PerformedSet& set)
{
    const bool isCounted = set.known == HowKnown::Counted || set.known == HowKnown::Sheet;
    const bool isCut = set.stopped == StopReason::Capped || set.stopped == StopReason::Pain;
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

// ln(right / left) of two sets of one day and number, when they are comparable.
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
    return logMaximum(right, *rightReserve, fit) - logMaximum(left, *leftReserve, fit);
}

} // namespace

std::vector<SidePair>
pairsFromTrials(std::span<const Trial> left, std::span<const Trial> right, Direction direction)
{
    const auto lefts = bestByDay(left, direction);
    const auto rights = bestByDay(right, direction);
    std::vector<SidePair> pairs;
    for (const auto& [day, value] : lefts) {
        const auto other = rights.find(day);
        if (other == rights.end()) {
            continue;
        }
        // Fewer seconds are the stronger side: turn the ratio round.
        if (direction == Direction::LessIsBetter) {
            addPair(pairs, day, other->second, value);
        } else {
            addPair(pairs, day, value, other->second);
        }
    }
    return pairs;
}

std::vector<SidePair> pairsFromSets(std::span<const PerformedSet> left,
                                    std::span<const PerformedSet> right,
                                    const StrengthFit* fit)
{
    std::vector<SidePair> pairs;
    double sum = 0.0;
    int count = 0;
    auto from = right.begin();
    for (std::size_t i = 0; i < left.size(); ++i) {
        const PerformedSet& set = left[i];
        from = std::find_if(from, right.end(), [&](const PerformedSet& other) {
            return std::pair(other.day, other.number) >= std::pair(set.day, set.number);
        });
        if (const auto difference = from == right.end() ? std::nullopt : compare(set, *from, fit)) {
            sum += *difference;
            ++count;
        }
        const bool isLastOfDay = i + 1 == left.size() || left[i + 1].day != set.day;
        if (isLastOfDay && count > 0) {
            addPair(pairs, set.day, 1.0, std::exp(sum / count));
        }
        sum = isLastOfDay ? 0.0 : sum;
        count = isLastOfDay ? 0 : count;
    }
    return pairs;
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
