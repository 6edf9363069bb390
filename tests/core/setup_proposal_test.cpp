// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/gym/setup_card.h"
#include "core/gym/setup_proposal.h"
#include "tests/support/random.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <cstdio>
#include <cstdlib>

namespace levelbar::setup_proposal_test {
namespace {

using tests::Random;

constexpr RackHoles kRack = {Length::ofMillimetres(300), Length::ofMillimetres(50), 30};

Exercise bench()
{
    Exercise exercise;
    exercise.key = "barbell-bench-press";
    exercise.pattern = Pattern::HorizontalPress;
    exercise.implement = Implement::Barbell;
    return exercise;
}

BodySize body(Sex sex, int millimetres)
{
    return {sex, Length::ofMillimetres(millimetres), std::nullopt};
}

HoleProposal hookFor(const BodySize& who, std::span<const SetupExample> others = {})
{
    return proposeHole({bench(), 0, who, kRack}, SetupPart::Hook, others).value();
}

// Reckoned with pencil and paper in the research notes from ANSUR II's lines: bench 0.43 m, women
// of 1.55 and 1.65 m, men of 1.75 and 1.85 m.
TEST(StationHeightsTest, ABenchsHookIsWhereArmsReach)
{
    const std::array<std::pair<BodySize, double>, 4> known = {{{body(Sex::Female, 1550), 980},
                                                               {body(Sex::Female, 1650), 1020},
                                                               {body(Sex::Male, 1750), 1060},
                                                               {body(Sex::Male, 1850), 1100}}};
    for (const auto& [who, millimetres] : known) {
        EXPECT_NEAR(stationHeights(bench(), 0, who)->hook.millimetres, millimetres, 8.0);
    }
    // Chest-touch height 0.67 to 0.69 m; the pin 2 to 5 cm below.
    const double pin = stationHeights(bench(), 0, body(Sex::Male, 1750))->safety->millimetres;
    EXPECT_GT(pin, 620.0);
    EXPECT_LT(pin, 670.0);
}

TEST(StationHeightsTest, AnInclinedBenchLiftsTheShoulderByTheTrunk)
{
    const BodySize man = body(Sex::Male, 1756);
    const double flat = stationHeights(bench(), 0, man)->hook.millimetres;
    const double inclined = stationHeights(bench(), 30, man)->hook.millimetres;
    // By hand: acromion 1440.5 less trochanter 900.9 mm, times sin 30.
    EXPECT_NEAR(inclined - flat, 269.8, 1.0);
    EXPECT_NEAR(flat - stationHeights(bench(), std::nullopt, man)->hook.millimetres, 430.0, 1e-9);
}

TEST(StationHeightsTest, NothingIsProposedWhereTheBodyHasNoSay)
{
    Exercise pushUp = bench();
    pushUp.implement = Implement::BodyWeight;
    EXPECT_FALSE(stationHeights(pushUp, std::nullopt, body(Sex::Male, 1750)));
    Exercise press = bench();
    press.pattern = Pattern::VerticalPress;
    const auto standing = stationHeights(press, std::nullopt, body(Sex::Male, 1750));
    EXPECT_NEAR(standing->hook.millimetres, 1400.0, 1e-9);
    EXPECT_FALSE(standing->safety);
    EXPECT_FALSE(
        proposeHole({press, std::nullopt, body(Sex::Male, 1750), kRack}, SetupPart::Safety, {}));
}

TEST(SetupProposalTest, WhoIsTallerGetsAHigherHoleAndWhoWasNotMeasuredAWiderDoubt)
{
    EXPECT_LT(hookFor(body(Sex::Female, 1500)).hole, hookFor(body(Sex::Female, 1800)).hole);
    const BodySize unknown{Sex::Female, std::nullopt, std::nullopt};
    const BodySize mean = body(Sex::Female, 1629);
    const auto width = [](const HoleProposal& p) { return p.height.high - p.height.low; };
    EXPECT_EQ(hookFor(unknown).hole, hookFor(mean).hole);
    EXPECT_GT(width(hookFor(unknown)), 1.1 * width(hookFor(mean)));
}

TEST(SetupProposalTest, WhatTheOthersConfirmedMovesItAndNarrowsTheDoubt)
{
    const BodySize who = body(Sex::Male, 1780);
    const HoleProposal first = hookFor(who);
    std::vector<SetupExample> others;
    for (int i = 0; i < 20; ++i) {
        const BodySize other = body(Sex::Male, 1650 + 12 * i);
        const double height = stationHeights(bench(), 0, other)->hook.millimetres + 100.0;
        others.push_back({other, Length::ofMetres(height / 1000.0), Length::ofMillimetres(50)});
    }
    const HoleProposal later = hookFor(who, others);
    EXPECT_EQ(later.hole, first.hole + 2);
    EXPECT_EQ(later.height.count, 20);
    EXPECT_LT(later.height.high - later.height.low, first.height.high - first.height.low);
    const std::span<const SetupExample> one(others.data(), 1);
    const double moved = hookFor(who, one).height.value - first.height.value;
    EXPECT_GT(moved, 30.0) << "one card says something";
    EXPECT_LT(moved, 70.0) << "but not all";
}

TEST(SetupProposalTest, ThePinNeverComesMuchHigherThanMeant)
{
    for (int stature = 1450; stature < 2000; stature += 7) {
        const SetupQuestion question{bench(), 0, body(Sex::Male, stature), kRack};
        const auto pin = proposeHole(question, SetupPart::Safety, {}).value();
        const double height = kRack.height(pin.hole).tenthMillimetres / 10.0;
        EXPECT_LE(height, pin.height.value + 15.0) << stature;
        EXPECT_GE(height, pin.height.value - 35.0) << stature;
        EXPECT_LE(pin.lowest, pin.hole);
        EXPECT_GE(pin.highest, pin.hole);
    }
}

TEST(SetupProposalTest, AnotherRacksHoleIsTheOneAtThatHeight)
{
    const RackHoles fine = {Length::ofMillimetres(412), Length::ofMillimetres(25), 60};
    for (int hole = 1; hole <= kRack.count; ++hole) {
        const Length height = kRack.height(hole);
        const int other = sameHeightHole(kRack, hole, fine);
        for (int any = 1; any <= fine.count; ++any) { // no hole is nearer
            const auto off = [&](int h) {
                return std::abs(fine.height(h).tenthMillimetres - height.tenthMillimetres);
            };
            EXPECT_LE(off(other), off(any));
        }
    }
    EXPECT_EQ(nearestHole(kRack, kRack.height(7)), 7);
    EXPECT_EQ(nearestHole(kRack, Length::ofMillimetres(325)), 1) << "a tie goes down";
    EXPECT_EQ(nearestHole(kRack, Length::ofMillimetres(326)), 2);
    EXPECT_EQ(nearestHole(kRack, {}), 1);
    EXPECT_EQ(nearestHole(kRack, Length::ofMillimetres(9000)), 30);
}

TEST(SetupProposalTest, TheAngleIsTheExercisesUntilMoreThanThreeSayOtherwise)
{
    const std::array<int, 3> three = {15, 15, 15};
    const std::array<int, 4> four = {15, 15, 15, 15};
    const std::array<int, 3> benches = {0, 20, 40};
    EXPECT_EQ(proposeBenchAngle(30, three, {}), 30);
    EXPECT_EQ(proposeBenchAngle(30, four, {}), 15);
    EXPECT_EQ(proposeBenchAngle(30, {}, benches), 20) << "as near as 40, and flatter";
    EXPECT_EQ(proposeBenchAngle(std::nullopt, four, benches), std::nullopt);
}

// A gym whose people choose their holes: its own level (pads and habits), a lean on stature, a
// scatter of its own from 15 to 40 mm, one in ten far from the rest, one in five not measured.
class InventedGym {
public:
    explicit InventedGym(std::uint64_t seed)
        : m_random(seed)
        , m_level(m_random.normal(0.0, 35.0))
        , m_slope(m_random.normal(0.0, 0.08))
        , m_scatter(m_random.uniform(15.0, 40.0))
        , m_rack{Length::ofMillimetres(250 + m_random.below(120)), Length::ofMillimetres(50), 30}
    {
    }

    struct Person {
        BodySize body; // as written down
        int hole = 1;  // that felt right
    };

    Person next()
    {
        const Sex sex = m_random.chance(0.5) ? Sex::Male : Sex::Female;
        const MeanStature mean = meanStature(sex);
        const double stature = m_random.normal(mean.mean, mean.spread);
        BodySize body{sex, Length::ofMetres(stature / 1000.0), std::nullopt};
        const double published = stationHeights(bench(), 0, body)->hook.millimetres;
        const double own = m_random.chance(0.1) ? m_random.uniform(-120.0, 120.0)
                                                : m_random.normal(0.0, m_scatter);
        const double felt = published + m_level + m_slope * (stature - 1700.0) + own;
        if (m_random.chance(0.2)) {
            body.stature.reset();
        }
        return {body, nearestHole(m_rack, Length::ofMetres(felt / 1000.0))};
    }

    [[nodiscard]] const RackHoles& rack() const { return m_rack; }

private:
    Random m_random;
    double m_level;
    double m_slope;
    double m_scatter;
    RackHoles m_rack;
};

struct Tally {
    int asked = 0;
    int right = 0;
    int withinOne = 0;
    int held = 0;
    double holesOff = 0.0;

    void add(const HoleProposal& said, int truth)
    {
        const int off = std::abs(said.hole - truth);
        ++asked;
        right += off == 0 ? 1 : 0;
        withinOne += off <= 1 ? 1 : 0;
        held += truth >= said.lowest && truth <= said.highest ? 1 : 0;
        holesOff += off;
    }

    [[nodiscard]] double percent(int count) const { return 100.0 * count / asked; }
};

TEST(SetupProposalTest, FiveHundredInventedGymsTeachTheHole)
{
    constexpr std::array<int, 4> kMembers = {0, 5, 20, 100};
    constexpr int kGyms = 500;
    constexpr int kNewcomers = 10;
    std::array<Tally, kMembers.size()> tallies;
    for (int gymNumber = 0; gymNumber < kGyms; ++gymNumber) {
        InventedGym gym(9000 + static_cast<std::uint64_t>(gymNumber));
        std::vector<SetupExample> cards;
        for (std::size_t stage = 0; stage < kMembers.size(); ++stage) {
            while (static_cast<int>(cards.size()) < kMembers[stage]) {
                const auto person = gym.next();
                cards.push_back({person.body, gym.rack().height(person.hole), gym.rack().pitch});
            }
            for (int i = 0; i < kNewcomers; ++i) {
                const auto person = gym.next();
                const SetupQuestion question{bench(), 0, person.body, gym.rack()};
                tallies[stage].add(proposeHole(question, SetupPart::Hook, cards).value(),
                                   person.hole);
            }
        }
    }
    std::printf("cards  right  within 1  holes off  inside the doubt (500 gyms, 50 mm)\n");
    for (std::size_t stage = 0; stage < kMembers.size(); ++stage) {
        const Tally& tally = tallies[stage];
        std::printf("%5d  %4.1f%%  %7.1f%%  %9.2f  %5.1f%%\n",
                    kMembers[stage],
                    tally.percent(tally.right),
                    tally.percent(tally.withinOne),
                    tally.holesOff / tally.asked,
                    tally.percent(tally.held));
    }
    EXPECT_GT(tallies[0].percent(tallies[0].withinOne), 75.0);
    EXPECT_GT(tallies[2].percent(tallies[2].right), tallies[0].percent(tallies[0].right) + 5.0);
    EXPECT_GE(tallies[3].percent(tallies[3].withinOne) + 1.0,
              tallies[2].percent(tallies[2].withinOne));
    for (const Tally& tally : tallies) {
        EXPECT_GT(tally.percent(tally.held), 88.0);
    }
}

} // namespace
} // namespace levelbar::setup_proposal_test
