// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "demo-data/demo_loads.h"

#include <algorithm>
#include <cmath>

namespace levelbar::demo {

double shareFor(double reps)
{
    const auto plain = [](double r) { return 0.488 + 0.538 * std::exp(-0.075 * r); };
    return plain(std::max(1.0, reps)) / plain(1.0);
}

double repsAt(double share, double factor)
{
    if (share >= 1.0) {
        return 1.0 - (share - 1.0) / 0.04;
    }
    double low = 1.0;
    double high = 45.0;
    for (int step = 0; step < 40; ++step) {
        const double middle = 0.5 * (low + high);
        (shareFor(middle) > share ? low : high) = middle;
    }
    return 1.0 + (low - 1.0) * factor;
}

double nearest(Kind kind, double kilograms, bool isPounds)
{
    if (isPounds) {
        return std::max(10.0, std::round(kilograms / 0.45359237 / 5.0) * 5.0);
    }
    switch (kind) {
    case Kind::Barbell:
        return std::max(20.0, std::round(kilograms / 2.5) * 2.5);
    case Kind::Dumbbell:
        return kilograms < 11.0 ? std::max(2.0, std::round(kilograms))
                                : std::max(12.0, std::round(kilograms / 2.0) * 2.0);
    case Kind::Stack:
        return std::max(5.0, std::round(kilograms / 5.0) * 5.0);
    case Kind::PushUp:
    case Kind::Seconds:
        return 0.0;
    case Kind::Metres:
        return std::max(8.0, std::round(kilograms / 2.0) * 2.0);
    }
    return kilograms;
}

} // namespace levelbar::demo
