// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/exercise/exercise_detail.h"
#include "core/exercise/ladder.h"
#include "core/review/history.h"
#include "core/review/wording.h"

#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace levelbar {

// What somebody has at home: nothing, or a pair of dumbbells.
enum class HomeKit { BodyWeight, Dumbbells };

struct TakeAwayItem {
    ExerciseId exercise;
    std::string name;
    std::string_view how;          // "hands on a firm table"; a word of core's, may be empty
    std::vector<Phrase> amount;    // what to do today
    std::vector<Phrase> aim;       // what leads on
    std::vector<std::string> cues; // at most three
};

// The half-page that somebody takes home.
struct TakeAway {
    Member member;
    Day asOf;
    HomeKit kit = HomeKit::BodyWeight;
    std::vector<TakeAwayItem> items; // at most three
    std::vector<Phrase> leftOut;     // patterns that hurt lately
    std::vector<Phrase> stop;        // when to stop
};

struct TakeAwayQuestion {
    const MemberHistory& history;
    const Library& library;
    const std::vector<Ladder>& ladders;
    const std::map<ExerciseId, ExerciseDetail>& details;
    HomeKit kit = HomeKit::BodyWeight;
    Day asOf;
};

inline constexpr std::size_t kMostTakeAway = 3;

// Three movements: a press, then legs, then a pull with dumbbells or the trunk without; where one
// has no way at home, or it or one for the same joints hurt (3 of 10 or more) in the last four
// weeks, the next pattern takes its place. On the pattern's ladder: the hardest rung that can be
// done at home and is not harder than what was done in the last twelve weeks; never done: the
// easiest. Amounts: the last session's best set, less two, or three fifths of what the rung asks
// for; never over what it asks for. Common practice, no source.
[[nodiscard]] TakeAway chooseTakeAway(const TakeAwayQuestion& question);

} // namespace levelbar
