// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/fault.h"

#include <cmath>
#include <compare>
#include <cstdint>
#include <string>
#include <string_view>

namespace levelbar {

// The numbers are stored; do not change them.
enum class MassUnit { Kilogram = 0, Pound = 1 };

// International avoirdupois pound, exact by definition (1959 yard and pound agreement).
inline constexpr double kKilogramsPerPound = 0.45359237;

// A mass as it was typed: thousandths of its own unit, so that 135 lb stays 135 lb and comes
// back to the last digit; 60 and 60.0 are the same. Comparing two masses by == asks whether the
// same thing was typed; compare kilograms() to ask which is heavier.
class Mass {
public:
    constexpr Mass() = default;

    [[nodiscard]] static constexpr Mass ofThousandths(std::int64_t thousandths, MassUnit unit)
    {
        return Mass(thousandths, unit);
    }

    // Rounded to the nearest gram.
    [[nodiscard]] static Mass ofKilograms(double kilograms)
    {
        return Mass(static_cast<std::int64_t>(std::llround(kilograms * 1000.0)),
                    MassUnit::Kilogram);
    }

    [[nodiscard]] constexpr std::int64_t thousandths() const { return m_thousandths; }

    [[nodiscard]] constexpr MassUnit unit() const { return m_unit; }

    [[nodiscard]] constexpr double kilograms() const
    {
        const double typed = static_cast<double>(m_thousandths) / 1000.0;
        return m_unit == MassUnit::Pound ? typed * kKilogramsPerPound : typed;
    }

    // The typed number with a point and no needless zeros: "62.5", "135", "0".
    [[nodiscard]] std::string number() const;

    friend constexpr bool operator==(const Mass&, const Mass&) = default;

private:
    constexpr Mass(std::int64_t thousandths, MassUnit unit)
        : m_thousandths(thousandths)
        , m_unit(unit)
    {
    }

    std::int64_t m_thousandths = 0;
    MassUnit m_unit = MassUnit::Kilogram;
};

// "kg", "lb".
[[nodiscard]] std::string_view unitWord(MassUnit unit);
[[nodiscard]] Result<MassUnit> parseMassUnit(std::string_view text);

// A load: 0 to 1000 kg or the same in pounds, at most three decimals, point as decimal mark.
[[nodiscard]] Result<Mass> parseMass(std::string_view number, MassUnit unit);

} // namespace levelbar
