// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/fault.h"
#include "core/base/id.h"
#include "core/gym/stations.h"

#include <optional>
#include <string>

namespace levelbar {

// How one person's station is set up for one exercise. What is not known is empty.
struct SetupCard {
    MemberId member;
    ExerciseId exercise;
    std::optional<RackId> rack;    // whose holes are meant
    std::optional<int> hookHole;   // 1 = lowest, to 99
    std::optional<int> safetyHole; // as above
    std::optional<int> benchAngle; // degrees, -45 (decline) to 90
    std::string gripMark;          // "index finger on the ring"
    std::string footPosition;
    std::string note;
    bool isConfirmed = false; // somebody tried it; else it was only proposed

    friend bool operator==(const SetupCard&, const SetupCard&) = default;
};

// OutOfRange: a hole or an angle. TooLong (more than 60 characters; the note 200),
// ControlCharacter, NotUtf8: the texts.
[[nodiscard]] Result<SetupCard> checkSetupCard(SetupCard card);

// The hole of another rack at the height of a card's hole.
[[nodiscard]] int sameHeightHole(const RackHoles& from, int hole, const RackHoles& on);

} // namespace levelbar
