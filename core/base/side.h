// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/fault.h"

#include <string_view>

namespace levelbar {

// Which side of the body did the work. The numbers are stored; do not change them.
enum class Side { Both = 0, Left = 1, Right = 2 };

// "both", "left", "right": the words of the outside face.
[[nodiscard]] std::string_view sideWord(Side side);
[[nodiscard]] Result<Side> parseSide(std::string_view text);

// Left for Right and the other way round; Both stays Both.
[[nodiscard]] constexpr Side otherSide(Side side)
{
    switch (side) {
    case Side::Left:
        return Side::Right;
    case Side::Right:
        return Side::Left;
    case Side::Both:
        break;
    }
    return Side::Both;
}

} // namespace levelbar
