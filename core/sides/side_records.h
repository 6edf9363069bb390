// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/day.h"
#include "core/base/fault.h"
#include "core/base/id.h"
#include "core/base/side.h"

#include <compare>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace levelbar {

// What the instructor laid down about left/right differences: what no set or test can tell.

// Which measure: an exercise (its sets and tested maxima) or a test. One of the two is set.
struct MeasureKey {
    std::optional<ExerciseId> exercise;
    std::optional<TestId> test;

    friend auto operator<=>(const MeasureKey&, const MeasureKey&) = default;
};

// Why a person differs in a measure, agreed with the instructor ("plays tennis, right-handed"). It
// keeps the name off the lists until something new happens: see whatIsNew in side_quiet.h.
struct KnownReason {
    MeasureKey measure;
    std::string text;
    Day since;
    std::optional<Day> ended;   // from this day on it holds no more
    double agreedPercent = 0.0; // the difference then; signed as in SideReview

    friend bool operator==(const KnownReason&, const KnownReason&) = default;

    [[nodiscard]] bool holdsOn(Day day) const { return since <= day && (!ended || day < *ended); }
};

// An operation on one side, of a body area or of what one measure takes. From that day on the
// operated side is compared with what the good side did before it: the good side weakens in the
// lay-off too, so that both grow alike without being well (Wellsandt et al. 2017, J Orthop Sports
// Phys Ther 47:334-338).
struct Surgery {
    std::string area;                  // a word of bodyAreas(); empty: `measure` says what
    std::optional<MeasureKey> measure; // nothing: every exercise that stresses the area
    Side side = Side::Left;            // Left or Right
    Day day;

    friend bool operator==(const Surgery&, const Surgery&) = default;
};

// Why a prescription ended. The numbers are stored; do not change them.
enum class SideEnd {
    Closed = 1,          // probably under 5 % in two open pairs running
    UsualDifference = 2, // twelve weeks unchanged
    Pain = 3,
    SentOn = 4,
    ByHand = 5, // the instructor's own decision
};

// "closed", "usual_difference", "pain", "sent_on", "by_hand".
[[nodiscard]] std::string_view sideEndWord(SideEnd end);

// A person's exercise trained weaker side first. At most one of an exercise is open at a time.
struct SidePrescription {
    ExerciseId exercise;
    Day started;
    std::optional<Day> ended; // set together with `why`
    std::optional<SideEnd> why;
    bool wantsExtraSet = false; // one more for the weaker side

    friend bool operator==(const SidePrescription&, const SidePrescription&) = default;
};

// After twelve weeks without change, or an end by hand, a difference rests as long before it is
// trained again (assumed): else being listed would begin it anew the next day.
inline constexpr int kRestDays = 84;

// All of one person, each list by day.
struct SideRecords {
    std::vector<KnownReason> reasons;
    std::vector<Surgery> surgeries;
    std::vector<SidePrescription> prescriptions;

    friend bool operator==(const SideRecords&, const SideRecords&) = default;

    // Null when none holds on that day.
    [[nodiscard]] const KnownReason* reasonFor(const MeasureKey& measure, Day day) const;
    // The one that runs on that day; null when there is none.
    [[nodiscard]] const SidePrescription* prescriptionFor(ExerciseId exercise, Day day) const;
    // Until when the exercise is left alone (see kRestDays); nothing: it may be trained.
    [[nodiscard]] std::optional<Day> restsUntil(ExerciseId exercise, Day day) const;
};

// From which difference on a measure is to be worked on, in percent.
inline constexpr double kUsualThreshold = 10.0;
inline constexpr double kLeastThreshold = 1.0;
inline constexpr double kMostThreshold = 50.0;

// The threshold rounded to tenths; OutOfRange outside 1 to 50.
[[nodiscard]] Result<double> checkThreshold(double percent);

// The reason with its text trimmed. Empty, TooLong (over 200 characters), ControlCharacter,
// NotUtf8: its text. NotInDomain: not one measure, or ended before it began.
[[nodiscard]] Result<KnownReason> checkReason(KnownReason reason);

// NotInDomain: not exactly one of area and measure, or a side that is Both. NotOneOf: no body area.
[[nodiscard]] Result<Surgery> checkSurgery(Surgery surgery);

} // namespace levelbar
