// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/review/review.h"
#include "core/sides/side_indices.h"
#include "core/sides/side_planning.h"

#include <nlohmann/json.hpp>

#include <optional>
#include <vector>

namespace levelbar::cli {

// One measure of a person: what `review` and `sides` print alike.
[[nodiscard]] nlohmann::ordered_json sideJson(const SideReview& review);

// The lists, those paused or known, and what is to be asked.
[[nodiscard]] nlohmann::ordered_json sideListsJson(const Review& review);

// `plans` by place in member.sides; nothing where none can be made.
[[nodiscard]] nlohmann::ordered_json
memberSidesJson(const MemberReview& member, const std::vector<std::optional<SidePlan>>& plans);

[[nodiscard]] nlohmann::ordered_json measureJson(const MeasureSteadiness& measure);

// The estimated difference as two values, the stronger 1: indices need no more than their ratio.
[[nodiscard]] BothSides bothSidesOf(const SideReview& review);

} // namespace levelbar::cli
