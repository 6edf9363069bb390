// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/fault.h"
#include "core/base/side.h"

#include <array>
#include <string_view>

namespace levelbar {

// The left/right indices of the literature, all in percent. Bishop et al. 2016 (Strength Cond J
// 38(6):27-32) found nine formulas in use, which tell one pair of values apart from 7 to 22 %;
// Parkinson et al. 2021 (J Sports Sci Med 20:594-617) found that few keep their size when the
// reference side changes. The model reckons with logRatioIndex; percentageDifference is shown. Who
// first used which formula is given after Bishop 2016, from memory.
//
// Every function refuses with NotInDomain unless both values are finite and above zero, and unless
// a side that must be named is Left or Right.

// The result of either side in one test: load, force, reps, distance ... more is better. A test
// where less is better enters with the values swapped.
struct BothSides {
    double left = 0.0;
    double right = 0.0;
};

// Weaker / stronger, 0 to 100: "the weaker side has 80 %". Ceroni et al. 2012 (J Strength Cond Res
// 26).
[[nodiscard]] Result<double> limbSymmetryIndex(const BothSides& sides);

// Involved / other side, above 0 without bound: after an injury. Common in return to sport, e.g.
// Wellsandt et al. 2017 (J Orthop Sports Phys Ther 47:334-338).
[[nodiscard]] Result<double> involvedLimbIndex(const BothSides& sides, Side involved);

// (Stronger - weaker) / stronger, 0 to 100: the index for single-arm and single-leg tests, Bishop
// et al. 2018 (Strength Cond J 40(4):1-6).
[[nodiscard]] Result<double> percentageDifference(const BothSides& sides);

// The same formula under the name of Nunn and Mayhew 1988 (J Orthop Sports Phys Ther 10:224-227)
// and Impellizzeri et al. 2007 (Med Sci Sports Exerc 39:2044-2050).
[[nodiscard]] Result<double> bilateralStrengthAsymmetry(const BothSides& sides);

// (Dominant - other) / (dominant + other), -100 to 100: share of the total, for tests where both
// limbs act at once. Kobayashi et al. 2013 (J Strength Cond Res 27).
[[nodiscard]] Result<double> bilateralAsymmetryIndex(const BothSides& sides, Side dominant);

// Twice bilateralAsymmetryIndex, -200 to 200. Wong et al. 2007.
[[nodiscard]] Result<double> doubledAsymmetryIndex(const BothSides& sides, Side dominant);

// (Stronger - weaker) / (stronger + weaker), 0 to 100. Sato and Heise 2012 (J Strength Cond Res
// 26), named symmetry index there.
[[nodiscard]] Result<double> shareOfTotalIndex(const BothSides& sides);

// (Right - left) / mean of both, -200 to 200. Robinson, Herzog and Nigg 1987 (J Manipulative
// Physiol Ther 10:172-176).
[[nodiscard]] Result<double> symmetryIndex(const BothSides& sides);

// (45 degrees - arctan(left / right)) / 90 degrees, -50 to 50: needs no reference side, but shows
// a difference of 20 % as 7. Zifchock et al. 2008 (Gait Posture 27:622-627); their rule for values
// of opposite sign is out of the domain here.
[[nodiscard]] Result<double> symmetryAngle(const BothSides& sides);

// ln(right / left), without bound: turns its sign when the sides are swapped, and differences of
// it are ratios. Plotnik, Giladi and Hausdorff 2007 (Exp Brain Res 181:561-570), with a sign.
[[nodiscard]] Result<double> logRatioIndex(const BothSides& sides);

// For a list of all of them: the name to show, and the function.
struct SideIndex {
    std::string_view name;
    Result<double> (*value)(const BothSides& sides);
    bool isSigned; // positive: the right is stronger
};

// Those that need no named side, the one shown by itself first.
[[nodiscard]] const std::array<SideIndex, 7>& sideIndices();

} // namespace levelbar
