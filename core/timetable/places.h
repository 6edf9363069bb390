// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/id.h"

#include <optional>
#include <vector>

namespace levelbar {

// The places of one meeting. Nobody is in two of the lists, or twice in one.
struct MeetingPlaces {
    std::optional<int> capacity; // nothing: as many as come
    std::vector<MemberId> booked;
    std::vector<MemberId> waiting; // the longest first
    std::vector<MemberId> dropIns; // came unbooked, and were let in

    friend bool operator==(const MeetingPlaces&, const MeetingPlaces&) = default;
};

enum class PlaceKind { None, Booked, Waiting, DropIn };

[[nodiscard]] PlaceKind placeOf(const MeetingPlaces& places, MemberId member);

// Places nobody has; below 0 when more were let in than there are. Nothing: no limit.
[[nodiscard]] std::optional<int> freePlaces(const MeetingPlaces& places);

// Books, or puts last on the waiting list when the meeting is full or others wait. Who has a
// place already keeps it.
[[nodiscard]] MeetingPlaces book(MeetingPlaces places, MemberId member);

// Lets somebody in who comes unbooked, also over the capacity: the instructor at the door decides.
// Who waited leaves the waiting list; who is booked stays so.
[[nodiscard]] MeetingPlaces letIn(MeetingPlaces places, MemberId member);

// The lists after a change, and who got a place by it, in the order of waiting.
struct MovedUp {
    MeetingPlaces places;
    std::vector<MemberId> moved;
};

// Gives a place back; the longest waiting move up as far as there are places.
[[nodiscard]] MovedUp giveBack(MeetingPlaces places, MemberId member);

// More places move people up; fewer take nobody's place away.
[[nodiscard]] MovedUp setCapacity(MeetingPlaces places, std::optional<int> capacity);

} // namespace levelbar
