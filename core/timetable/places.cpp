// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/timetable/places.h"

#include <algorithm>

namespace levelbar {

namespace {

bool holds(const std::vector<MemberId>& list, MemberId member)
{
    return std::find(list.begin(), list.end(), member) != list.end();
}

void drop(std::vector<MemberId>& list, MemberId member)
{
    list.erase(std::remove(list.begin(), list.end(), member), list.end());
}

bool hasRoom(const MeetingPlaces& places)
{
    const auto free = freePlaces(places);
    return !free || *free > 0;
}

MovedUp moveUp(MeetingPlaces places)
{
    MovedUp result;
    while (!places.waiting.empty() && hasRoom(places)) {
        result.moved.push_back(places.waiting.front());
        places.booked.push_back(places.waiting.front());
        places.waiting.erase(places.waiting.begin());
    }
    result.places = std::move(places);
    return result;
}

} // namespace

PlaceKind placeOf(const MeetingPlaces& places, MemberId member)
{
    if (holds(places.booked, member)) {
        return PlaceKind::Booked;
    }
    if (holds(places.waiting, member)) {
        return PlaceKind::Waiting;
    }
    return holds(places.dropIns, member) ? PlaceKind::DropIn : PlaceKind::None;
}

std::optional<int> freePlaces(const MeetingPlaces& places)
{
    if (!places.capacity) {
        return std::nullopt;
    }
    return *places.capacity - static_cast<int>(places.booked.size() + places.dropIns.size());
}

MeetingPlaces book(MeetingPlaces places, MemberId member)
{
    if (placeOf(places, member) != PlaceKind::None) {
        return places;
    }
    const bool isFree = places.waiting.empty() && hasRoom(places);
    (isFree ? places.booked : places.waiting).push_back(member);
    return places;
}

MeetingPlaces letIn(MeetingPlaces places, MemberId member)
{
    const PlaceKind kind = placeOf(places, member);
    if (kind == PlaceKind::None || kind == PlaceKind::Waiting) {
        drop(places.waiting, member);
        places.dropIns.push_back(member);
    }
    return places;
}

MovedUp giveBack(MeetingPlaces places, MemberId member)
{
    drop(places.booked, member);
    drop(places.waiting, member);
    drop(places.dropIns, member);
    return moveUp(std::move(places));
}

MovedUp setCapacity(MeetingPlaces places, std::optional<int> capacity)
{
    places.capacity = capacity;
    return moveUp(std::move(places));
}

} // namespace levelbar
