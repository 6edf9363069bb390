// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/length.h"

namespace levelbar {

// Where a bar lies on a rack. Hole 1 is the lowest. Heights are of the bar's top over the floor,
// which is where hands lie on it; safeties are counted by the same holes.
struct RackHoles {
    Length lowest; // with the bar in hole 1
    Length pitch;  // from hole to hole
    int count = 0;

    friend bool operator==(const RackHoles&, const RackHoles&) = default;

    [[nodiscard]] constexpr Length height(int hole) const
    {
        return {lowest.tenthMillimetres + (hole - 1) * pitch.tenthMillimetres};
    }
};

} // namespace levelbar
