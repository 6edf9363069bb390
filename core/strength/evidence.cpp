// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/strength/evidence.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace levelbar {

namespace {

constexpr double kMostReps = 40.0;
// Below so many sets with a reserve, and under half of all, the reserve counts as hardly known.
constexpr int kFewReserves = 5;

bool isOnlyAccepted(const PerformedSet& set)
{
    return set.known == HowKnown::Accepted || set.known == HowKnown::Group;
}

// What a set says, before it is known how often this person's reserve is known.
std::optional<StrengthObservation> observe(const PerformedSet& set, double side, int earlier)
{
    const double kilograms = set.load.kilograms();
    if (!set.reps || kilograms <= 0.0 || set.kind == SetKind::Ramp) {
        return std::nullopt;
    }
    StrengthObservation seen;
    seen.weeks = weeksOf(set.day);
    seen.logLoad = std::log(kilograms);
    seen.reps = *set.reps;
    seen.side = side;
    seen.earlierSets = earlier;
    const bool isAll = set.stopped == StopReason::NoMore;
    if (*set.reps == 0) {
        seen.evidence = SetEvidence::AtMost;
    } else if (isOnlyAccepted(set) || set.isAtLeast || set.stopped == StopReason::Pain) {
        seen.evidence = SetEvidence::AtLeast;
    } else if (set.reserve && set.reserve->tenths > 0) {
        seen.evidence = SetEvidence::Measured;
        seen.reserve = set.reserve->reps();
    } else if (set.kind == SetKind::Test && *set.reps == 1) {
        seen.evidence = SetEvidence::Tested;
    } else if (set.reserve || isAll) {
        seen.evidence = SetEvidence::Limit;
    } else {
        seen.evidence = SetEvidence::Rough; // or AtLeast: settled when all are seen
    }
    if (seen.reps + seen.reserve > kMostReps) {
        return std::nullopt;
    }
    return seen;
}

void addSide(const SideHistory& history,
             double side,
             Day today,
             std::vector<StrengthObservation>& observations)
{
    Day day;
    int earlier = 0;
    for (const PerformedSet& set : history.sets) {
        if (set.day > today) {
            break;
        }
        if (set.day != day) {
            day = set.day;
            earlier = 0;
        }
        if (const auto seen = observe(set, side, earlier)) {
            observations.push_back(*seen);
            ++earlier;
        }
    }
    for (const TestedMaximum& test : history.tests) {
        if (test.day <= today && test.kilograms > 0.0) {
            observations.push_back({weeksOf(test.day),
                                    std::log(test.kilograms),
                                    1.0,
                                    0.0,
                                    0.0,
                                    side,
                                    SetEvidence::Tested});
        }
    }
}

bool isSizing(const StrengthObservation& seen)
{
    return seen.evidence == SetEvidence::Measured || seen.evidence == SetEvidence::Limit ||
           seen.evidence == SetEvidence::Tested;
}

} // namespace

StrengthEvidence gatherEvidence(const SideHistory& both,
                                const SideHistory& left,
                                const SideHistory& right,
                                Day today)
{
    StrengthEvidence evidence;
    auto& all = evidence.observations;
    addSide(left, -0.5, today, all);
    addSide(right, 0.5, today, all);
    evidence.hasSides = !all.empty();
    addSide(both, 0.0, today, all);
    std::stable_sort(
        all.begin(), all.end(), [](const auto& a, const auto& b) { return a.weeks < b.weeks; });

    const auto sizing = std::count_if(all.begin(), all.end(), isSizing);
    const auto open = std::count_if(all.begin(), all.end(), [](const auto& seen) {
        return isSizing(seen) || seen.evidence == SetEvidence::Rough;
    });
    const bool isHardlyKnown = sizing < kFewReserves && 2 * sizing < open;
    const auto note = [](std::vector<Day>& days, Day day) {
        if (days.empty() || days.back() != day) {
            days.push_back(day);
        }
    };
    for (StrengthObservation& seen : all) {
        if (seen.evidence == SetEvidence::Rough && !isHardlyKnown) {
            seen.evidence = SetEvidence::AtLeast;
        }
        const Day day = dayOfWeeks(seen.weeks);
        note(evidence.days, day);
        if (isSizing(seen) || seen.evidence == SetEvidence::Rough) {
            ++evidence.measured;
            note(evidence.measuredDays, day);
        } else {
            ++evidence.bounds;
        }
    }
    return evidence;
}

} // namespace levelbar
