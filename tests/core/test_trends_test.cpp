// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/review/review.h"
#include "core/review/test_trends.h"
#include "tests/support/random.h"

#include <gtest/gtest.h>

#include <cmath>

namespace levelbar::test_trends_test {
namespace {

constexpr Day kToday{20400};
constexpr TestId kGrip{1};
constexpr TestId kWalk{2};
constexpr TestId kPlank{3};
constexpr TestId kReps{4};

Library library()
{
    const auto test = [](TestId id, const char* key, const char* unit, Direction direction) {
        TestKind made;
        made.id = id;
        made.key = key;
        made.name = key;
        made.unit = unit;
        made.direction = direction;
        return made;
    };
    Library made;
    made.tests = {test(kGrip, "grip-strength", "kg", Direction::MoreIsBetter),
                  test(kWalk, "up-and-go", "s", Direction::LessIsBetter),
                  test(kPlank, "plank-hold", "s", Direction::MoreIsBetter),
                  test(kReps, "push-ups-to-failure", "reps", Direction::MoreIsBetter)};
    return made;
}

// A result a fortnight, the last on `last`.
TrialSeries series(TestId test, Side side, const std::vector<double>& values, Day last = kToday - 5)
{
    TrialSeries made{test, side, {}};
    for (std::size_t i = 0; i < values.size(); ++i) {
        Trial trial;
        trial.test = test;
        trial.side = side;
        trial.day = last - 14 * static_cast<int>(values.size() - 1 - i);
        trial.valueThousandths = std::llround(1000.0 * values[i]);
        made.trials.push_back(trial);
    }
    return made;
}

MemberHistory history(std::vector<TrialSeries> trials)
{
    MemberHistory made;
    made.member.id = MemberId{1};
    made.member.code = "M1";
    made.trials = std::move(trials);
    return made;
}

TEST(TestTrendsTest, ByTestAndSideWithTheTestsDirection)
{
    const MemberHistory person =
        history({series(kGrip, Side::Left, {30, 31, 33, 34, 36, 37, 39, 40}),
                 series(kGrip, Side::Right, {35, 35, 34, 35, 35, 35, 36, 35}),
                 series(kWalk, Side::Both, {9, 9.6, 10, 10.4, 11, 11.5, 12, 12.4})});
    const auto reviews = testTrends(person, library(), {}, kToday);
    ASSERT_EQ(reviews.size(), 3U);
    EXPECT_EQ(reviews[0].side, Side::Left);
    EXPECT_EQ(reviews[0].trend.call, TrendCall::Rising);
    EXPECT_EQ(reviews[0].verdict, TrendVerdict::Better);
    EXPECT_EQ(reviews[0].last, (DatedValue{kToday - 5, 40.0}));
    EXPECT_EQ(reviews[1].side, Side::Right);
    EXPECT_EQ(reviews[1].verdict, TrendVerdict::Neither);
    EXPECT_EQ(reviews[2].test, kWalk);
    EXPECT_EQ(reviews[2].trend.call, TrendCall::Rising);
    EXPECT_EQ(reviews[2].verdict, TrendVerdict::Worse);
}

TEST(TestTrendsTest, ANoughtHasNoRatioButIsACountOfReps)
{
    const MemberHistory person = history({series(kPlank, Side::Both, {0, 0, 40, 45}),
                                          series(kReps, Side::Both, {0, 0, 1, 3}),
                                          series(TestId{99}, Side::Both, {5})});
    const auto results = testResults(person, library(), kToday);
    ASSERT_EQ(results.size(), 2U) << "an unknown test has no results";
    EXPECT_EQ(results[0].values.size(), 2U);
    EXPECT_EQ(results[1].values.size(), 4U);
    EXPECT_TRUE(testResults(person, library(), kToday - 100).empty());
}

TEST(TestTrendsTest, NoiseIsLearntFromTheRoster)
{
    tests::Random random(4);
    std::vector<std::vector<TestResults>> all;
    for (int person = 0; person < 40; ++person) {
        std::vector<double> values;
        for (int i = 0; i < 6; ++i) {
            values.push_back(40.0 * std::exp(random.normal(0.0, 0.12)));
        }
        all.push_back(testResults(history({series(kGrip, Side::Both, values)}), library(), kToday));
    }
    const TestNoise noise = poolTestNoise(all, library());
    ASSERT_TRUE(noise.contains(kGrip));
    EXPECT_GT(noise.at(kGrip).spread, 1.5 * kGripMeasure.spread);
    const MemberHistory one = history({series(kGrip, Side::Both, {40, 42, 43, 45, 46})});
    const auto plain = testTrends(one, library(), {}, kToday);
    const auto doubtful = testTrends(one, library(), noise, kToday);
    const auto width = [](const TestReview& review) {
        return review.trend.level.high - review.trend.level.low;
    };
    EXPECT_GT(width(doubtful[0]), 1.2 * width(plain[0]));
}

TEST(TestTrendsTest, AreInTheReviewAsOfItsDay)
{
    const Library known = library();
    Reviewer reviewer(known, kToday - 30);
    reviewer.add(history({series(kGrip, Side::Left, {30, 31, 33, 34, 36, 37, 39, 40})}));
    reviewer.add(history({}));
    const Review review = reviewer.finish();
    ASSERT_EQ(review.members[0].tests.size(), 1U);
    EXPECT_EQ(review.members[0].tests[0].last.day, kToday - 5 - 28);
    EXPECT_EQ(review.members[0].tests[0].trend.valuesSeen, 6);
    EXPECT_TRUE(review.members[1].tests.empty());
}

} // namespace
} // namespace levelbar::test_trends_test
