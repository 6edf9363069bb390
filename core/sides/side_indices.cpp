// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sides/side_indices.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace levelbar {

namespace {

constexpr double kPercent = 100.0;

bool isAboveZero(double value)
{
    return std::isfinite(value) && value > 0.0;
}

// What is wrong with the values, if anything.
Result<BothSides> inDomain(const BothSides& sides)
{
    for (const double value : {sides.left, sides.right}) {
        if (!isAboveZero(value)) {
            return refuse(FaultCode::NotInDomain, {fmt::format("{}", value), "above 0"});
        }
    }
    return sides;
}

// The named side's value first.
Result<std::pair<double, double>> inOrder(const BothSides& sides, Side first)
{
    const auto valid = inDomain(sides);
    if (!valid) {
        return tl::unexpected(valid.error());
    }
    switch (first) {
    case Side::Left:
        return std::pair(sides.left, sides.right);
    case Side::Right:
        return std::pair(sides.right, sides.left);
    case Side::Both:
        break;
    }
    return refuse(FaultCode::NotInDomain, {std::string(sideWord(first)), "left or right"});
}

double weaker(const BothSides& sides)
{
    return std::min(sides.left, sides.right);
}

double stronger(const BothSides& sides)
{
    return std::max(sides.left, sides.right);
}

// (a - b) / (a + b), scaled first so that no sum overflows.
double shareOfTotal(double a, double b)
{
    const double scale = std::max(a, b);
    return (a / scale - b / scale) / (a / scale + b / scale);
}

} // namespace

Result<double> limbSymmetryIndex(const BothSides& sides)
{
    return inDomain(sides).map(
        [](const BothSides& s) { return kPercent * (weaker(s) / stronger(s)); });
}

Result<double> involvedLimbIndex(const BothSides& sides, Side involved)
{
    const auto values = inOrder(sides, involved);
    if (!values) {
        return tl::unexpected(values.error());
    }
    const double index = kPercent * (values->first / values->second);
    if (!isAboveZero(index)) {
        return refuse(FaultCode::NotInDomain, {fmt::format("{}", index), "a finite ratio"});
    }
    return index;
}

Result<double> percentageDifference(const BothSides& sides)
{
    return inDomain(sides).map(
        [](const BothSides& s) { return kPercent * ((stronger(s) - weaker(s)) / stronger(s)); });
}

Result<double> bilateralStrengthAsymmetry(const BothSides& sides)
{
    return percentageDifference(sides);
}

Result<double> bilateralAsymmetryIndex(const BothSides& sides, Side dominant)
{
    return inOrder(sides, dominant).map([](const std::pair<double, double>& values) {
        return kPercent * shareOfTotal(values.first, values.second);
    });
}

Result<double> doubledAsymmetryIndex(const BothSides& sides, Side dominant)
{
    return bilateralAsymmetryIndex(sides, dominant).map([](double index) { return 2.0 * index; });
}

Result<double> shareOfTotalIndex(const BothSides& sides)
{
    return inDomain(sides).map(
        [](const BothSides& s) { return kPercent * shareOfTotal(stronger(s), weaker(s)); });
}

Result<double> symmetryIndex(const BothSides& sides)
{
    return inDomain(sides).map(
        [](const BothSides& s) { return 2.0 * kPercent * shareOfTotal(s.right, s.left); });
}

Result<double> symmetryAngle(const BothSides& sides)
{
    return inDomain(sides).map([](const BothSides& s) {
        constexpr double kRightAngle = std::numbers::pi / 2.0;
        return kPercent * (kRightAngle / 2.0 - std::atan2(s.left, s.right)) / kRightAngle;
    });
}

Result<double> logRatioIndex(const BothSides& sides)
{
    // Two logarithms: the ratio of extreme values would overflow.
    return inDomain(sides).map(
        [](const BothSides& s) { return kPercent * (std::log(s.right) - std::log(s.left)); });
}

const std::array<SideIndex, 7>& sideIndices()
{
    static constexpr std::array<SideIndex, 7> kIndices = {{
        {"Percentage difference", percentageDifference, false},
        {"Limb symmetry index", limbSymmetryIndex, false},
        {"Bilateral strength asymmetry", bilateralStrengthAsymmetry, false},
        {"Share of the total", shareOfTotalIndex, false},
        {"Symmetry index", symmetryIndex, true},
        {"Symmetry angle", symmetryAngle, true},
        {"Log ratio", logRatioIndex, true},
    }};
    return kIndices;
}

} // namespace levelbar
