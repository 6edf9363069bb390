// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/plan/target.h"
#include "core/report/figure_table.h"
#include "core/report/person_report.h"
#include "core/report/take_away.h"
#include "tests/support/sets.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace levelbar::report_test {
namespace {

using tests::day;
using tests::set;

const Day kToday = day("2026-06-30");

Exercise lift(int id, const char* key, const char* name, Pattern pattern, Implement implement)
{
    Exercise made;
    made.id = ExerciseId{id};
    made.key = key;
    made.name = name;
    made.pattern = pattern;
    made.implement = implement;
    return made;
}

Library library()
{
    Library made;
    made.exercises = {
        lift(1,
             "barbell-bench-press",
             "Barbell bench press",
             Pattern::HorizontalPress,
             Implement::Barbell),
        lift(2, "back-squat", "Back squat", Pattern::Squat, Implement::Barbell),
        lift(3, "push-up", "Push-up", Pattern::HorizontalPress, Implement::BodyWeight),
        lift(4, "wall-push-up", "Wall push-up", Pattern::HorizontalPress, Implement::BodyWeight),
        lift(5, "sit-to-stand", "Sit-to-stand", Pattern::Squat, Implement::BodyWeight),
        lift(6, "plank", "Plank", Pattern::Trunk, Implement::BodyWeight),
        lift(7, "glute-bridge", "Glute bridge", Pattern::Hinge, Implement::BodyWeight),
        lift(8,
             "dumbbell-row",
             "Single-arm dumbbell row",
             Pattern::HorizontalPull,
             Implement::Dumbbell),
    };
    for (const std::size_t place : {2U, 3U, 4U, 5U, 6U}) {
        made.exercises[place].load = LoadKind::Added;
    }
    made.exercises[5].amount = AmountKind::Seconds;
    made.exercises[7].sidedness = Sidedness::SingleSided;
    TestKind grip;
    grip.id = TestId{1};
    grip.name = "Grip strength";
    grip.unit = "kg";
    grip.isSided = true;
    TestKind mass;
    mass.id = TestId{2};
    mass.name = "Body mass";
    mass.unit = "kg";
    mass.direction = Direction::None;
    TestKind walk;
    walk.id = TestId{3};
    walk.name = "Timed up and go";
    walk.unit = "s";
    walk.direction = Direction::LessIsBetter;
    made.tests = {grip, mass, walk};
    return made;
}

std::vector<Ladder> ladders()
{
    const auto rung = [](const char* key, int amount) {
        return Rung{key, "", {amount, 2, 2, 0}, {3, 28, 5, 2}, "invented"};
    };
    return {{"push-up",
             "Push-up",
             Pattern::HorizontalPress,
             {rung("wall-push-up", 15), rung("push-up", 12)}},
            {"row", "Row", Pattern::HorizontalPull, {rung("dumbbell-row", 10), rung("x", 5)}},
            {"squat", "Squat", Pattern::Squat, {rung("sit-to-stand", 12), rung("back-squat", 8)}},
            {"hinge", "Hinge", Pattern::Hinge, {rung("glute-bridge", 15), rung("x", 5)}},
            {"trunk", "Trunk", Pattern::Trunk, {rung("plank", 60), rung("x", 5)}}};
}

class ReportTest : public testing::Test {
protected:
    ReportTest()
    {
        history.member.id = MemberId{1};
        history.member.code = "M1";
        history.member.experience = Experience::Novice;
    }

    void addSets(int exercise, double kilograms, int weeks, Side side = Side::Both)
    {
        SetSeries series{ExerciseId{exercise}, side, {}};
        for (int week = weeks; week > 0; --week) {
            series.sets.push_back(set(kToday - 7 * week, 1, kilograms, 8, 2));
        }
        history.sets.push_back(series);
    }

    void addTrial(int test, const char* date, Side side, double value, bool isValid = true)
    {
        if (history.trials.empty() || history.trials.back().test != TestId{test} ||
            history.trials.back().side != side) {
            history.trials.push_back({TestId{test}, side, {}});
        }
        Trial trial;
        trial.member = history.member.id;
        trial.test = TestId{test};
        trial.side = side;
        trial.day = day(date);
        trial.number = static_cast<int>(history.trials.back().trials.size()) + 1;
        trial.valueThousandths = static_cast<std::int64_t>(value * 1000);
        trial.unit = test == 3 ? "s" : "kg";
        trial.isValid = isValid;
        history.trials.back().trials.push_back(trial);
    }

    PersonReport report()
    {
        Reviewer reviewer(m_library, kToday);
        reviewer.add(history);
        m_review = reviewer.finish();
        return personReport(
            {history, m_review.members.front(), m_library, m_kit, EffortScale::Reserve, kToday});
    }

    TakeAway takeAway(HomeKit kit)
    {
        return chooseTakeAway({history, m_library, m_ladders, m_details, kit, kToday});
    }

    MemberHistory history;
    const Library m_library = library();
    const std::vector<Ladder> m_ladders = ladders();
    std::map<ExerciseId, ExerciseDetail> m_details;
    const Kit m_kit = assumedKit();
    Review m_review;
};

TEST_F(ReportTest, ThePersonsMainLiftsComeWithTheTargetsOfTheCard)
{
    addSets(1, 60, 12);
    addSets(2, 80, 6);
    const PersonReport page = report();
    ASSERT_EQ(page.lifts.size(), 2U);
    EXPECT_EQ(page.lifts[0].exercise, "Barbell bench press");
    EXPECT_EQ(page.lifts[0].figure.dots.size(), 12U);
    EXPECT_EQ(page.lifts[1].exercise, "Back squat");
    const auto target =
        targetFor(history, m_library, m_kit, {ExerciseId{1}, Side::Both, 10, Reserve{20}, kToday});
    ASSERT_TRUE(target);
    ASSERT_TRUE(target->progression.load);
    const std::string words = sentence(page.targets.front().headline);
    EXPECT_NE(words.find(target->progression.load->load.number() + " kg × "), std::string::npos)
        << words;
    EXPECT_NE(words.find("Stop with 2 in reserve."), std::string::npos) << words;
    EXPECT_NE(sentence(page.targetCaution).find("Pain stops the set"), std::string::npos);
    EXPECT_EQ(sentence(page.seen), "12 days with sets; last seen on 23 Jun.");
}

TEST_F(ReportTest, AGoalStandsBesideItsTrend)
{
    addSets(1, 60, 12);
    report();
    const PersonReport page =
        personReport({history,
                      m_review.members.front(),
                      m_library,
                      m_kit,
                      EffortScale::Reserve,
                      kToday,
                      {{ExerciseId{1}, Side::Both, Mass::ofKilograms(200), {}, kToday - 7},
                       {ExerciseId{2}, Side::Both, Mass::ofKilograms(100), {}, kToday - 7}}});
    const std::string words = sentence(page.lifts.front().trend);
    EXPECT_NE(words.find("Goal 200 kg: "), std::string::npos) << words;
    EXPECT_EQ(words.find("100 kg"), std::string::npos) << words;
}

TEST_F(ReportTest, OfOneSidedLiftsTheWeakerSideStands)
{
    addSets(8, 20, 8, Side::Left);
    addSets(8, 24, 8, Side::Right);
    const PersonReport page = report();
    ASSERT_EQ(page.lifts.size(), 1U);
    EXPECT_EQ(page.lifts.front().side, Side::Left);
    ASSERT_EQ(page.sides.size(), 1U);
    EXPECT_EQ(sentence(page.sides.front().words).find("Left weaker by"), 0U)
        << sentence(page.sides.front().words);
}

TEST_F(ReportTest, TestsSayBothSidesTheFirstDayAndThatThereIsNoNorm)
{
    addTrial(1, "2025-03-02", Side::Left, 31.0);
    addTrial(1, "2026-06-20", Side::Left, 34.2);
    addTrial(1, "2026-06-20", Side::Left, 50.0, false);
    addTrial(1, "2025-03-02", Side::Right, 30.0);
    addTrial(1, "2026-06-20", Side::Right, 35.26);
    addTrial(2, "2026-06-20", Side::Both, 88.0);
    addTrial(3, "2026-06-20", Side::Both, 9.4);
    addTrial(3, "2026-06-20", Side::Both, 8.9);
    const PersonReport page = report();
    ASSERT_EQ(page.tests.size(), 2U) << "no body mass on a page that lies about";
    EXPECT_EQ(sentence(page.tests[0].words),
              "Left 34.2 kg, right 35.3 kg on 20 Jun. First, 2 Mar 2025: left 31 kg, right 30 kg.");
    EXPECT_EQ(sentence(page.tests[0].norm), "No norm: set beside your own earlier tests only.");
    EXPECT_EQ(sentence(page.tests[1].words), "8.9 s on 20 Jun. Less is better.");
    EXPECT_FALSE(page.testCaution.empty());
}

TEST_F(ReportTest, AnEmptyHistorySaysSo)
{
    const PersonReport page = report();
    EXPECT_EQ(sentence(page.seen), "Nothing is logged yet.");
    EXPECT_TRUE(page.lifts.empty());
    EXPECT_TRUE(page.targets.empty());
    EXPECT_TRUE(page.targetCaution.empty());
}

TEST_F(ReportTest, AtHomeOneStaysAtOrBelowWhatWasDone)
{
    const TakeAway fresh = takeAway(HomeKit::BodyWeight);
    ASSERT_EQ(fresh.items.size(), 3U);
    EXPECT_EQ(fresh.items[0].name, "Wall push-up") << "never done: the easiest";
    EXPECT_EQ(sentence(fresh.items[0].amount), "2 sets of 9."); // three fifths of 15
    EXPECT_EQ(sentence(fresh.items[0].aim),
              "Next aim: 15 clean reps in 2 sets, 2 days running. Then ask about: Push-up.");
    EXPECT_EQ(fresh.items[1].name, "Sit-to-stand");
    EXPECT_EQ(sentence(fresh.items[2].amount), "2 times 36 seconds.");

    addSets(3, 0, 3);
    const TakeAway done = takeAway(HomeKit::BodyWeight);
    EXPECT_EQ(done.items[0].name, "Push-up");
    EXPECT_EQ(sentence(done.items[0].amount), "2 sets of 6.") << "two less than the eight done";
    EXPECT_EQ(sentence(done.items[0].aim), "Next aim: 12 clean reps in 2 sets, 2 days running.");
}

TEST_F(ReportTest, DumbbellsAtHomeBringAPull)
{
    const TakeAway page = takeAway(HomeKit::Dumbbells);
    ASSERT_EQ(page.items.size(), 3U);
    EXPECT_EQ(page.items[1].name, "Single-arm dumbbell row");
    EXPECT_EQ(sentence(page.items[1].amount),
              "2 sets of 6 on each side. A load that leaves about three in reserve.");
}

TEST_F(ReportTest, WhatHurtLatelyIsLeftOut)
{
    addSets(1, 60, 2);
    history.sets.back().sets.back().pain = 3;
    const TakeAway page = takeAway(HomeKit::BodyWeight);
    ASSERT_EQ(page.items.size(), 3U);
    EXPECT_EQ(page.items[0].name, "Sit-to-stand");
    EXPECT_EQ(page.items[2].name, "Glute bridge") << "the next pattern takes its place";
    EXPECT_EQ(sentence(page.leftOut),
              "Push-up: left out, it hurt lately. Ask before you do it at home.");
    history.sets.back().sets.back().pain = 2;
    EXPECT_EQ(takeAway(HomeKit::BodyWeight).items[0].name, "Wall push-up");

    addSets(2, 80, 2);
    history.sets.back().sets.back().stopped = StopReason::Pain;
    const TakeAway legs = takeAway(HomeKit::BodyWeight);
    ASSERT_EQ(legs.items.size(), 2U) << "a squat that hurt leaves the hinge out, too";
    EXPECT_EQ(legs.items[1].name, "Plank");
    EXPECT_EQ(legs.leftOut.size(), 2U);
}

TEST_F(ReportTest, AChartsCsvHoldsDotsAndBand)
{
    addSets(1, 60, 2);
    const StrengthFigure figure =
        strengthFigure(history, m_library, ExerciseId{1}, Side::Both, kToday);
    const std::string csv = figureCsv(figure);
    EXPECT_NE(csv.find(",counted,no,60,kg,8,2\r\n"), std::string::npos) << csv;
    EXPECT_NE(csv.find("band,2026-06-30,"), std::string::npos) << csv;
    for (std::size_t at = 0; at < csv.size();) {
        const std::size_t end = csv.find("\r\n", at);
        const std::string line = csv.substr(at, end - at);
        EXPECT_EQ(std::count(line.begin(), line.end(), ','), 10) << line;
        at = end + 2;
    }
}

} // namespace
} // namespace levelbar::report_test
