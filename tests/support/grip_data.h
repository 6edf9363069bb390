// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/side.h"

#include <array>
#include <optional>
#include <string>
#include <vector>

namespace levelbar::tests {

// A person of the open grip data with three pairs of maximal trials: 100 ln(right / left).
struct GripPerson {
    std::array<double, 3> logPercent{};
    std::optional<Side> dominant;
};

// Everyone whose six trials are there, above zero and marked as maximal, and within an entry slip.
std::vector<GripPerson> readGripData(const std::string& path);

} // namespace levelbar::tests
