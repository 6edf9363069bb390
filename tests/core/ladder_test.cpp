// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/exercise/exercise_detail.h"
#include "core/exercise/ladder.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <functional>

namespace levelbar::ladder_test {
namespace {

std::vector<Exercise> exercises()
{
    std::vector<Exercise> all(3);
    all[0].key = "wall-push-up";
    all[1].key = "push-up";
    all[2].key = "goblet-squat";
    all[0].pattern = Pattern::HorizontalPress;
    all[1].pattern = Pattern::HorizontalPress;
    all[2].pattern = Pattern::Squat;
    return all;
}

Rung rung(const char* key, const char* setting = "")
{
    return {key, setting, {}, {}, "common practice, no source"};
}

Ladder ladder()
{
    Ladder made;
    made.key = "push-up";
    made.name = "Push-up";
    made.pattern = Pattern::HorizontalPress;
    made.rungs = {rung("wall-push-up"), rung("push-up"), rung("push-up", "slowly")};
    return made;
}

FaultCode faultOf(const Ladder& wrong)
{
    const auto checked = checkLadder(wrong, exercises());
    EXPECT_FALSE(checked);
    return checked ? FaultCode::NoBar : checked.error().code;
}

FaultCode faultAfter(const std::function<void(Ladder&)>& spoil)
{
    Ladder spoilt = ladder();
    spoil(spoilt);
    return faultOf(spoilt);
}

TEST(LadderTest, PassesUnchangedWhenItCanBeClimbed)
{
    EXPECT_EQ(checkLadder(ladder(), exercises()), ladder());
}

TEST(LadderTest, NeedsAKeyANameTwoRungsAndSources)
{
    EXPECT_EQ(faultAfter([](Ladder& l) { l.key.clear(); }), FaultCode::Empty);
    EXPECT_EQ(faultAfter([](Ladder& l) { l.name.clear(); }), FaultCode::Empty);
    EXPECT_EQ(faultAfter([](Ladder& l) { l.rungs.resize(1); }), FaultCode::Empty);
    EXPECT_EQ(faultAfter([](Ladder& l) { l.rungs[1].source.clear(); }), FaultCode::Empty);
}

TEST(LadderTest, HasOnlyKnownExercisesOfItsPattern)
{
    EXPECT_EQ(faultAfter([](Ladder& l) { l.rungs[1].exerciseKey = "pushup"; }),
              FaultCode::UnknownExercise);
    EXPECT_EQ(faultAfter([](Ladder& l) { l.rungs[1].exerciseKey = "goblet-squat"; }),
              FaultCode::NotOneOf);
}

TEST(LadderTest, TakesAnExerciseTwiceOnlyWithAnotherSetting)
{
    EXPECT_EQ(faultAfter([](Ladder& l) { l.rungs[2].setting.clear(); }), FaultCode::RepeatedPiece);
}

TEST(LadderTest, HasAtMostThirtyRungs)
{
    Ladder tall = ladder();
    tall.rungs.clear();
    for (int i = 0; i < 30; ++i) {
        tall.rungs.push_back(rung("push-up", std::to_string(i).c_str()));
    }
    EXPECT_TRUE(checkLadder(tall, exercises()));
    tall.rungs.push_back(rung("push-up", "30"));
    EXPECT_EQ(faultOf(tall), FaultCode::OutOfRange);
}

struct GateCase {
    const char* name;
    std::function<int&(Rung&)> number;
    int lowest;
    int highest;
};

TEST(LadderTest, KeepsEveryGatesNumberWithinItsBounds)
{
    const std::vector<GateCase> cases = {
        {"amount", [](Rung& r) -> int& { return r.up.amount; }, 5, 600}, // not below fewerThan
        {"sets", [](Rung& r) -> int& { return r.up.sets; }, 1, 10},
        {"sessions up", [](Rung& r) -> int& { return r.up.sessions; }, 1, 10},
        {"load", [](Rung& r) -> int& { return r.up.loadPercent; }, 0, 300},
        {"pain", [](Rung& r) -> int& { return r.down.pain; }, 1, 10},
        {"days", [](Rung& r) -> int& { return r.down.daysAway; }, 1, 365},
        {"fewer", [](Rung& r) -> int& { return r.down.fewerThan; }, 1, 12}, // the gate's amount
        {"sessions down", [](Rung& r) -> int& { return r.down.sessions; }, 1, 10}};
    for (const GateCase& gate : cases) {
        for (const int within : {gate.lowest, gate.highest}) {
            Ladder good = ladder();
            gate.number(good.rungs[1]) = within;
            EXPECT_TRUE(checkLadder(good, exercises())) << gate.name << " " << within;
        }
        for (const int outside : {gate.lowest - 1, gate.highest + 1}) {
            EXPECT_EQ(faultAfter([&](Ladder& l) { gate.number(l.rungs[1]) = outside; }),
                      FaultCode::OutOfRange)
                << gate.name << " " << outside;
        }
    }
}

TEST(LadderTest, AreCheckedTogetherForKeysThatStandTwice)
{
    Ladder other = ladder();
    other.key = "other";
    EXPECT_TRUE(checkLadders({ladder(), other}, exercises()));
    const auto twice = checkLadders({ladder(), other, ladder()}, exercises());
    ASSERT_FALSE(twice);
    EXPECT_EQ(twice.error().code, FaultCode::RepeatedPiece);
    other.rungs.clear();
    EXPECT_EQ(checkLadders({ladder(), other}, exercises()).error().code, FaultCode::Empty);
}

TEST(ExerciseDetailTest, PartsComeApartAtBarsAndTogetherAgain)
{
    const std::vector<std::string> parts = {"Feet flat", "Blades back"};
    EXPECT_EQ(partsOf("Feet flat|Blades back"), parts);
    EXPECT_EQ(partsOf(" Feet flat || \tBlades back |"), parts);
    EXPECT_EQ(partsOf(joinedParts(parts)), parts);
    EXPECT_TRUE(partsOf("").empty());
    EXPECT_TRUE(partsOf(" | ").empty());
}

TEST(ExerciseDetailTest, IsTrimmedAndSplitByTheCheck)
{
    ExerciseDetail detail;
    detail.cues = {" Feet flat ", "Blades back|and down", ""};
    detail.areas = {"shoulder", "knee"};
    detail.benchAngle = -45;
    const auto checked = checkDetail(detail);
    ASSERT_TRUE(checked);
    EXPECT_EQ(checked->cues, (std::vector<std::string>{"Feet flat", "Blades back", "and down"}));
    EXPECT_EQ(checked->areas, detail.areas);
    EXPECT_EQ(checked->benchAngle, -45);
}

FaultCode faultOf(const ExerciseDetail& wrong)
{
    const auto checked = checkDetail(wrong);
    EXPECT_FALSE(checked);
    return checked ? FaultCode::NoBar : checked.error().code;
}

TEST(ExerciseDetailTest, IsRefusedForWhatCannotBeShownOrFound)
{
    ExerciseDetail detail;
    detail.areas = {"Shoulder"};
    EXPECT_EQ(faultOf(detail), FaultCode::NotOneOf) << "areas are the words of the list";
    detail.areas = {"knee", "knee"};
    EXPECT_EQ(faultOf(detail), FaultCode::RepeatedPiece);
    detail.areas.clear();
    detail.cues = {std::string(121, 'x')};
    EXPECT_EQ(faultOf(detail), FaultCode::TooLong);
    detail.cues = {"bell\a"};
    EXPECT_EQ(faultOf(detail), FaultCode::ControlCharacter);
    detail.cues = {"\xC3"};
    EXPECT_EQ(faultOf(detail), FaultCode::NotUtf8);
    detail.cues.clear();
    for (int i = 0; i < 13; ++i) {
        detail.cues.push_back(std::to_string(i));
    }
    EXPECT_EQ(faultOf(detail), FaultCode::OutOfRange);
    detail.cues.pop_back();
    EXPECT_TRUE(checkDetail(detail));
    for (const int angle : {-46, 91}) {
        detail.benchAngle = angle;
        EXPECT_EQ(faultOf(detail), FaultCode::OutOfRange);
    }
    detail.benchAngle = 90;
    EXPECT_TRUE(checkDetail(detail));
}

} // namespace
} // namespace levelbar::ladder_test
