// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/base/share.h"

#include "core/base/distributions.h"

#include <algorithm>
#include <cmath>

namespace levelbar {

std::optional<Estimate> shareOf(int part, int whole, double level)
{
    if (whole < 1 || part < 0 || part > whole) {
        return std::nullopt;
    }
    const double z = normalQuantile(0.5 + level / 2.0);
    const double n = whole;
    const double share = part / n;
    const double scale = 1.0 / (1.0 + z * z / n);
    const double centre = scale * (share + z * z / (2.0 * n));
    const double reach = scale * z * std::sqrt(share * (1.0 - share) / n + z * z / (4.0 * n * n));
    // The ends meet the share exactly at none and all, but for rounding.
    return Estimate{share,
                    std::clamp(centre - reach, 0.0, share),
                    std::clamp(centre + reach, share, 1.0),
                    level,
                    whole};
}

} // namespace levelbar
