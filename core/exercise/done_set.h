// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/day.h"
#include "core/base/id.h"
#include "core/base/mass.h"
#include "core/base/side.h"

#include <optional>
#include <string>
#include <string_view>

namespace levelbar {

// How a set is known: four kinds of evidence. The numbers of these enumerations are stored; do
// not change them.
enum class HowKnown { Counted = 1, Accepted = 2, Group = 3, Sheet = 4 };
enum class SetKind { Ramp = 1, Work = 2, Open = 3, Test = 4 };
enum class StopReason { Planned = 1, Capped = 2, NoMore = 3, Form = 4, Pain = 5, Time = 6 };

// Reps in reserve, in tenths: 0 to 50 reps, at most one decimal ("1.5" is between one and two).
struct Reserve {
    int tenths = 0;

    friend constexpr auto operator<=>(const Reserve&, const Reserve&) = default;

    [[nodiscard]] constexpr double reps() const { return tenths / 10.0; }
};

// What the body did: the part of a set that the engine reads.
struct PerformedSet {
    Day day;
    int number = 1;          // 1 to 999, counted through the day per exercise and side
    int order = 0;           // place within the member's day over all exercises; 0 = not known
    std::optional<int> reps; // 0 to 200; 0 = tried and failed
    std::optional<int> secondsTenths;
    std::optional<int> metresTenths;
    Mass load; // as typed; of one dumbbell; for body weight what is added
    std::optional<Reserve> reserve;
    HowKnown known = HowKnown::Counted;
    SetKind kind = SetKind::Work;
    std::optional<StopReason> stopped;
    std::optional<bool> isClean;
    std::optional<int> pain; // 0 to 10
    bool isAtLeast = false;  // an easy day: what was done is the least that was in it

    friend bool operator==(const PerformedSet&, const PerformedSet&) = default;
};

// A set in the logbook: what was done, by whom, and how it came to be written down.
struct DoneSet {
    MemberId member;
    ExerciseId exercise;
    Side side = Side::Both;
    PerformedSet performed;
    std::optional<MeetingId> meeting;
    std::optional<PlannedSetId> planned; // the planned row it answers
    std::optional<int> hookHole;         // 1 = lowest, to 99
    std::optional<int> benchAngle;       // degrees, -45 (decline) to 90
    std::string painArea;
    std::optional<Side> painSide;
    std::optional<Moment> keyedAt;
    std::string keyedBy; // initials
    std::string note;

    friend bool operator==(const DoneSet&, const DoneSet&) = default;
};

[[nodiscard]] std::string_view howKnownWord(HowKnown known);
[[nodiscard]] std::string_view setKindWord(SetKind kind);
[[nodiscard]] std::string_view stopReasonWord(StopReason reason);
[[nodiscard]] Result<HowKnown> parseHowKnown(std::string_view text);
[[nodiscard]] Result<SetKind> parseSetKind(std::string_view text);
[[nodiscard]] Result<StopReason> parseStopReason(std::string_view text);
[[nodiscard]] Result<Reserve> parseReserve(std::string_view text);
[[nodiscard]] std::string text(Reserve reserve);

// What was keyed into a cell of the class floor.
struct CellEntry {
    bool asPlanned = false; // the cell was left empty: what was planned is accepted
    int reps = 0;
    std::optional<Reserve> reserve;

    friend bool operator==(const CellEntry&, const CellEntry&) = default;
};

// "" is as planned, "9" nine reps, "9.2" (or "9,2") nine with two in reserve, "0" tried and
// failed. The reserve is a whole number of reps, 0 to 50. NotACell otherwise.
[[nodiscard]] Result<CellEntry> parseCell(std::string_view text);

} // namespace levelbar
