// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cmath>
#include <compare>

namespace levelbar {

// A height or a length in tenths of a millimetre: holes 2 in apart and statures in centimetres
// with two decimals are both whole.
struct Length {
    int tenthMillimetres = 0;

    friend constexpr auto operator<=>(const Length&, const Length&) = default;

    [[nodiscard]] constexpr double metres() const { return tenthMillimetres / 10000.0; }

    [[nodiscard]] static constexpr Length ofMillimetres(int millimetres)
    {
        return {millimetres * 10};
    }

    // Rounded to the nearest tenth of a millimetre; within 200 km.
    [[nodiscard]] static Length ofMetres(double metres)
    {
        return {static_cast<int>(std::lround(metres * 10000.0))};
    }
};

} // namespace levelbar
