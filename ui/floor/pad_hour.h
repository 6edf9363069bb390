// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/floor/class_floor.h"
#include "storage/logbook.h"
#include "ui/floor/floor_sheet.h"

#include <map>
#include <set>
#include <utility>

namespace levelbar::ui {

// Where somebody stands, and the number they wear.
struct FloorPlace {
    int bib = 1;
    int rack = 1;
    int turn = 1;

    friend bool operator==(const FloorPlace&, const FloorPlace&) = default;
};

using FloorPlaces = std::map<MemberId, FloorPlace>;

// Which hole of the hooks somebody used last.
using HookHoles = std::map<std::pair<MemberId, ExerciseId>, int>;

// Gives everyone of the sheet a bib and a place. Bibs stay. While nobody has lifted, people are
// shared among the racks so that few plates move; after that everybody stays where they are and
// who comes goes where fewest stand.
[[nodiscard]] FloorPlaces placesOf(const FloorSheet& sheet,
                                   const FloorReference& reference,
                                   int racks,
                                   const FloorPlaces& before);

// The sheet as the pad's hour: a round a column, the side that starts before the other one.
[[nodiscard]] ClassFloor hourOf(const FloorSheet& sheet,
                                const FloorReference& reference,
                                const FloorPlaces& places,
                                int racks);

// What the store says now, with what only the pad knows: easy day, late, left, pain, swaps, kit
// gone, cursor. before: what the store said when `running` began from it.
[[nodiscard]] ClassFloor
takenOver(const ClassFloor& running, const ClassFloor& before, ClassFloor now);

// Writes places and what the pad made of the cells into the sheet, rows by rack and turn.
void layHour(FloorSheet& sheet, const ClassFloor& hour, const std::set<CellKey>& eyes);

// Exercises and kit: what does not change during the hour. Nobody is in it yet. Throws StoreError.
[[nodiscard]] FloorBook
readBook(const storage::Logbook& logbook, const FloorReference& reference, const FloorSheet& sheet);

// Somebody's usual loads, and the holes of their hooks. Throws StoreError.
void addPerson(const storage::Logbook& logbook, MemberId member, FloorBook& book, HookHoles& holes);

[[nodiscard]] CellKey keyOf(const PlannedSet& planned);
[[nodiscard]] const FloorCell* cellOf(const FloorSheet& sheet, const CellKey& key);

} // namespace levelbar::ui
