// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cmath>

namespace levelbar::cli {

// Decimals that carry nothing are left out; -0 becomes 0.
[[nodiscard]] inline double rounded(double value, int decimals)
{
    const double scale = std::pow(10.0, decimals);
    const double result = std::round(value * scale) / scale;
    return result == 0.0 ? 0.0 : result;
}

} // namespace levelbar::cli
