// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/gym/available_loads.h"
#include "core/gym/gone_today.h"
#include "core/gym/setup_card.h"

#include <gtest/gtest.h>

#include <array>

namespace levelbar::stations_test {
namespace {

Exercise liftOf(Implement implement)
{
    Exercise exercise;
    exercise.implement = implement;
    return exercise;
}

Kit smallKit()
{
    Kit kit;
    kit.bars = {{"Usual", Mass::ofKilograms(20), 1}, {"Light", Mass::ofKilograms(15), 2}};
    kit.plates = {{Mass::ofKilograms(10), 4}, {Mass::ofKilograms(5), 2}};
    kit.handWeights = {{Implement::Dumbbell, Mass::ofKilograms(8), 2},
                       {Implement::Dumbbell, Mass::ofKilograms(10), 2}};
    kit.stackStep = Mass::ofKilograms(5);
    return kit;
}

std::vector<double> loadsOf(const Kit& kit, Implement implement)
{
    const AvailableLoads loads(kit, liftOf(implement));
    std::vector<double> all;
    for (auto load = loads.lightest(); load; load = loads.above(load->load)) {
        all.push_back(load->kilograms());
    }
    return all;
}

TEST(GoneTodayTest, LoadsThatNeedWhatIsGoneAreNotThere)
{
    const Kit kit = smallKit();
    EXPECT_EQ(loadsOf(kit, Implement::Barbell), (std::vector<double>{15, 20, 30, 40, 50, 60, 70}));
    const std::array<GonePieces, 1> plates = {{{PieceKey::of(kit.plates[0]), 2}}};
    EXPECT_EQ(loadsOf(without(kit, plates), Implement::Barbell),
              (std::vector<double>{15, 20, 30, 40, 50}));
    const std::array<GonePieces, 1> dumbbell = {{{PieceKey::of(kit.handWeights[0]), 1}}};
    EXPECT_EQ(loadsOf(without(kit, dumbbell), Implement::Dumbbell), std::vector<double>{10.0})
        << "one of a pair is no pair";
}

TEST(GoneTodayTest, WithTheUsualBarGoneTheNextOneIsLoaded)
{
    const Kit kit = smallKit();
    const std::array<GonePieces, 1> bar = {{{PieceKey::of(kit.bars[0]), 1}}};
    EXPECT_EQ(loadsOf(without(kit, bar), Implement::Barbell),
              (std::vector<double>{15, 25, 35, 45, 55, 65}));
    const std::array<GonePieces, 2> both = {
        {{PieceKey::of(kit.bars[0]), 1}, {PieceKey::of(kit.bars[1]), 9}}};
    EXPECT_TRUE(loadsOf(without(kit, both), Implement::Barbell).empty());
    EXPECT_EQ(without(kit, both).bars[1].count, 0) << "never less than none";
}

TEST(GoneTodayTest, OfAnAssumedKitNothingIsTakenOff)
{
    const Kit kit = assumedKit();
    const std::array<GonePieces, 1> plates = {{{PieceKey::of(kit.plates[0]), 999}}};
    EXPECT_EQ(without(kit, plates), kit);
}

TEST(GoneTodayTest, ARackAndABenchOfTheSameNumberAreTwoThings)
{
    Stations stations;
    stations.racks.push_back({RackId{1}, {}, "Rack", {}, 3});
    stations.benches.push_back({BenchId{1}, {}, "Bench", {0}, 4});
    const std::array<GonePieces, 1> gone = {{{PieceKey::of(stations.racks[0]), 2}}};
    const Stations left = without(stations, gone);
    EXPECT_EQ(left.racks[0].count, 1);
    EXPECT_EQ(left.benches[0].count, 4);
}

TEST(StationsTest, WhatCannotStandIsRefused)
{
    Rack rack;
    EXPECT_EQ(checkRack(rack).error().code, FaultCode::Empty);
    rack.name = "Rack";
    EXPECT_TRUE(checkRack(rack));
    rack.holes.pitch = {};
    EXPECT_EQ(checkRack(rack).error().code, FaultCode::OutOfRange);
    rack = {{}, {}, "Rack", {}, 1};
    rack.holes = {Length::ofMillimetres(2001), Length::ofMillimetres(50), 3};
    EXPECT_EQ(checkRack(rack).error(), (Fault{FaultCode::OutOfRange, {"2001", "0", "2000"}}));
    rack.holes = {Length::ofMillimetres(200), Length::ofMillimetres(50), 100};
    EXPECT_EQ(checkRack(rack).error().code, FaultCode::OutOfRange);
    Bench bench{{}, {}, "Bench", {45, 0, 30, 0}, 2};
    EXPECT_EQ(checkBench(bench)->angles, (std::vector<int>{0, 30, 45}));
    bench.angles = {91};
    EXPECT_EQ(checkBench(bench).error().code, FaultCode::OutOfRange);
    bench.angles.clear();
    EXPECT_EQ(checkBench(bench).error().code, FaultCode::OutOfRange);
    EXPECT_EQ(checkRoom({{}, "a\nb"}).error().code, FaultCode::ControlCharacter);
}

TEST(StationsTest, AnglesAreReadAsPeopleTypeThem)
{
    EXPECT_EQ(parseAngles("0, 15 30;-15"), (std::vector<int>{0, 15, 30, -15}));
    EXPECT_EQ(parseAngles(" , ").error().code, FaultCode::Empty);
    EXPECT_FALSE(parseAngles("0, x"));
    EXPECT_FALSE(parseAngles("120"));
    EXPECT_EQ(anglesText({0, 15}), "0, 15");
}

TEST(SetupCardTest, HolesAndTextsHaveTheirLimits)
{
    SetupCard card;
    EXPECT_TRUE(checkSetupCard(card));
    card.hookHole = 0;
    EXPECT_EQ(checkSetupCard(card).error().code, FaultCode::OutOfRange);
    card.hookHole = 99;
    card.note = std::string(201, 'x');
    EXPECT_EQ(checkSetupCard(card).error().code, FaultCode::TooLong);
}

} // namespace
} // namespace levelbar::stations_test
