// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/exercise/effort.h"
#include "core/exercise/exercise_detail.h"
#include "core/floor/floor_person.h"
#include "core/gym/available_loads.h"
#include "core/plan/class_plan.h"

#include <cstdint>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace levelbar {

enum class StationKind { Rack, Bench, Open }; // Open: floor space, needs nothing

struct Station {
    int number = 1; // as written on it; racks and benches share the numbers
    StationKind kind = StationKind::Rack;
    bool isThere = true;

    friend bool operator==(const Station&, const Station&) = default;
};

// Why a set is not asked for any more. Such a cell was not missed.
enum class NotAsked { EasyDay, NotYetHere, NoMaximum, ShorterWarmUp, Left, Pain, NoKit };

// A set of the hour. Neither done nor set aside: not known.
struct PadCell {
    PlannedSet planned;
    int round = 1;
    int station = 1; // Station::number
    int turn = 1;    // within the station's round
    SetKind kind = SetKind::Work;
    std::optional<DoneSet> done;
    std::optional<NotAsked> setAside;
    bool isHeld = false; // waits for a choice: no key takes it as planned

    friend bool operator==(const PadCell&, const PadCell&) = default;

    [[nodiscard]] bool isOpen() const { return !done && !setAside; }
};

// Plates (Implement::Barbell), dumbbells or kettlebells of one mass.
struct Piece {
    Implement implement = Implement::Barbell;
    std::int64_t exact = 0; // see exactWeight
    Mass mass;
    int count = 1; // single pieces

    friend bool operator==(const Piece&, const Piece&) = default;
};

// The hour on the floor: a plain value, so that taking back is putting back.
struct ClassFloor {
    std::vector<Station> stations; // in the order in which they are walked past
    std::vector<FloorPerson> people;
    std::vector<PadCell> cells;        // by round, station, turn: see sortCells
    std::vector<int> roundEnds;        // minute of the hour by which each round should be done
    std::vector<Piece> missing;        // owned, but not here today
    std::optional<std::size_t> cursor; // index into cells
    int round = 1;                     // in which the keys are

    friend bool operator==(const ClassFloor&, const ClassFloor&) = default;
};

// An exercise as the floor needs it.
struct FloorExercise {
    Exercise exercise;
    std::vector<std::string> areas; // it stresses: words of bodyAreas()
    StationKind needs = StationKind::Open;
    std::shared_ptr<const AvailableLoads> loads; // see withLoads
};

// What does not change during the hour.
struct FloorBook {
    std::vector<FloorExercise> exercises; // in the order in which they are proposed
    Kit kit;
    MeetingId meeting;
    Day day;
    std::string initials; // who keys
    // What people last lifted in other exercises; nothing known: the lightest there is.
    std::map<std::pair<MemberId, ExerciseId>, Mass> usualLoads;
    EffortScale scale = EffortScale::Reserve;
    int turnSeconds = 90; // one person's turn: see turn_seconds.h

    // Null when it is not in the book.
    [[nodiscard]] const FloorExercise* find(ExerciseId id) const;
};

// Lists the loads of every exercise once, of the kit as it is; to be called before the hour, and
// again when the kit changes.
[[nodiscard]] FloorBook withLoads(FloorBook book);

// Null when nobody, or no station, is there by that number.
[[nodiscard]] const FloorPerson* personWithBib(const ClassFloor& floor, int bib);
[[nodiscard]] const FloorPerson* person(const ClassFloor& floor, MemberId member);
[[nodiscard]] FloorPerson* person(ClassFloor& floor, MemberId member);
[[nodiscard]] const Station* station(const ClassFloor& floor, int number);

[[nodiscard]] bool hasLifted(const ClassFloor& floor, MemberId member);

} // namespace levelbar
