// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/bodyweight/out_of_range.h"

#include "core/base/number.h"

#include <algorithm>
#include <cmath>

namespace levelbar {

tl::unexpected<Fault> outOfRange(double value, double least, double most, int decimals)
{
    if (!std::isfinite(value)) {
        return refuse(FaultCode::NotANumber, {std::to_string(value)});
    }
    const double scale = std::pow(10.0, decimals);
    const auto text = [scale, decimals](double number) {
        constexpr double kMostWritten = 1e9;
        const double written = std::clamp(number, -kMostWritten, kMostWritten);
        return decimalText(std::llround(written * scale), decimals);
    };
    return refuse(FaultCode::OutOfRange, {text(value), text(least), text(most)});
}

} // namespace levelbar
