// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/base/mass.h"

#include "core/base/number.h"

namespace levelbar {

namespace {

constexpr int kDecimals = 3;
constexpr std::int64_t kHeaviestKilograms = 1'000'000; // thousandths: 1000 kg
constexpr std::int64_t kHeaviestPounds = 2'204'622;    // the same in pounds, rounded down

} // namespace

std::string Mass::number() const
{
    return decimalText(m_thousandths, kDecimals);
}

std::string_view unitWord(MassUnit unit)
{
    return unit == MassUnit::Pound ? "lb" : "kg";
}

Result<MassUnit> parseMassUnit(std::string_view text)
{
    if (text == "kg") {
        return MassUnit::Kilogram;
    }
    if (text == "lb") {
        return MassUnit::Pound;
    }
    return refuse(FaultCode::NotOneOf, {excerpt(text), "kg, lb"});
}

Result<Mass> parseMass(std::string_view number, MassUnit unit)
{
    const std::int64_t heaviest = unit == MassUnit::Pound ? kHeaviestPounds : kHeaviestKilograms;
    return parseDecimal(number, kDecimals, 0, heaviest).map([unit](std::int64_t thousandths) {
        return Mass::ofThousandths(thousandths, unit);
    });
}

} // namespace levelbar
