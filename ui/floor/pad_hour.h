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

// Before the first set is keyed; assumed.
inline constexpr int kWarmUpMinutes = 10;

// Which hole of the hooks somebody used last.
using HookHoles = std::map<std::pair<MemberId, ExerciseId>, int>;

// What set-up cards say, by person and exercise.
using RackSettings = std::map<std::pair<MemberId, ExerciseId>, RackSetting>;

[[nodiscard]] bool hasLifted(const FloorRow& row);

// Gives everyone of the sheet a bib and a place. Bibs stay. While nobody has lifted, people are
// shared among the racks so that few plates and hooks move, and so that those who must not share
// one don't; after that everybody stays where they are and
// who comes goes where fewest stand.
[[nodiscard]] FloorPlaces placesOf(const FloorSheet& sheet,
                                   const FloorReference& reference,
                                   int racks,
                                   const FloorPlaces& before,
                                   const RackSettings& settings = {});

// The sheet as the pad's hour: a round a column, the side that starts before the other one.
[[nodiscard]] ClassFloor hourOf(const FloorSheet& sheet,
                                const FloorReference& reference,
                                const FloorPlaces& places,
                                int racks);

// What the store says now, with what only the pad knows: easy day, late, left, pain, swaps, kit
// gone, cursor. before: what the store said when `running` began from it.
[[nodiscard]] ClassFloor
takenOver(const ClassFloor& running, const ClassFloor& before, ClassFloor now);

// Somebody's own place where all their sets stand; else that of their next set.
[[nodiscard]] FloorPlace placeNow(const ClassFloor& hour, const FloorPerson& who);

// Writes places and what the pad made of the cells into the sheet, rows by rack and turn.
void layHour(FloorSheet& sheet, const ClassFloor& hour, const std::set<CellKey>& eyes);

// Exercises and kit: what does not change during the hour. Nobody is in it yet. Throws StoreError.
[[nodiscard]] FloorBook
readBook(const storage::Logbook& logbook, const FloorReference& reference, const FloorSheet& sheet);

// Somebody's usual loads, and the holes of their hooks. Throws StoreError.
void addPerson(const storage::Logbook& logbook, MemberId member, FloorBook& book, HookHoles& holes);

[[nodiscard]] CellKey keyOf(const PlannedSet& planned);
// Null when there is none.
[[nodiscard]] const PadCell* padCellOf(const ClassFloor& hour, const CellKey& key);
[[nodiscard]] const FloorCell* cellOf(const FloorSheet& sheet, const CellKey& key);

} // namespace levelbar::ui
