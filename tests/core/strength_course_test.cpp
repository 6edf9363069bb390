// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/review/body_mass.h"
#include "core/review/strength_course.h"

#include <gtest/gtest.h>

#include <cmath>

namespace levelbar::strength_course_test {
namespace {

constexpr Day kToday{20400};
constexpr ExerciseId kBench{1};
constexpr TestId kMass{1};

Library library()
{
    Library made;
    Exercise bench;
    bench.id = kBench;
    bench.key = "bench";
    bench.name = "Bench";
    made.exercises = {bench};
    TestKind mass;
    mass.id = kMass;
    mass.key = "body-mass";
    mass.unit = "kg";
    mass.direction = Direction::None;
    made.tests = {mass};
    return made;
}

PerformedSet set(Day day, double kilograms)
{
    PerformedSet made;
    made.day = day;
    made.reps = 8;
    made.reserve = Reserve{20};
    made.load = Mass::ofKilograms(kilograms);
    return made;
}

// A set a week up to `last`, `growth` of the load a week.
MemberHistory history(int weeks, double growth, Day last = kToday)
{
    MemberHistory made;
    made.member.id = MemberId{1};
    SetSeries series{kBench, Side::Both, {}};
    for (int week = weeks - 1; week >= 0; --week) {
        const double load = 60.0 * std::exp(-growth * week);
        series.sets.push_back(set(last - 7 * week, load));
    }
    made.sets = {series};
    return made;
}

Trial weighing(Day day, std::int64_t grams)
{
    Trial trial;
    trial.test = kMass;
    trial.day = day;
    trial.valueThousandths = grams;
    trial.unit = "kg";
    return trial;
}

TEST(StrengthForecastTest, BeginsWhereTheBandEnds)
{
    const Library known = library();
    const MemberHistory person = history(16, 0.01);
    const StrengthCourse course = strengthCourse(person, known, kBench, Side::Both, kToday);
    ASSERT_FALSE(course.forecast.empty());
    const BandPoint& today = course.figure.band.back();
    EXPECT_EQ(course.forecast.front().day, kToday);
    EXPECT_NEAR(course.forecast.front().value, today.value, 1e-6 * today.value);
    EXPECT_NEAR(course.forecast.front().low, today.low, 1e-6 * today.low);
    EXPECT_EQ(course.forecast.back().day, kToday + 42);
}

TEST(StrengthForecastTest, FollowsTheSlopeAndGrowsInDoubt)
{
    const Library known = library();
    const auto rising = strengthForecast(history(20, 0.01), known, kBench, Side::Both, kToday);
    const auto falling = strengthForecast(history(20, -0.01), known, kBench, Side::Both, kToday);
    ASSERT_GE(rising.size(), 3U);
    EXPECT_GT(rising.back().value, 1.01 * rising.front().value);
    EXPECT_LT(falling.back().value, 0.99 * falling.front().value);
    // Damped: never more than the slope itself would lead to.
    EXPECT_LT(rising.back().value, rising.front().value * std::exp(0.012 * 6.0));
    for (std::size_t i = 1; i < rising.size(); ++i) {
        EXPECT_GT(std::log(rising[i].high / rising[i].low),
                  std::log(rising[i - 1].high / rising[i - 1].low));
    }
}

TEST(StrengthForecastTest, TheWeeksToComeAreNoLayOff)
{
    const Library known = library();
    const auto steady = strengthForecast(history(20, 0.0), known, kBench, Side::Both, kToday);
    ASSERT_FALSE(steady.empty());
    EXPECT_GT(steady.back().value, 0.998 * steady.front().value);
}

TEST(StrengthForecastTest, SeesNothingOfWhatCameLater)
{
    const Library known = library();
    MemberHistory person = history(16, 0.01, kToday);
    const auto before = strengthForecast(person, known, kBench, Side::Both, kToday);
    person.sets[0].sets.push_back(set(kToday + 3, 120.0));
    EXPECT_EQ(strengthForecast(person, known, kBench, Side::Both, kToday).back().value,
              before.back().value);
}

TEST(StrengthForecastTest, IsNotMadeFromEvidenceThatIsTooOld)
{
    const Library known = library();
    const MemberHistory gone = history(16, 0.01, kToday - 120);
    EXPECT_TRUE(strengthForecast(gone, known, kBench, Side::Both, kToday).empty());
    EXPECT_TRUE(strengthForecast(gone, known, ExerciseId{9}, Side::Both, kToday).empty());
}

TEST(PersonDaysTest, LayOffsAreThreeWeeksOrMoreAndOneMayLast)
{
    const std::vector<Day> seen = {kToday - 100, kToday - 80, kToday - 59, kToday - 30};
    const std::vector<LayOff> expected = {
        {kToday - 80, kToday - 59}, {kToday - 59, kToday - 30}, {kToday - 30, kToday}};
    EXPECT_EQ(layOffs(seen, kToday), expected);
    EXPECT_TRUE(layOffs({}, kToday).empty());
}

TEST(PersonDaysTest, SeenAndPainfulDaysStandOnce)
{
    MemberHistory person = history(2, 0.0);
    person.sets[0].sets.push_back(set(kToday, 50.0));
    person.sets[0].sets[1].pain = 3;
    person.sets[0].sets[2].pain = 6;
    person.sets[0].sets.push_back(set(kToday + 1, 50.0)); // after the day that is asked
    person.trials = {{kMass, Side::Both, {weighing(kToday - 2, 80'000)}}};
    EXPECT_EQ(seenDays(person, kToday), (std::vector<Day>{kToday - 7, kToday - 2, kToday}));
    EXPECT_EQ(painfulDays(person, kBench, kToday), (std::vector<PainfulDay>{{kToday, 6}}));
    EXPECT_TRUE(painfulDays(person, ExerciseId{2}, kToday).empty());
}

TEST(BodyMassCourseTest, LiesOnLinesBetweenWeighings)
{
    const Library known = library();
    MemberHistory person;
    EXPECT_FALSE(BodyMassCourse(person, known, kToday).on(kToday));
    person.member.intakeMass = Mass::ofKilograms(90);
    EXPECT_EQ(BodyMassCourse(person, known, kToday).on(kToday - 500), 90.0);
    person.trials = {
        {kMass, Side::Both, {weighing(kToday - 20, 80'000), weighing(kToday - 10, 82'000)}}};
    const BodyMassCourse masses(person, known, kToday);
    EXPECT_EQ(masses.on(kToday - 100), 80.0);
    EXPECT_EQ(masses.on(kToday - 15), 81.0);
    EXPECT_EQ(masses.on(kToday), 82.0);
}

} // namespace
} // namespace levelbar::strength_course_test
