// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/review/test_figure.h"
#include "core/review/test_words.h"

#include <gtest/gtest.h>

namespace levelbar::test_figure_test {
namespace {

constexpr Day kToday{20400};

TestKind test(const char* key, const char* unit, Direction direction)
{
    TestKind made;
    made.id = TestId{1};
    made.key = key;
    made.name = key;
    made.unit = unit;
    made.direction = direction;
    return made;
}

std::vector<TestResults> results(int count, double first, double step)
{
    TestResults made{TestId{1}, Side::Both, {}};
    for (int i = 0; i < count; ++i) {
        made.values.push_back({kToday - 14 * (count - 1 - i), first + step * i});
    }
    return {made};
}

std::string trendText(const TestKind& kind, const std::vector<TestResults>& values, Day today)
{
    Library library;
    library.tests = {kind};
    const auto reviews = testTrends(values, library, {}, today);
    return sentence(phrases(reviews.at(0), kind));
}

TEST(TestFigureTest, TheForecastGoesOnFromTheLastValueAndWidens)
{
    Library library;
    library.tests = {test("grip-strength", "kg", Direction::MoreIsBetter)};
    const auto values = results(8, 40.0, 0.5);
    const TestFigure figure = testFigure(values, library, {}, TestId{1}, Side::Both);
    EXPECT_EQ(figure.values.size(), 8U);
    ASSERT_FALSE(figure.band.empty());
    ASSERT_FALSE(figure.forecast.empty());
    EXPECT_EQ(figure.band.back().day, kToday);
    EXPECT_EQ(figure.forecast.front().day, kToday);
    EXPECT_EQ(figure.forecast.front().value, figure.band.back().value);
    EXPECT_EQ(figure.forecast.back().day, kToday + kForecastDays);
    const auto width = [](const BandPoint& point) { return point.high - point.low; };
    EXPECT_GT(width(figure.forecast.back()), width(figure.forecast.front()));
    EXPECT_TRUE(testFigure(values, library, {}, TestId{1}, Side::Left).values.empty());
}

TEST(TestWordsTest, SayTheCallInTheTestsOwnTerms)
{
    const TestKind walk = test("up-and-go", "s", Direction::LessIsBetter);
    const std::string falling = trendText(walk, results(12, 12.0, -0.3), kToday);
    EXPECT_TRUE(falling.starts_with("Falling ")) << falling;
    EXPECT_TRUE(falling.ends_with("Less is better here: that is good.")) << falling;
    const TestKind reps = test("push-ups-to-failure", "reps", Direction::MoreIsBetter);
    const std::string rising = trendText(reps, results(12, 10.0, 2.0), kToday);
    EXPECT_NE(rising.find(" reps a week, "), std::string::npos) << rising;
    const TestKind mass = test("body-mass", "kg", Direction::None);
    EXPECT_EQ(trendText(mass, results(40, 80.0, 0.0), kToday),
              "Holding: we know the change is under 0.15 % a week.");
}

TEST(TestWordsTest, OneDayIsNotDays)
{
    const TestKind grip = test("grip-strength", "kg", Direction::MoreIsBetter);
    EXPECT_TRUE(trendText(grip, results(1, 40.0, 0.0), kToday)
                    .starts_with("Too early: 1 day seen. About 3"))
        << trendText(grip, results(1, 40.0, 0.0), kToday);
    EXPECT_TRUE(trendText(grip, results(3, 40.0, 0.0), kToday)
                    .starts_with("Too early: 3 days seen. About 1 more needed"));
    Trend trend;
    trend.daysSeen = 1;
    EXPECT_TRUE(sentence(phrases(trend)).starts_with("Too early: 1 day seen."));
    trend.daysSeen = 3;
    trend.askAgainOn = parseDay("2026-12-12").value();
    EXPECT_EQ(sentence(phrases(trend)),
              "Too early: 3 days seen. About 1 more needed; ask again after 12 Dec.");
}

TEST(TestWordsTest, ValuesHaveNoNeedlessZeros)
{
    const TestKind grip = test("grip-strength", "kg", Direction::MoreIsBetter);
    EXPECT_EQ(testValue(40.0, grip), "40 kg");
    EXPECT_EQ(testValue(100.0, grip), "100 kg");
    EXPECT_EQ(testValue(42.46, grip), "42.5 kg");
    EXPECT_EQ(testValue(-0.01, grip), "0 kg");
}

} // namespace
} // namespace levelbar::test_figure_test
