// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/day.h"
#include "core/base/id.h"

#include <optional>
#include <string>

namespace levelbar {

using FollowUpId = Id<struct FollowUpTag>;

// Something the instructor wrote down to do.
struct FollowUp {
    FollowUpId id;
    std::string text;  // 1 to kLongestFollowUp characters, one line
    std::string owner; // who does it; may be empty
    Day written;
    Day due;
    std::optional<Day> done;
    std::optional<MemberId> member;
    std::optional<MeetingId> meeting;

    friend bool operator==(const FollowUp&, const FollowUp&) = default;
};

inline constexpr int kLongestFollowUp = 500;

} // namespace levelbar
