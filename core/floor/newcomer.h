// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/floor/floor_change.h"

#include <array>

namespace levelbar {

// Somebody who comes for the first time and has not agreed to be written down: a bib, no name.
// They get body-weight and light dumbbell work of the patterns the class does, at the bench or open
// place with fewest people (beside a rack where there is nothing else), from the round of the keys
// on, and are said to be not screened. Their member id is -bib until a person is made of them.
// RepeatedBib; NoStation (nowhere to stand).
[[nodiscard]] Result<FloorChange>
addNewcomer(const ClassFloor& floor, const FloorBook& book, int bib);

// Asked before the first set. They are no screening: the words "not screened" stay.
[[nodiscard]] const std::array<std::string_view, 3>& newcomerQuestions();

// The answers, yes or no. With any yes all their sets wait: speak with them first.
[[nodiscard]] FloorChange
answerQuestions(const ClassFloor& floor, MemberId member, const std::array<bool, 3>& isYes);

} // namespace levelbar
