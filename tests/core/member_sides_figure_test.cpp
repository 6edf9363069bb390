// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later

#include "core/review/member_sides_figure.h"
#include "tests/support/sets.h"

#include <gtest/gtest.h>

#include <cmath>

namespace levelbar::member_sides_figure_test {
namespace {

using tests::day;
using tests::set;

const Day kToday = day("2026-06-30");
constexpr ExerciseId kArmPress{2};
constexpr TestId kGrip{1};
constexpr TestId kHop{2};

Library library()
{
    Library made;
    Exercise press;
    press.id = kArmPress;
    press.name = "Single-arm press";
    press.sidedness = Sidedness::SingleSided;
    made.exercises = {press};
    TestKind grip;
    grip.id = kGrip;
    grip.name = "Grip strength";
    grip.unit = "kg";
    grip.isSided = true;
    TestKind hop = grip;
    hop.id = kHop;
    hop.name = "Timed hop";
    hop.unit = "s";
    hop.direction = Direction::LessIsBetter;
    made.tests = {grip, hop};
    return made;
}

Trial trial(TestId test, Day on, Side side, double value)
{
    Trial made;
    made.test = test;
    made.day = on;
    made.side = side;
    made.valueThousandths = std::llround(1000.0 * value);
    made.unit = test == kGrip ? "kg" : "s";
    return made;
}

// Both sides on `days` days, a week apart, the last one a week ago.
MemberHistory trials(TestId test, int days, double left, double right)
{
    MemberHistory made;
    made.member.id = MemberId{1};
    made.trials = {{test, Side::Left, {}}, {test, Side::Right, {}}};
    for (int i = days; i > 0; --i) {
        made.trials[0].trials.push_back(trial(test, kToday - 7 * i, Side::Left, left));
        made.trials[1].trials.push_back(trial(test, kToday - 7 * i, Side::Right, right));
    }
    return made;
}

MemberHistory presses(int days, int leftReps, int rightReps, SetKind kind = SetKind::Work)
{
    MemberHistory made;
    made.member.id = MemberId{1};
    made.sets = {{kArmPress, Side::Left, {}}, {kArmPress, Side::Right, {}}};
    for (int i = days; i > 0; --i) {
        made.sets[0].sets.push_back(set(kToday - 7 * i, 1, 14, leftReps, 1));
        made.sets[1].sets.push_back(set(kToday - 7 * i, 1, 14, rightReps, 1));
        made.sets[0].sets.back().kind = kind;
        made.sets[1].sets.back().kind = kind;
    }
    return made;
}

MemberSidesFigure figureOf(const MemberHistory& history)
{
    const Library known = library();
    Reviewer reviewer(known, kToday);
    reviewer.add(history);
    const Review review = reviewer.finish();
    EXPECT_EQ(review.members.front().sides.size(), 1U);
    return memberSidesFigure(history, known, review, review.members.front().sides.front());
}

TEST(MemberSidesFigureTest, TheLastPointOfTheDifferenceIsWhatTheListsSay)
{
    for (const MemberHistory& history :
         {trials(kGrip, 5, 40, 46), trials(kHop, 5, 2.0, 2.3), presses(6, 8, 10)}) {
        const MemberSidesFigure figure = figureOf(history);
        ASSERT_FALSE(figure.difference.empty());
        EXPECT_EQ(figure.difference.back().day, kToday);
        const Estimate& said = figure.review.differencePercent;
        EXPECT_NEAR(figure.difference.back().value, said.value, 1e-9);
        EXPECT_NEAR(figure.difference.back().low, said.low, 1e-9);
        EXPECT_NEAR(figure.difference.back().high, said.high, 1e-9);
    }
}

TEST(MemberSidesFigureTest, ADayMoreMakesTheBandNarrower)
{
    const auto band = figureOf(trials(kGrip, 5, 40, 46)).difference;
    ASSERT_GE(band.size(), 3U);
    EXPECT_GT(band[0].high - band[0].low, band[2].high - band[2].low);
}

TEST(MemberSidesFigureTest, ATestsBandsHoldItsValuesAndItsPairsAreOfTheStronger)
{
    const MemberSidesFigure figure = figureOf(trials(kGrip, 4, 40, 50));
    EXPECT_EQ(figure.unit, "kg");
    EXPECT_EQ(figure.dots.size(), 8U);
    EXPECT_EQ(figure.dots.front().side, Side::Left);
    ASSERT_EQ(figure.left.size(), 5U); // four days and today
    EXPECT_NEAR(figure.left.back().value, 40.0, 1e-6);
    EXPECT_NEAR(figure.right.back().value, 50.0, 1e-6);
    EXPECT_LT(figure.left.back().low, 40.0);
    ASSERT_EQ(figure.pairs.size(), 4U);
    EXPECT_EQ(figure.pairs.front().kind, PairKind::Test);
    EXPECT_NEAR(figure.pairs.front().percent, 20.0, 1e-6); // (50 - 40) / 50
    EXPECT_EQ(sentence(phrases(figure.pairs.front(), "kg")),
              "Tested: 40 and 50 kg, about 20 %. Left weaker that day.");
}

TEST(MemberSidesFigureTest, WhereLessIsBetterTheSlowerSideIsTheWeaker)
{
    const MemberSidesFigure figure = figureOf(trials(kHop, 3, 2.0, 2.5));
    EXPECT_TRUE(figure.isLessBetter);
    EXPECT_NEAR(figure.pairs.front().percent, -20.0, 1e-6); // right weaker
}

TEST(MemberSidesFigureTest, AGapInRepsIsToldAsStrength)
{
    const MemberSidesFigure figure = figureOf(presses(6, 8, 10));
    ASSERT_EQ(figure.pairs.size(), 6U);
    const PairDot& pair = figure.pairs.back();
    EXPECT_EQ(pair.kind, PairKind::Sets);
    // On the average curve two reps near ten are 4 to 7 % (Epley: 1 - (1 + 9/30) / (1 + 11/30)).
    EXPECT_NEAR(pair.percent, 100.0 * (1.0 - (1.0 + 9.0 / 30.0) / (1.0 + 11.0 / 30.0)), 2.0);
    const std::string said = sentence(phrases(pair, "kg"));
    EXPECT_EQ(said.find("8 and 10 reps with 14 kg: about "), 0U) << said;
    EXPECT_NE(said.find("% in strength. Left weaker that day."), std::string::npos) << said;
    EXPECT_EQ(figure.left.size(), figure.right.size());
    EXPECT_LT(figure.left.back().value, figure.right.back().value);
}

TEST(MemberSidesFigureTest, OpenPairsAreMarked)
{
    const MemberSidesFigure figure = figureOf(presses(3, 8, 8, SetKind::Open));
    EXPECT_EQ(figure.pairs.front().kind, PairKind::Open);
    EXPECT_EQ(sentence(phrases(figure.pairs.front(), "kg")),
              "8 and 8 reps with 14 kg: about 0 % in strength. No difference that day. "
              "An open pair.");
}

TEST(MemberSidesFigureTest, ADayAfterTodayIsNotSeen)
{
    MemberHistory history = trials(kGrip, 4, 40, 46);
    history.trials[0].trials.push_back(trial(kGrip, kToday + 1, Side::Left, 20));
    history.trials[1].trials.push_back(trial(kGrip, kToday + 1, Side::Right, 40));
    const MemberSidesFigure figure = figureOf(history);
    EXPECT_EQ(figure.pairs.size(), 4U);
    EXPECT_EQ(figure.dots.size(), 8U);
}

TEST(SidesFigureTest, ByCertaintyTheSurestComesFirstAndOneDayLast)
{
    SidesFigure figure;
    const auto row = [](int id, double percent, double sure, int days) {
        SidesRow made;
        made.member = MemberId{id};
        made.side.differencePercent.value = percent;
        made.side.probabilityBeyondFive = sure;
        made.side.days = days;
        return made;
    };
    figure.rows = {row(1, 12, 0.7, 3), row(2, 25, 0.99, 1), row(3, -9, 0.9, 2)};
    const auto ids = [&figure] {
        std::vector<long> found;
        for (const SidesRow& each : figure.rows) {
            found.push_back(each.member.value);
        }
        return found;
    };
    sortRows(figure, SidesOrder::ByCertainty);
    EXPECT_EQ(ids(), (std::vector<long>{3, 1, 2}));
    sortRows(figure, SidesOrder::ByDifference);
    EXPECT_EQ(ids(), (std::vector<long>{2, 1, 3}));
}

} // namespace
} // namespace levelbar::member_sides_figure_test
