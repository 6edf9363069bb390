// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/gym/setup_proposal.h"
#include "core/gym/stations.h"
#include "storage/logbook.h"

#include <vector>

namespace levelbar::ui {

// What a set-up is proposed from: the gym's racks and benches, and what others confirmed.
struct SetupSources {
    std::vector<Rack> racks; // an assumed one where the gym has none
    bool isAssumed = false;
    std::vector<int> angles;         // of all benches, ascending
    std::vector<SetupExample> hooks; // only of racks that are there
    std::vector<SetupExample> safeties;
    std::vector<int> otherAngles;
};

// Throws StoreError.
[[nodiscard]] SetupSources
readSetupSources(const storage::Logbook& logbook, ExerciseId exercise, MemberId member);

[[nodiscard]] BodySize bodySizeOf(const Member& member, std::optional<Mass> bodyMass);

} // namespace levelbar::ui
