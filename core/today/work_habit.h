// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/review/attention.h"
#include "core/review/history.h"
#include "core/review/wording.h"

#include <optional>
#include <span>

namespace levelbar {

// One session that the person rated: 0 to 10, and how long it took. Rating times minutes is the
// session load (Foster 2001).
struct RatedSession {
    Day day;
    int rating = 0;
    int minutes = 0;

    friend bool operator==(const RatedSession&, const RatedSession&) = default;
};

// What somebody did in the last seven days beside their own habit: a description. Ratios of
// recent to usual work are not turned into a risk: what was published of them does not hold up
// (Lolli 2019, Impellizzeri 2021).
struct WorkHabit {
    double lately = 0.0; // the last seven days
    double usual = 0.0;  // median of the weeks with any, of the eight before
    double most = 0.0;   // the largest of them
    int weeks = 0;       // how many of the eight there were, at least kHabitWeeks
    Day last;            // the newest day with any
};

inline constexpr int kHabitWeeks = 4; // weeks with work that make a habit; assumed

// A hard set: no ramp set, not tried in vain, and no more than so much in reserve where that is
// known (common practice, no source). Left and right of one exercise are one set together.
inline constexpr Reserve kHardReserve{40};

// Nothing without work in the last seven days, or with too few weeks before.
[[nodiscard]] std::optional<WorkHabit> hardSetHabit(const MemberHistory& history, Day asOf);
[[nodiscard]] std::optional<WorkHabit> sessionLoadHabit(std::span<const RatedSession> sessions,
                                                        Day asOf);

// Far more: half as much again as usual, more than in any of the weeks before, and for hard sets
// five more at least (assumed).
[[nodiscard]] std::optional<Attention> loadJump(const std::optional<WorkHabit>& hardSets,
                                                const std::optional<WorkHabit>& sessionLoad);

// "Hard sets in seven days: 12; usually 10 a week."
[[nodiscard]] Phrase hardSetsPhrase(const WorkHabit& habit);

// "Session load (rating times minutes) in seven days: 540; usually 420 a week."
[[nodiscard]] Phrase sessionLoadPhrase(const WorkHabit& habit);

// Days before today that a habit is read from.
inline constexpr int kHabitDays = 63;

} // namespace levelbar
