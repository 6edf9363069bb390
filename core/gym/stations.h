// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/fault.h"
#include "core/base/id.h"
#include "core/gym/rack_holes.h"

#include <optional>
#include <string>
#include <vector>

namespace levelbar {

using RoomId = Id<struct RoomTag>;
using RackId = Id<struct RackTag>;
using BenchId = Id<struct BenchTag>;

struct Room {
    RoomId id;
    std::string name;

    friend bool operator==(const Room&, const Room&) = default;
};

// Racks that are alike; who uses which is for the day to say.
struct Rack {
    RackId id;
    std::optional<RoomId> room;
    std::string name;
    RackHoles holes{Length::ofMillimetres(300), Length::ofMillimetres(50), 30};
    int count = 1;

    friend bool operator==(const Rack&, const Rack&) = default;
};

// Benches that are alike.
struct Bench {
    BenchId id;
    std::optional<RoomId> room;
    std::string name;
    std::vector<int> angles{0}; // degrees, -45 (decline) to 90; ascending, each once
    int count = 1;

    friend bool operator==(const Bench&, const Bench&) = default;
};

struct Stations {
    std::vector<Room> rooms;
    std::vector<Rack> racks;
    std::vector<Bench> benches;

    friend bool operator==(const Stations&, const Stations&) = default;

    // Null when there is none of this id.
    [[nodiscard]] const Room* room(RoomId id) const;
    [[nodiscard]] const Rack* rack(RackId id) const;
};

// What stands in for a rack while nobody has said what the gym has: holes 5 cm apart from 30 cm
// up (common practice, no source). Not stored.
[[nodiscard]] Rack assumedRack();

inline constexpr int kMostStations = 99; // of one kind
inline constexpr int kMostHoles = 99;    // as a logged hole

// Values that can be stored. Empty, TooLong, ControlCharacter, NotUtf8: the name (1 to 60
// characters). OutOfRange: a lowest hole outside 0 to 2 m, a pitch outside 5 to 300 mm, holes
// outside 1 to 99, a count outside 0 to 99, an angle outside -45 to 90, or none or more than 12 of
// them. The angles come back ascending, each once.
[[nodiscard]] Result<Room> checkRoom(Room room);
[[nodiscard]] Result<Rack> checkRack(Rack rack);
[[nodiscard]] Result<Bench> checkBench(Bench bench);

// Angles as typed: "0, 15, 30" or "0 15 30". NotAWholeNumber, OutOfRange, Empty.
[[nodiscard]] Result<std::vector<int>> parseAngles(std::string_view text);
[[nodiscard]] std::string anglesText(const std::vector<int>& angles);

// The hole whose bar lies nearest to a height; the lower of two as near. Holes must be a checked
// rack's.
[[nodiscard]] int nearestHole(const RackHoles& holes, Length height);

} // namespace levelbar
