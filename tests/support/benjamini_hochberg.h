// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <algorithm>
#include <cmath>
#include <numeric>
#include <vector>

namespace levelbar::tests {

// Which hypotheses the step-up procedure of Benjamini and Hochberg 1995 (J R Stat Soc B
// 57:289-300) rejects at a false discovery rate of q, in the order of the p values.
inline std::vector<bool> benjaminiHochberg(const std::vector<double>& p, double q)
{
    std::vector<std::size_t> order(p.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::sort(
        order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return p[a] < p[b]; });
    std::size_t rejected = 0;
    for (std::size_t rank = 1; rank <= order.size(); ++rank) {
        const double limit = q * static_cast<double>(rank) / static_cast<double>(p.size());
        rejected = p[order[rank - 1]] <= limit ? rank : rejected;
    }
    std::vector<bool> isRejected(p.size(), false);
    for (std::size_t rank = 0; rank < rejected; ++rank) {
        isRejected[order[rank]] = true;
    }
    return isRejected;
}

// P values of the claim that a difference of d, standard error e, is beyond c on d's side, against
// the claim that it is c or less: an interval null with normal noise.
inline double intervalNullP(double d, double error, double c)
{
    const auto above = [](double z) { return 0.5 * std::erfc(z / std::sqrt(2.0)); };
    return above((std::abs(d) - c) / error) + above((std::abs(d) + c) / error);
}

} // namespace levelbar::tests
