// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace levelbar {

// The share of cases in which an interval of ours holds the truth.
inline constexpr double kLevel = 0.90;

// A number with its doubt: the centre, the interval that holds the truth `level` of the time,
// and how many observations stand behind it. low <= value <= high, all finite.
struct Estimate {
    double value = 0.0;
    double low = 0.0;
    double high = 0.0;
    double level = kLevel;
    int count = 0;

    friend bool operator==(const Estimate&, const Estimate&) = default;
};

} // namespace levelbar
