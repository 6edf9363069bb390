// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/class_hour.h"

#include "core/floor/floor_order.h"

#include <algorithm>
#include <array>

namespace levelbar::tests {

namespace {

FloorExercise exercise(ExerciseId id,
                       const char* name,
                       Pattern pattern,
                       Implement implement,
                       StationKind needs,
                       std::vector<std::string> areas)
{
    FloorExercise made;
    made.exercise.id = id;
    made.exercise.name = name;
    made.exercise.pattern = pattern;
    made.exercise.implement = implement;
    made.exercise.load = implement == Implement::BodyWeight ? LoadKind::Added : LoadKind::External;
    made.areas = std::move(areas);
    made.needs = needs;
    return made;
}

PadCell cellFor(int bib, int round, int station, int turn, ExerciseId exercise, double kilograms)
{
    PadCell cell;
    cell.planned.member = {bib};
    cell.planned.exercise = exercise;
    cell.planned.number = round;
    cell.planned.load = Mass::ofKilograms(kilograms);
    cell.planned.amount = 8;
    cell.round = round;
    cell.station = station;
    cell.turn = turn;
    return cell;
}

FloorPerson someone(int bib, int station)
{
    FloorPerson made;
    made.member = {bib};
    made.bib = bib;
    made.name = "P" + std::to_string(bib);
    made.station = station;
    return made;
}

bool isSameSet(const DoneSet& a, const DoneSet& b)
{
    return a.member == b.member && a.exercise == b.exercise && a.side == b.side &&
           a.performed.number == b.performed.number;
}

} // namespace

FloorBook gymBook()
{
    using enum Pattern;
    using Tool = Implement;
    using Place = StationKind;
    FloorBook book;
    book.day = Day{20800};
    book.meeting = {1};
    book.initials = "AB";
    book.kit = assumedKit();
    book.kit.isAssumed = false; // said, and so many
    const std::vector<std::string> press = {"shoulder", "chest", "elbow"};
    const std::vector<std::string> legs = {"knee", "hip"};
    book.exercises = {
        exercise(kBench, "Barbell bench press", HorizontalPress, Tool::Barbell, Place::Rack, press),
        exercise(
            kBarbellRow, "Barbell row", HorizontalPull, Tool::Barbell, Place::Rack, {"lower back"}),
        exercise(kSquat, "Back squat", Squat, Tool::Barbell, Place::Rack, legs),
        exercise(
            kDumbbellPress, "Dumbbell press", HorizontalPress, Tool::Dumbbell, Place::Bench, press),
        exercise(
            kDumbbellRow, "Dumbbell row", HorizontalPull, Tool::Dumbbell, Place::Bench, {"elbow"}),
        exercise(kGoblet, "Goblet squat", Squat, Tool::Kettlebell, Place::Open, legs),
        exercise(kPushUp, "Push-up", HorizontalPress, Tool::BodyWeight, Place::Open, press),
        exercise(
            kFloorPress, "Floor press", HorizontalPress, Tool::Barbell, Place::Rack, {"elbow"}),
        exercise(kSitToStand, "Sit-to-stand", Squat, Tool::BodyWeight, Place::Open, {}),
        exercise(kBridge, "Bridge", Hinge, Tool::BodyWeight, Place::Open, {"lower back"}),
        exercise(kPlankReach, "Plank reach", Trunk, Tool::BodyWeight, Place::Open, {"abdomen"}),
        exercise(kCurl, "Biceps curl", VerticalPull, Tool::Dumbbell, Place::Open, {}),
        exercise(kDumbbellFloorPress,
                 "Dumbbell floor press",
                 HorizontalPress,
                 Tool::Dumbbell,
                 Place::Open,
                 {"elbow"}),
    };
    return book;
}

ClassFloor fullClass()
{
    ClassFloor floor;
    for (int number = 1; number <= 10; ++number) {
        floor.stations.push_back(
            {number, number <= 6 ? StationKind::Rack : StationKind::Bench, true});
    }
    constexpr std::array kRackWork = {kBench, kBarbellRow, kSquat};
    constexpr std::array kBenchWork = {kDumbbellPress, kDumbbellRow, kGoblet};
    for (int bib = 1; bib <= 22; ++bib) {
        const int station = (bib - 1) % 10 + 1;
        const int turn = (bib - 1) / 10 + 1;
        floor.people.push_back(someone(bib, station));
        for (int round = 1; round <= 9; ++round) {
            const auto block = static_cast<std::size_t>((round - 1) / 3);
            const bool isRack = station <= 6;
            const double load = isRack ? 30.0 + 2.5 * bib : (block == 2 ? 12.0 : 6.0 + 2.0 * turn);
            floor.cells.push_back(cellFor(
                bib, round, station, turn, isRack ? kRackWork[block] : kBenchWork[block], load));
            floor.cells.back().planned.number = (round - 1) % 3 + 1;
        }
    }
    for (int round = 1; round <= 9; ++round) {
        floor.roundEnds.push_back(10 + 5 * round);
    }
    return floor;
}

ClassFloor
smallClass(const std::vector<Station>& stations, const std::vector<int>& places, int rounds)
{
    ClassFloor floor;
    floor.stations = stations;
    std::vector<int> turns(100);
    for (std::size_t i = 0; i < places.size(); ++i) {
        const int bib = static_cast<int>(i) + 1;
        const int turn = ++turns[static_cast<std::size_t>(places[i])];
        floor.people.push_back(someone(bib, places[i]));
        const bool isRack = station(floor, places[i])->kind == StationKind::Rack;
        for (int round = 1; round <= rounds; ++round) {
            floor.cells.push_back(cellFor(bib,
                                          round,
                                          places[i],
                                          turn,
                                          isRack ? kBench : kDumbbellPress,
                                          isRack ? 40.0 : 10.0));
            floor.cells.back().planned.amount = isRack ? 8 : 10;
        }
    }
    for (int round = 1; round <= rounds; ++round) {
        floor.roundEnds.push_back(10 + 5 * round);
    }
    return floor;
}

PadOutcome Keyboard::press(const PadKey& key)
{
    ++m_keys;
    const Moment at{1'000'000'000'000 + 60'000 * static_cast<std::int64_t>(m_minute) + m_keys};
    PadOutcome outcome = levelbar::press(m_pad, m_book, key, {at, m_minute});
    m_pad = outcome.pad;
    const auto remove = [this](const DoneSet& gone) {
        m_stored.erase(std::remove_if(m_stored.begin(),
                                      m_stored.end(),
                                      [&gone](const DoneSet& set) { return isSameSet(set, gone); }),
                       m_stored.end());
    };
    for (const auto* list : {&outcome.takenBack, &outcome.recorded}) {
        std::for_each(list->begin(), list->end(), remove);
    }
    for (const auto* list : {&outcome.restored, &outcome.recorded}) {
        m_stored.insert(m_stored.end(), list->begin(), list->end());
    }
    return outcome;
}

PadOutcome Keyboard::type(std::string_view keys)
{
    PadOutcome outcome;
    for (const char key : keys) {
        switch (key) {
        case '\n':
            outcome = press({PadKey::Kind::Enter, ' ', false});
            break;
        case '\b':
            outcome = press({PadKey::Kind::Erase, ' ', false});
            break;
        case '\x1b':
            outcome = press({PadKey::Kind::Abandon, ' ', false});
            break;
        default:
            outcome = press({PadKey::Kind::Character, key, false});
        }
    }
    return outcome;
}

PadOutcome Keyboard::hold(PadKey::Kind kind, int times)
{
    PadOutcome outcome = press({kind, ' ', false});
    for (int i = 0; i < times; ++i) {
        outcome = press({kind, ' ', true});
    }
    return outcome;
}

std::string saidText(const PadOutcome& outcome)
{
    return sentence(outcome.said);
}

} // namespace levelbar::tests
