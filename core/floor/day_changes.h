// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/floor/floor_change.h"

namespace levelbar {

// What changes for one person during the hour. Whoever has lifted keeps station and turn; no set
// that is set aside here was missed. Faults: NothingLeft (no open set of theirs).

// About a tenth less on every open set (the load that exists nearest to it; without a load or a
// lighter one a tenth of the reps) and one set fewer of each exercise with two or more to go.
[[nodiscard]] Result<FloorChange>
makeEasyDay(const ClassFloor& floor, const FloorBook& book, MemberId member, Moment at);

// Came so many minutes late: rounds whose end has passed are not asked for. After more than ten
// minutes the warm-up is the lightest and the last set of each exercise, and no maximum is tried
// (common practice, no source).
[[nodiscard]] Result<FloorChange> comeLate(const ClassFloor& floor, MemberId member, int minutes);

// Of somebody who has left already only the reason is taken, where there is one.
[[nodiscard]] Result<FloorChange>
leave(const ClassFloor& floor, MemberId member, int minute, LeftWhy why = LeftWhy::NotSaid);

// Two people of a station change turns, in all rounds in which neither has lifted yet.
[[nodiscard]] Result<FloorChange>
swapTurns(const ClassFloor& floor, MemberId member, MemberId other);

// The hour as it was for them: sets set aside then are set aside again. Who is not there is passed
// over.
[[nodiscard]] ClassFloor remembering(ClassFloor floor, const RememberedPerson& remembered);

inline constexpr int kVeryLateMinutes = 10;
inline constexpr double kEasyDayShare = 0.9;

} // namespace levelbar
