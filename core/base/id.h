// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <compare>
#include <cstdint>

namespace levelbar {

// A row's key inside one logbook: ids of different kinds do not mix. 0 means "not stored yet".
template <typename Tag> struct Id {
    std::int64_t value = 0;

    friend constexpr auto operator<=>(const Id&, const Id&) = default;

    [[nodiscard]] constexpr bool isStored() const { return value != 0; }
};

using MemberId = Id<struct MemberTag>;
using ExerciseId = Id<struct ExerciseTag>;
using ClassId = Id<struct ClassTag>;
using MeetingId = Id<struct MeetingTag>;
using TestId = Id<struct TestTag>;
using PlannedSetId = Id<struct PlannedSetTag>;
using ActionId = Id<struct ActionTag>;
using ImportId = Id<struct ImportTag>;

} // namespace levelbar
