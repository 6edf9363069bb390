// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/base/side.h"

namespace levelbar {

std::string_view sideWord(Side side)
{
    switch (side) {
    case Side::Left:
        return "left";
    case Side::Right:
        return "right";
    case Side::Both:
        break;
    }
    return "both";
}

Result<Side> parseSide(std::string_view text)
{
    for (const Side side : {Side::Both, Side::Left, Side::Right}) {
        if (text == sideWord(side)) {
            return side;
        }
    }
    return refuse(FaultCode::NotOneOf, {excerpt(text), "left, right, both"});
}

} // namespace levelbar
