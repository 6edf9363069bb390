// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/side.h"

namespace levelbar {

// Where a side stands in the strength model: ln 1RM of a side is the level of both plus this times
// ln(right / left).
[[nodiscard]] constexpr double sideOffset(Side side)
{
    return side == Side::Left ? -0.5 : (side == Side::Right ? 0.5 : 0.0);
}

} // namespace levelbar
