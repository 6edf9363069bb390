// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/exercise/exercise.h"

#include <span>
#include <string>
#include <vector>

namespace levelbar {

// What must be shown on a rung before the next one is tried. Amounts are in the exercise's own
// unit: reps, whole seconds or whole metres; done one-sided, the weaker side's.
struct GateUp {
    int amount = 12;     // clean, in one set; 1 to 600
    int sets = 2;        // of a session that reach the amount; 1 to 10
    int sessions = 2;    // in a row; 1 to 10
    int loadPercent = 0; // the typed load in percent of body mass, at least; 0 = any; to 300

    friend bool operator==(const GateUp&, const GateUp&) = default;
};

// What sends somebody back to the rung before. Any one of the three is enough.
struct GateDown {
    int pain = 3;      // of 10 in the last session, at least; 1 to 10
    int daysAway = 28; // more days than this since the last session; 1 to 365
    int fewerThan = 5; // the best set of a session; 1 (never) to the amount of the gate up
    int sessions = 2;  // in a row with fewer; 1 to 10

    friend bool operator==(const GateDown&, const GateDown&) = default;
};

// One way of doing a movement. The same exercise may stand on several rungs, set up otherwise.
struct Rung {
    std::string exerciseKey;
    std::string setting; // "bar at hip height"; empty: as the exercise says
    GateUp up;
    GateDown down;
    std::string source; // of the gates and the place in the order

    friend bool operator==(const Rung&, const Rung&) = default;
};

// The ways of one movement pattern, from easy to hard.
struct Ladder {
    std::string key; // stable for ever: "push-up"
    std::string name;
    Pattern pattern = Pattern::Other;
    std::vector<Rung> rungs;
    bool isShipped = true; // else the gym's own, or its own version of a shipped one

    friend bool operator==(const Ladder&, const Ladder&) = default;
};

inline constexpr std::size_t kMostRungs = 30;

// The ladder unchanged when it can be climbed. Empty: no key, name or source, fewer than two
// rungs. OutOfRange: a gate's number outside what is said above, or more than 30 rungs.
// UnknownExercise: a key that none of `exercises` has. NotOneOf: an exercise of another pattern.
// RepeatedPiece: an exercise twice with the same setting.
[[nodiscard]] Result<Ladder> checkLadder(Ladder ladder, std::span<const Exercise> exercises);

// Every ladder as above, and no key twice (RepeatedPiece).
[[nodiscard]] Result<std::vector<Ladder>> checkLadders(std::vector<Ladder> ladders,
                                                       std::span<const Exercise> exercises);

} // namespace levelbar
