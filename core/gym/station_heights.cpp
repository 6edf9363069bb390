// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/gym/station_heights.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace levelbar {

namespace {

// Straight lines of ANSUR II: mm = at + slope * stature (+ perKilogram * body mass).
struct Line {
    double at = 0.0;
    double slope = 0.0;
    double perKilogram = 0.0;
};

struct Build {
    Line acromion;
    Line trochanter;
    Line overheadReach;
    Line chestDepth;
    Line shoulderBreadth;
    double armOverStature = 0.0; // shoulder joint to the middle of the grip
    double meanMass = 0.0;       // kg: ANSUR II
};

constexpr Build kMale = {{-126.9, 0.8926, 0.0},
                         {-169.9, 0.6098, 0.0},
                         {-148.5, 1.2837, 0.0},
                         {258.1, -0.0894, 1.785},
                         {204.6, 0.0917, 0.586},
                         0.359,
                         85.5};
constexpr Build kFemale = {{-96.9, 0.8793, 0.0},
                           {-126.9, 0.5970, 0.0},
                           {-145.5, 1.2847, 0.0},
                           {277.8, -0.1163, 2.347},
                           {132.0, 0.1283, 0.361},
                           0.356,
                           67.8};

constexpr double kPad = 430.0;
constexpr double kJointOverPad = 70.0;
constexpr double kLiftOut = 60.0;
constexpr double kWidestGrip = 810.0;
constexpr double kGripOverShoulders = 1.5;
constexpr double kSafetyUnderChest = 35.0;
constexpr double kBenchSpread = 30.0;
constexpr double kStandingSpread = 30.0;
constexpr double kSquatSafetySpread = 50.0;

// Which way of setting a rack an exercise needs.
enum class SetupWay { None, Bench, Floor, Squat, StandingPress, Row, PullUp };

SetupWay wayOf(const Exercise& exercise, std::optional<int> benchAngle)
{
    const bool isBarbell = exercise.implement == Implement::Barbell;
    const bool isBody = exercise.implement == Implement::BodyWeight;
    switch (exercise.pattern) {
    case Pattern::HorizontalPress:
        return !isBarbell ? SetupWay::None : benchAngle ? SetupWay::Bench : SetupWay::Floor;
    case Pattern::VerticalPress:
        return !isBarbell ? SetupWay::None : benchAngle ? SetupWay::Bench : SetupWay::StandingPress;
    case Pattern::Squat:
        return isBarbell ? SetupWay::Squat : SetupWay::None;
    case Pattern::SingleLeg:
        return isBarbell ? SetupWay::Squat : SetupWay::None;
    case Pattern::HorizontalPull:
        return isBody && exercise.key.ends_with("inverted-row") ? SetupWay::Row : SetupWay::None;
    case Pattern::VerticalPull:
        return isBody ? SetupWay::PullUp : SetupWay::None;
    case Pattern::Hinge:
    case Pattern::Trunk:
    case Pattern::Carry:
    case Pattern::Other:
        break;
    }
    return SetupWay::None;
}

double along(const Line& line, double stature, double mass)
{
    return line.at + line.slope * stature + line.perKilogram * mass;
}

StationHeights benchHeights(const Build& build, double stature, double mass, int angle, double pad)
{
    const double breadth = along(build.shoulderBreadth, stature, mass);
    const double grip = std::min(kGripOverShoulders * breadth, kWidestGrip);
    const double aside = (grip - breadth) / 2.0;
    const double reach = std::sqrt(std::pow(build.armOverStature * stature, 2) - aside * aside);
    const double trunk =
        along(build.acromion, stature, mass) - along(build.trochanter, stature, mass);
    const double lift = trunk * std::sin(std::max(angle, 0) * std::numbers::pi / 180.0);
    const double chest = pad + lift + along(build.chestDepth, stature, mass);
    StationHeights heights;
    heights.hook = {pad + lift + kJointOverPad + reach - kLiftOut, kBenchSpread};
    heights.safety = {chest - kSafetyUnderChest, kBenchSpread};
    return heights;
}

StationHeights ofBuild(
    const Build& build, SetupWay way, double stature, std::optional<double> typedMass, int angle)
{
    const double mass = typedMass.value_or(build.meanMass);
    StationHeights heights;
    switch (way) {
    case SetupWay::Bench:
        return benchHeights(build, stature, mass, angle, kPad);
    case SetupWay::Floor:
        return benchHeights(build, stature, mass, 0, 0.0);
    case SetupWay::Squat:
        heights.hook = {0.73 * stature, kStandingSpread};
        heights.safety = {0.48 * stature, kSquatSafetySpread};
        break;
    case SetupWay::StandingPress:
        heights.hook = {0.80 * stature, kStandingSpread};
        break;
    case SetupWay::Row:
        heights.hook = {0.44 * stature, kStandingSpread};
        break;
    case SetupWay::PullUp:
        heights.hook = {along(build.overheadReach, stature, mass) + 50.0, kStandingSpread};
        break;
    case SetupWay::None:
        break;
    }
    return heights;
}

StationHeight midway(const StationHeight& a, const StationHeight& b)
{
    return {(a.millimetres + b.millimetres) / 2.0, std::max(a.spread, b.spread)};
}

} // namespace

MeanStature meanStature(std::optional<Sex> sex)
{
    constexpr MeanStature kMen = {1756.0, 69.0};
    constexpr MeanStature kWomen = {1629.0, 64.0};
    if (!sex) {
        // Half of each: the spread of the mixture.
        return {(kMen.mean + kWomen.mean) / 2.0, 92.0};
    }
    return *sex == Sex::Male ? kMen : kWomen;
}

std::optional<StationHeights>
stationHeights(const Exercise& exercise, std::optional<int> benchAngle, const BodySize& body)
{
    const SetupWay way = wayOf(exercise, benchAngle);
    if (way == SetupWay::None) {
        return std::nullopt;
    }
    const double stature =
        body.stature ? body.stature->tenthMillimetres / 10.0 : meanStature(body.sex).mean;
    const auto mass =
        body.bodyMass ? std::optional(body.bodyMass->kilograms()) : std::optional<double>();
    const int angle = benchAngle.value_or(0);
    const StationHeights male = ofBuild(kMale, way, stature, mass, angle);
    const StationHeights female = ofBuild(kFemale, way, stature, mass, angle);
    if (body.sex) {
        return *body.sex == Sex::Male ? male : female;
    }
    StationHeights heights;
    heights.hook = midway(male.hook, female.hook);
    if (male.safety && female.safety) {
        heights.safety = midway(*male.safety, *female.safety);
    }
    return heights;
}

} // namespace levelbar
