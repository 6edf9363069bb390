// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/bodyweight/push_up_formula.h"

#include "core/bodyweight/out_of_range.h"

#include <cmath>

namespace levelbar {

namespace {

// A stiff body at an angle over the floor carries scale (along cos - back sin) of a mass on it.
struct Carried {
    double along = 0.0;
    double back = 0.0;

    [[nodiscard]] double at(double angle) const
    {
        return along * std::cos(angle) - back * std::sin(angle);
    }
};

// One end of the rep. Lengths over stature, seen from the ball of the foot along the body and
// towards its front.
struct End {
    double handsAlong = 0.0;
    double handsFront = 0.0;
    Carried body;
    // Worn at 0.72 of stature, in the middle plane: common practice, no source.
    Carried vest;

    [[nodiscard]] double angle(double rise) const
    {
        return std::asin(rise / std::hypot(handsAlong, handsFront)) +
               std::atan2(handsFront, handsAlong);
    }
};

struct Build {
    End lockedOut;
    End atChest;
};

// Locked out the hands hang from the shoulder joint: acromion less 0.020 of stature, an assumed
// drop. At the chest they lie beside the armpit.
constexpr Build kMale = {{0.8003, 0.2622, {0.716, 0.070}, {0.900, 0.095}},
                         {0.7567, -0.0035, {0.758, 0.074}, {0.952, 0.100}}};
constexpr Build kFemale = {{0.7998, 0.2640, {0.714, 0.071}, {0.900, 0.093}},
                           {0.7607, 0.0020, {0.751, 0.074}, {0.947, 0.097}}};

// Which share of the body's mass and of a worn mass the hands carry.
struct Share {
    double body = 0.0;
    double worn = 0.0;
};

struct Shares {
    Share lockedOut;
    Share atChest;
};

Share shareOf(const End& end, double rise)
{
    const double angle = end.angle(rise);
    return {end.body.at(angle), end.vest.at(angle)};
}

Share midway(const Share& a, const Share& b)
{
    return {(a.body + b.body) / 2.0, (a.worn + b.worn) / 2.0};
}

Shares fromTheToes(std::optional<Sex> sex, double rise)
{
    const Shares male = {shareOf(kMale.lockedOut, rise), shareOf(kMale.atChest, rise)};
    const Shares female = {shareOf(kFemale.lockedOut, rise), shareOf(kFemale.atChest, rise)};
    if (!sex) {
        return {midway(male.lockedOut, female.lockedOut), midway(male.atChest, female.atChest)};
    }
    return *sex == Sex::Male ? male : female;
}

Shares times(const Shares& shares, double factor)
{
    return {{shares.lockedOut.body * factor, shares.lockedOut.worn * factor},
            {shares.atChest.body * factor, shares.atChest.worn * factor}};
}

// Ebben 2011: 64 % of body weight on the floor, 70 and 74 % with the feet 30.48 and 60.96 cm up.
// Straight between them. Statics of a stiff body flatten here, so the ratio is taken as measured.
double feetRaisedRatio(double metres)
{
    constexpr double kLower = 0.3048;
    constexpr double kLowerRatio = 70.0 / 64.0;
    constexpr double kHigherRatio = 74.0 / 64.0;
    if (metres <= kLower) {
        return 1.0 + (kLowerRatio - 1.0) * metres / kLower;
    }
    return kLowerRatio + (kHigherRatio - kLowerRatio) * (metres - kLower) / kLower;
}

// Statics and Ebben differ by 14 % at 61 cm (1.01 against 1.16 times the floor): taken as the
// doubt's 90 % there, 0.14 / 1.645 / 0.61.
constexpr double kFeetSpreadPerMetre = 0.14;
// Suprak 2011 53.6 and 61.8, Mier 2014 52.5 and 60.1 (men), 51.5 and 56.6 (women): 53 and 61.
// The vest's shares by the same geometry about the knee, reckoned without a source.
constexpr Shares kKnees = {{0.53, 0.73}, {0.61, 0.92}};
constexpr double kKneesSpread = 0.04; // ln; their means lie 54 to 58; between people assumed
// 5 to 20 % as the doubt's 90 %: the middle in ratio, ln(4) / 2 / 1.645.
constexpr double kWallShare = 0.10;
constexpr double kWallSpread = 0.42;

// Not for NaN, which neither Mass nor Length can hold.
bool isWithin(double value, double least, double most)
{
    return value >= least && value <= most;
}

Length mostHeight(const Presser& presser, PushUpKind kind)
{
    switch (kind) {
    case PushUpKind::HandsRaised:
        return highestHands(presser.stature);
    case PushUpKind::FeetRaised:
        return kMostFeetHeight;
    case PushUpKind::Floor:
    case PushUpKind::HandRelease:
    case PushUpKind::Wall:
    case PushUpKind::Knees:
        break;
    }
    return {};
}

Result<void> check(const Presser& presser, const PushUp& pushUp)
{
    const double mass = presser.bodyMass.kilograms();
    const double added = pushUp.added.kilograms();
    if (presser.stature < kLeastStature || presser.stature > kMostStature) {
        return outOfRange(
            presser.stature.metres(), kLeastStature.metres(), kMostStature.metres(), 4);
    }
    if (!isWithin(mass, kLeastBodyMass, kMostBodyMass)) {
        return outOfRange(mass, kLeastBodyMass, kMostBodyMass, 3);
    }
    if (!isWithin(added, 0.0, kMostAddedMass)) {
        return outOfRange(added, 0.0, kMostAddedMass, 3);
    }
    const Length most = mostHeight(presser, pushUp.kind);
    if (pushUp.height < Length{} || pushUp.height > most) {
        return outOfRange(pushUp.height.metres(), 0.0, most.metres(), 4);
    }
    return {};
}

} // namespace

Length highestHands(Length stature)
{
    return {static_cast<int>(std::floor(stature.tenthMillimetres * kMostRise))};
}

Result<FormulaLoad> formulaLoad(const Presser& presser, const PushUp& pushUp)
{
    if (const auto checked = check(presser, pushUp); !checked) {
        return tl::unexpected(checked.error());
    }
    FormulaLoad load;
    Shares shares = fromTheToes(presser.sex, 0.0);
    switch (pushUp.kind) {
    case PushUpKind::Floor:
    case PushUpKind::HandRelease: // no study found that its load differs
        break;
    case PushUpKind::HandsRaised:
        load.rise = pushUp.height.metres() / presser.stature.metres();
        shares = fromTheToes(presser.sex, load.rise);
        break;
    case PushUpKind::Wall: {
        const double floor = midway(shares.lockedOut, shares.atChest).body;
        const Share share = midway(shares.lockedOut, shares.atChest);
        shares = times({share, share}, kWallShare / floor);
        load.kindSpread = kWallSpread;
        break;
    }
    case PushUpKind::Knees:
        shares = kKnees;
        load.kindSpread = kKneesSpread;
        break;
    case PushUpKind::FeetRaised:
        shares = times(shares, feetRaisedRatio(pushUp.height.metres()));
        load.kindSpread = kFeetSpreadPerMetre * pushUp.height.metres();
        break;
    }
    const double mass = presser.bodyMass.kilograms();
    const double added = pushUp.added.kilograms();
    load.lockedOut = shares.lockedOut.body * mass + shares.lockedOut.worn * added;
    load.atChest = shares.atChest.body * mass + shares.atChest.worn * added;
    return load;
}

} // namespace levelbar
