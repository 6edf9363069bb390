// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/exercise/done_set.h"
#include "core/exercise/ladder.h"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace levelbar {

enum class RungMove { Stay, Up, Down };

// Which rule decided. Safety first: the first rule that applies, in this order.
enum class RungReason {
    NothingBefore,   // not yet done on this rung
    Pain,            // the last session hurt as much as the gate allows, or ended for pain
    Absence,         // longer away than the gate allows
    TooFew,          // below the gate's amount in enough sessions in a row
    SomePain,        // short of the gate, but nobody goes up with it
    TooFewSets,      // fewer sets than the gate asks for
    BodyMassUnknown, // the gate asks for a share of it
    TooLight,        // enough, with less load than the gate asks for
    NotClean,        // enough, but not clean
    NotCounted,      // enough, but nobody counted
    NotYet,          // short of the amount
    MoreSessions,    // as it should be, not often enough in a row
    GateReached,
};

// What the decision rests on. Only sets before today count, and only those since `since`, the day
// on which the person came to this rung; both spans by day, then number. Warm-up sets are passed
// over.
struct RungQuestion {
    std::span<const PerformedSet> sets;      // on this rung; one-sided: those of the left
    std::span<const PerformedSet> otherSide; // one-sided: those of the right
    bool isOneSided = false;
    AmountKind amount = AmountKind::Reps;
    Day today;
    std::optional<Day> since;
    std::optional<double> bodyMassKilograms;
};

struct RungDecision {
    RungMove move = RungMove::Stay;
    RungReason reason = RungReason::NothingBefore;
    bool isAtEnd = false;      // the reason moves, but the ladder has no rung there: stay
    int sessionsReached = 0;   // in a row up to the last one that pass the gate up
    std::optional<int> amount; // of the last session's best set; one-sided: the weaker side's
    int pain = 0;              // the last session's worst score
    int daysAway = 0;          // since the last session, or since `since`

    friend bool operator==(const RungDecision&, const RungDecision&) = default;
};

// Whether to stay on rung `place` (0 is the easiest) of a checked ladder. A session passes the
// gate up when, on each side, enough clean sets reach the amount with load enough, at least one of
// them counted or from a sheet, and nothing hurt. Too few: what the best counted set had in it,
// reserve included; a set that ended early as planned, capped or for time says nothing of that.
// Common practice, no source; that harder variants work in place of more load: Kotarsky 2018.
[[nodiscard]] RungDecision
decideRung(const Ladder& ladder, std::size_t place, const RungQuestion& question);

// The English sentence of a decision, in two steps as elsewhere: a template with %1 and %2, and
// what goes there ("8 where %2 are asked for").
[[nodiscard]] std::string_view rungReasonTemplate(RungReason reason);
[[nodiscard]] std::vector<std::string> rungReasonArguments(const RungDecision& decision,
                                                           const Rung& rung);

} // namespace levelbar
