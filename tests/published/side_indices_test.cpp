// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later

#include "core/sides/side_indices.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <limits>

namespace levelbar::side_indices_test {
namespace {

struct Worked {
    BothSides sides;
    double difference;
    double limbSymmetry;
    double symmetry;
    double shareOfTotal;
    double angle;
    double logRatio;
};

// Worked from the published formulas in exact arithmetic to the digits shown (sources:
// side_indices.h).
constexpr std::array<Worked, 5> kWorked = {{
    {{40, 50}, 20, 80, 22.2222, 11.1111, 7.0447, 22.3144},
    {{45, 50}, 10, 90, 10.5263, 5.2632, 3.3475, 10.5361},
    {{42.5, 50}, 15, 85, 16.2162, 8.1081, 5.1505, 16.2519},
    {{47.5, 50}, 5, 95, 5.1282, 2.5641, 1.6320, 5.1293},
    {{22, 25}, 12, 88, 12.766, 6.383, 4.058, 12.783},
}};

TEST(PublishedSideIndices, GiveTheirWorkedValues)
{
    for (const Worked& worked : kWorked) {
        const BothSides& sides = worked.sides;
        SCOPED_TRACE(sides.left);
        EXPECT_NEAR(percentageDifference(sides).value(), worked.difference, 1e-12);
        EXPECT_NEAR(bilateralStrengthAsymmetry(sides).value(), worked.difference, 1e-12);
        EXPECT_NEAR(limbSymmetryIndex(sides).value(), worked.limbSymmetry, 1e-12);
        EXPECT_NEAR(symmetryIndex(sides).value(), worked.symmetry, 5.1e-4);
        EXPECT_NEAR(shareOfTotalIndex(sides).value(), worked.shareOfTotal, 5.1e-4);
        EXPECT_NEAR(symmetryAngle(sides).value(), worked.angle, 5.1e-4);
        EXPECT_NEAR(logRatioIndex(sides).value(), worked.logRatio, 5.1e-4);
        EXPECT_NEAR(
            bilateralAsymmetryIndex(sides, Side::Right).value(), worked.shareOfTotal, 5.1e-4);
        EXPECT_NEAR(doubledAsymmetryIndex(sides, Side::Right).value(), worked.symmetry, 5.1e-4);
    }
}

TEST(PublishedSideIndices, OfTheInvolvedSideMayExceedAHundred)
{
    // Involved over other side (return to sport): 40 / 50 and 50 / 40.
    EXPECT_NEAR(involvedLimbIndex({40, 50}, Side::Left).value(), 80.0, 1e-12);
    EXPECT_NEAR(involvedLimbIndex({40, 50}, Side::Right).value(), 125.0, 1e-12);
}

TEST(PublishedSideIndices, SwappedSidesTurnTheSignOrChangeNothing)
{
    for (const Worked& worked : kWorked) {
        const BothSides swapped{worked.sides.right, worked.sides.left};
        for (const SideIndex& index : sideIndices()) {
            const double there = index.value(worked.sides).value();
            const double back = index.value(swapped).value();
            EXPECT_NEAR(back, index.isSigned ? -there : there, 1e-12) << index.name;
            EXPECT_GT(there, 0.0) << index.name << ": the right is stronger";
        }
        EXPECT_NEAR(bilateralAsymmetryIndex(swapped, Side::Right).value(),
                    -bilateralAsymmetryIndex(worked.sides, Side::Right).value(),
                    1e-12);
    }
}

TEST(PublishedSideIndices, AreOneAnotherConverted)
{
    // With d = |ln(right / left)|: difference = 1 - e^-d, limb symmetry = e^-d, share of the total
    // = tanh(d / 2): identities of the formulas.
    for (double right = 5.0; right < 400.0; right *= 1.37) {
        const BothSides sides{50.0, right};
        const double d = std::abs(logRatioIndex(sides).value()) / 100.0;
        EXPECT_NEAR(percentageDifference(sides).value(), 100.0 * (1.0 - std::exp(-d)), 1e-10);
        EXPECT_NEAR(limbSymmetryIndex(sides).value(), 100.0 * std::exp(-d), 1e-10);
        EXPECT_NEAR(shareOfTotalIndex(sides).value(), 100.0 * std::tanh(d / 2.0), 1e-10);
    }
}

TEST(PublishedSideIndices, RefuseWhatHasNoRatio)
{
    constexpr double kNan = std::numeric_limits<double>::quiet_NaN();
    constexpr double kInfinite = std::numeric_limits<double>::infinity();
    for (const double bad : {0.0, -1.0, kNan, kInfinite, -kInfinite}) {
        for (const BothSides& sides : {BothSides{bad, 50.0}, BothSides{50.0, bad}}) {
            for (const SideIndex& index : sideIndices()) {
                const auto refused = index.value(sides);
                ASSERT_FALSE(refused) << index.name << bad;
                EXPECT_EQ(refused.error().code, FaultCode::NotInDomain);
            }
            EXPECT_FALSE(involvedLimbIndex(sides, Side::Left));
            EXPECT_FALSE(bilateralAsymmetryIndex(sides, Side::Left));
            EXPECT_FALSE(doubledAsymmetryIndex(sides, Side::Left));
        }
    }
    EXPECT_FALSE(involvedLimbIndex({40, 50}, Side::Both));
    EXPECT_FALSE(bilateralAsymmetryIndex({40, 50}, Side::Both));
    EXPECT_FALSE(involvedLimbIndex({1e300, 1e-300}, Side::Left)) << "no finite ratio";
}

TEST(PublishedSideIndices, StayInTheirRangesAtTheExtremes)
{
    constexpr double kLeast = std::numeric_limits<double>::denorm_min();
    constexpr double kLargest = std::numeric_limits<double>::max();
    for (const BothSides& sides : {BothSides{kLeast, kLargest}, BothSides{kLargest, kLargest}}) {
        for (const SideIndex& index : sideIndices()) {
            EXPECT_TRUE(std::isfinite(index.value(sides).value())) << index.name;
        }
        EXPECT_LE(symmetryAngle(sides).value(), 50.0);
        EXPECT_LE(symmetryIndex(sides).value(), 200.0);
        EXPECT_LE(percentageDifference(sides).value(), 100.0);
    }
}

} // namespace
} // namespace levelbar::side_indices_test
