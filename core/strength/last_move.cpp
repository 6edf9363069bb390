// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/strength/last_move.h"

#include "core/strength/expected_reps.h"
#include "core/strength/set_reading.h"

#include <algorithm>
#include <cmath>

namespace levelbar {

namespace {

SideHistory before(const SideHistory& history, Day day)
{
    const auto cut = [day](const auto& rows) {
        const auto end =
            std::find_if(rows.begin(), rows.end(), [day](const auto& r) { return r.day >= day; });
        return rows.first(static_cast<std::size_t>(end - rows.begin()));
    };
    return {cut(history.sets), cut(history.tests)};
}

// How plainly a kind of evidence speaks.
int rank(SetEvidence evidence)
{
    switch (evidence) {
    case SetEvidence::Tested:
        return 0;
    case SetEvidence::Limit:
        return 1;
    case SetEvidence::Measured:
        return 2;
    case SetEvidence::Rough:
        return 3;
    case SetEvidence::AtMost:
        return 4;
    case SetEvidence::AtLeast:
        break;
    }
    return 5;
}

const StrengthObservation& plainest(std::span<const StrengthObservation> day)
{
    return *std::min_element(day.begin(), day.end(), [](const auto& a, const auto& b) {
        if (rank(a.evidence) != rank(b.evidence)) {
            return rank(a.evidence) < rank(b.evidence);
        }
        return a.earlierSets < b.earlierSets;
    });
}

} // namespace

std::optional<LastMove> lastMove(std::span<const ExerciseHistory> exercises,
                                 std::size_t place,
                                 const StrengthPrior& prior,
                                 Day today)
{
    const ExerciseHistory& own = exercises[place];
    const StrengthEvidence evidence = gatherEvidence(own.both, own.left, own.right, today);
    if (evidence.observations.empty()) {
        return std::nullopt;
    }
    LastMove move;
    move.day = evidence.days.back();
    const auto firstOfDay = std::find_if(
        evidence.observations.begin(), evidence.observations.end(), [&move](const auto& seen) {
            return std::lround(seen.weeks * 7.0) >= move.day.sinceEpoch;
        });
    const std::span<const StrengthObservation> day(firstOfDay, evidence.observations.end());
    const StrengthObservation& speaker = plainest(day);
    move.sets = static_cast<int>(day.size());
    move.kilograms = std::exp(speaker.logLoad);
    move.reps = speaker.reps + speaker.reserve;
    move.isOnlyAtLeast = speaker.evidence == SetEvidence::AtLeast;

    std::vector<ExerciseHistory> earlier;
    for (const ExerciseHistory& exercise : exercises) {
        earlier.push_back({before(exercise.both, move.day),
                           before(exercise.left, move.day),
                           before(exercise.right, move.day),
                           exercise.related});
    }
    const auto was = fitMember(earlier, prior, move.day)[place];
    const auto is = fitMember(exercises, prior, move.day)[place];
    if (!was || !is) {
        move.isFirst = true;
        return move;
    }
    move.percent = 100.0 * (std::exp(is->fit.level - was->fit.level) - 1.0);
    const double untold = trueReserve(speaker.reserve, StrengthParameters()) - speaker.reserve;
    move.expectedReps = expectedReps(was->fit, speaker.logLoad, speaker.side).reps - untold;
    return move;
}

} // namespace levelbar
