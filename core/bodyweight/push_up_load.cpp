// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/bodyweight/push_up_load.h"

#include "core/base/square.h"
#include "core/bodyweight/out_of_range.h"
#include "core/strength/strength.h"

#include <algorithm>
#include <cmath>

namespace levelbar {

namespace {

constexpr double kReadingNoise = 0.03;                // ln; assumed
constexpr double kOneInThousand = 3.2905267314919255; // standard normal's 0.9995 quantile

} // namespace

Result<PushUpLoad>
pushUpLoad(const Presser& presser, const PersonalLever& lever, const PushUp& pushUp)
{
    const auto formula = formulaLoad(presser, pushUp);
    if (!formula) {
        return tl::unexpected(formula.error());
    }
    const double factor = std::exp(lever.logFactor(formula->rise));
    const double spread = std::sqrt(lever.logVariance(formula->rise) + square(formula->kindSpread));
    const double reach = std::exp(kNormalQuantile * spread);
    PushUpLoad load;
    load.load.value = formula->repLoad() * factor;
    load.load.low = load.load.value / reach;
    load.load.high = load.load.value * reach;
    load.load.count = lever.readings;
    load.lockedOut = formula->lockedOut * factor;
    load.atChest = formula->atChest * factor;
    return load;
}

Result<Length> handHeightFor(const Presser& presser,
                             const PersonalLever& lever,
                             double kilograms,
                             const Mass& added)
{
    const auto loadAt = [&](Length height) -> Result<double> {
        return pushUpLoad(presser, lever, {PushUpKind::HandsRaised, height, added})
            .map([](const PushUpLoad& load) { return load.load.value; });
    };
    const Length most = highestHands(presser.stature);
    const auto floor = loadAt({});
    const auto least = loadAt(most);
    if (!floor || !least) {
        return tl::unexpected(floor ? least.error() : floor.error());
    }
    if (!(kilograms >= *least && kilograms <= *floor)) {
        return outOfRange(kilograms, *least, *floor, 1);
    }
    // A learnt slope may lift the load at low heights, so that it need not fall all the way:
    // step down from the top in centimetres until it is reached, then halve.
    constexpr int kStep = 100;
    int above = most.tenthMillimetres;
    int reached = above;
    while (reached > 0 && *loadAt({reached}) < kilograms) {
        above = reached;
        reached = std::max(0, reached - kStep);
    }
    while (above - reached > 1) {
        const int middle = reached + (above - reached) / 2;
        (*loadAt({middle}) < kilograms ? above : reached) = middle;
    }
    return Length{reached};
}

Result<PersonalLever>
calibrated(const PersonalLever& lever, const Presser& presser, const ScaleReading& reading)
{
    // The other kinds' own doubt would stay the same in every reading, yet count as new noise.
    const PushUpKind kind = reading.pushUp.kind;
    if (kind != PushUpKind::Floor && kind != PushUpKind::HandRelease &&
        kind != PushUpKind::HandsRaised) {
        return refuse(FaultCode::NotInDomain, {"this push-up", "from the toes, floor or bar"});
    }
    const auto formula = formulaLoad(presser, reading.pushUp);
    if (!formula) {
        return tl::unexpected(formula.error());
    }
    const double read = (reading.lockedOut.kilograms() + reading.atChest.kilograms()) / 2.0;
    const double noise = square(kReadingNoise);
    const ExpectedReading expected = expectedReading(lever, formula->rise);
    const double middle = formula->repLoad() * std::exp(expected.mean);
    const double reach = std::exp(kOneInThousand * std::sqrt(expected.variance + noise));
    if (!(read >= middle / reach && read <= middle * reach)) {
        return outOfRange(read, middle / reach, middle * reach, 1);
    }
    return learnt(lever, std::log(read / formula->repLoad()), formula->rise, noise);
}

} // namespace levelbar
