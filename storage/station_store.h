// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/gym/gone_today.h"
#include "core/gym/stations.h"
#include "storage/action.h"

#include <vector>

namespace levelbar::storage {

// Rooms, racks and benches, and what of all the gym owns is gone on a day. Values must have passed
// their check of stations.h. Who uses which rack is not stored.
class StationStore {
public:
    explicit StationStore(const Logbook& logbook)
        : m_logbook(logbook)
    {
    }

    [[nodiscard]] Stations all() const; // each by when it was added
    [[nodiscard]] std::vector<GonePieces> goneOn(Day day) const;

    // Adds one that is not stored yet, else changes it. Constraint when the name is taken.
    static RoomId put(WriteScope& scope, const Room& room);
    static RackId put(WriteScope& scope, const Rack& rack);
    static BenchId put(WriteScope& scope, const Bench& bench);

    // What stands in a room stays, without one. Set-up cards of a rack lose it and are no longer
    // confirmed: their holes were that rack's.
    static void remove(WriteScope& scope, RoomId room);
    static void remove(WriteScope& scope, RackId rack);
    static void remove(WriteScope& scope, BenchId bench);

    // How many of these are gone on a day; 0: none.
    static void setGone(WriteScope& scope, Day day, const PieceKey& key, int count);

private:
    const Logbook& m_logbook;
};

} // namespace levelbar::storage
