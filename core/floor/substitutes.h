// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/floor/floor_change.h"

namespace levelbar {

// Something the instructor may pick; nothing changes before.
struct FloorChoice {
    Phrase said;     // what it is
    int minutes = 0; // it adds to the hour; below 0: it saves
    FloorChange change;
};

inline constexpr std::size_t kMostChoices = 3;

// Writes the pain down: with the set of that area done last, which it stopped, and with the
// person. Open sets that stress the area wait for a choice. UnknownMember.
[[nodiscard]] Result<FloorChange>
notePain(const ClassFloor& floor, const FloorBook& book, MemberId member, const SaidPain& pain);

// Up to three other exercises for all open sets of the person that stress the area: of the same
// pattern first, then one of each other; none stresses an area that hurts, and each can be done
// where the person stands, with kit that is free. The load is the usual one, or the lightest.
// Where none suits all of them: for the first exercise alone; the others go on waiting.
[[nodiscard]] std::vector<FloorChoice> painChoices(const ClassFloor& floor,
                                                   const FloorBook& book,
                                                   MemberId member,
                                                   const std::string& area);

// The sets that wait are not asked for.
[[nodiscard]] FloorChange leaveOutHeld(const ClassFloor& floor, MemberId member);

// Of an hour that was interrupted: pain that stands beside a done set hurts still. Open sets that
// stress its area are not asked for; another exercise in their place is there already. Where they
// went on with that area afterwards, nothing is set aside.
[[nodiscard]] ClassFloor rememberingPain(ClassFloor floor, const FloorBook& book);

// The same for the exercise under the cursor, where nothing hurts.
[[nodiscard]] std::vector<FloorChoice> otherExercises(const ClassFloor& floor,
                                                      const FloorBook& book);

// Puts another exercise in place of a cell's, with its load and number. False where it cannot be:
// other sides, no load, or none that is free.
[[nodiscard]] bool
substitute(ClassFloor& floor, const FloorBook& book, std::size_t cell, const FloorExercise& other);

} // namespace levelbar
