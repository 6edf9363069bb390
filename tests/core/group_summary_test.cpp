// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/base/share.h"
#include "core/report/group_summary.h"
#include "core/report/suppression.h"
#include "tests/support/sets.h"

#include <gtest/gtest.h>

#include <numeric>

namespace levelbar::group_summary_test {
namespace {

using tests::day;

TEST(ShareTest, IntervalIsWilsonsScore)
{
    // Newcombe 1998, Statistics in Medicine 17:857-872, table I, method 3 (from memory).
    const auto check = [](int part, int whole, double low, double high) {
        const auto share = shareOf(part, whole, 0.95);
        ASSERT_TRUE(share);
        EXPECT_NEAR(share->low, low, 5e-5) << part << " of " << whole;
        EXPECT_NEAR(share->high, high, 5e-5) << part << " of " << whole;
    };
    check(81, 263, 0.2553, 0.3662);
    check(15, 148, 0.0624, 0.1605);
    check(0, 20, 0.0, 0.1611);
    check(1, 29, 0.0061, 0.1718);
}

TEST(ShareTest, EndsSolveTheScoreEquation)
{
    constexpr double kZ = 1.6448536269514722;
    for (int whole = 1; whole < 40; ++whole) {
        for (int part = 0; part <= whole; ++part) {
            const auto share = shareOf(part, whole);
            for (const double end : {share->low, share->high}) {
                const double away = share->value - end;
                EXPECT_NEAR(away * away, kZ * kZ * end * (1.0 - end) / whole, 1e-12);
            }
            EXPECT_LE(share->low, share->value);
            EXPECT_GE(share->high, share->value);
        }
    }
    EXPECT_FALSE(shareOf(0, 0));
    EXPECT_FALSE(shareOf(3, 2));
    EXPECT_FALSE(shareOf(-1, 2));
}

TEST(SuppressionTest, TheSecondSmallestHidesTheOneThatIsTooSmall)
{
    EXPECT_EQ(withheldGroups(std::vector{12, 3, 7, 30}), (std::vector{false, true, true, false}));
    EXPECT_EQ(withheldGroups(std::vector{12, 5, 7}), (std::vector{false, false, false}));
    EXPECT_EQ(withheldGroups(std::vector{12, 3, 4}), (std::vector{false, true, true}));
    // One and two people are three together, who still could be named.
    EXPECT_EQ(withheldGroups(std::vector{12, 1, 2, 9}), (std::vector{false, true, true, true}));
    EXPECT_EQ(withheldGroups(std::vector{3}), (std::vector{true}));
    EXPECT_EQ(withheldGroups(std::vector{3, 50}), (std::vector{true, true}));
    EXPECT_EQ(withheldGroups(std::vector{8, 9, 10}, {false, true, false}),
              (std::vector{true, true, false}));
}

// Every roster of four groups of 0 to 7 people, by what somebody with the total can work out.
TEST(SuppressionTest, WhatIsMissingFromTheTotalNeverSpeaksOfFewPeople)
{
    for (int code = 0; code < 8 * 8 * 8 * 8; ++code) {
        const std::vector sizes = {code % 8, code / 8 % 8, code / 64 % 8, code / 512};
        const std::vector<bool> gone = withheldGroups(sizes);
        int people = 0;
        int groups = 0;
        int shown = 0;
        for (std::size_t i = 0; i < sizes.size(); ++i) {
            if (!gone[i]) {
                ++shown;
                EXPECT_GE(sizes[i], kLeastGroup);
            } else if (sizes[i] > 0) {
                ++groups;
                people += sizes[i];
            }
        }
        const bool isHidden = groups == 0 || (groups >= 2 && people >= kLeastGroup);
        EXPECT_TRUE(isHidden || shown == 0) << testing::PrintToString(sizes);
    }
}

TEST(SuppressionTest, HidesNothingWithoutNeed)
{
    for (int code = 0; code < 512; ++code) {
        const std::vector sizes = {5 + code % 8, 5 + code / 8 % 8, 5 + code / 64};
        EXPECT_EQ(withheldGroups(sizes), (std::vector{false, false, false}));
    }
}

// Groups of the sizes, everybody with ten sets, eight of them counted, and one test; the first
// `rising` of each group rise, the others hold.
struct Gym {
    PeriodFacts facts{day("2026-04-01"), day("2026-06-30"), {}, {}};
    Review review;

    void add(const std::string& group, int people, int rising)
    {
        for (int i = 0; i < people; ++i) {
            const MemberId id{static_cast<std::int64_t>(facts.members.size()) + 1};
            facts.members.push_back({id, group, 10, 8, 1});
            MemberReview member;
            member.member.id = id;
            StrengthReview strength;
            strength.strength.oneRepMax = {60, 55, 65, kLevel, 12};
            strength.trend.call = i < rising ? TrendCall::Rising : TrendCall::Steady;
            member.strength = {strength};
            review.members.push_back(member);
        }
    }
};

TEST(GroupSummaryTest, SumsAndSharesAreOfTheGroup)
{
    Gym gym;
    gym.add("Cold store", 8, 6);
    gym.add("Office", 6, 0);
    gym.facts.meetings.push_back({false, 10, {MemberId{1}, MemberId{9}}, {}, {}});
    gym.facts.meetings.push_back(
        {false, std::nullopt, {MemberId{1}}, {MemberId{2}}, {MemberId{2}}});
    gym.facts.meetings.push_back({true, 10, {}, {MemberId{9}}, {}});
    gym.facts.meetings.push_back({false, 10, {}, {}, {}});
    const GroupSummary summary = groupSummary(gym.facts, gym.review);
    EXPECT_EQ(summary.meetings.held, 2);
    EXPECT_EQ(summary.meetings.cancelled, 1);
    EXPECT_EQ(summary.meetings.unknown, 1);
    EXPECT_EQ(summary.meetings.came, 2) << "of the one whose places are known";
    EXPECT_EQ(summary.meetings.places, 10);
    ASSERT_EQ(summary.groups.size(), 2U);
    const GroupRow& cold = summary.groups.front();
    EXPECT_EQ(cold.group, "Cold store");
    EXPECT_EQ(cold.people, 8);
    EXPECT_EQ(cold.sets, 80);
    EXPECT_EQ(cold.counted, 64);
    EXPECT_EQ(cold.tests, 8);
    EXPECT_EQ(cold.visits, 2);
    EXPECT_EQ(cold.noShows, 1);
    EXPECT_EQ(risingShare(cold), shareOf(6, 8));
    EXPECT_EQ(risingShare(summary.all), shareOf(6, 14));

    const GroupSummary office = groupSummary(gym.facts, gym.review, "Office");
    EXPECT_EQ(office.all, summary.groups.back()) << "the same numbers alone";
    EXPECT_EQ(office.meetings.held, 1);
    EXPECT_EQ(office.meetings.cancelled, 1) << "somebody of it was booked";
    EXPECT_TRUE(office.groups.empty());
}

TEST(GroupSummaryTest, AGroupThatHidesAnotherIsWithheldAloneToo)
{
    Gym gym;
    gym.add("Cold store", 20, 10);
    gym.add("Office", 6, 3);
    gym.add("Yard", 3, 1);
    const GroupSummary summary = groupSummary(gym.facts, gym.review);
    EXPECT_FALSE(summary.groups[0].isWithheld);
    EXPECT_TRUE(summary.groups[1].isWithheld);
    EXPECT_TRUE(summary.groups[2].isWithheld);
    EXPECT_EQ(summary.groups[2].people, 0);
    EXPECT_TRUE(groupSummary(gym.facts, gym.review, "Office").all.isWithheld);
    EXPECT_TRUE(groupSummary(gym.facts, gym.review, "Nobody's").all.isWithheld);
    EXPECT_FALSE(groupSummary(gym.facts, gym.review, "Cold store").all.isWithheld);
}

TEST(GroupSummaryTest, SharesOfFewJudgedPeopleAreWithheldOnTheirOwn)
{
    Gym gym;
    gym.add("Cold store", 20, 10);
    gym.add("Office", 12, 3);
    gym.add("Yard", 9, 1);
    for (std::size_t i = 32; i < 38; ++i) { // six of the yard's nine
        gym.review.members[i].strength.front().trend.call = TrendCall::TooEarly;
    }
    const GroupSummary summary = groupSummary(gym.facts, gym.review);
    EXPECT_EQ(summary.groups[2].people, 9);
    EXPECT_FALSE(risingShare(summary.groups[2]));
    EXPECT_FALSE(risingShare(summary.groups[1])) << "it hides the yard's";
    EXPECT_TRUE(risingShare(summary.groups[0]));
    EXPECT_TRUE(risingShare(summary.all));
}

TEST(GroupSummaryTest, CsvNeverRunsAFormulaAndLeavesWithheldCellsEmpty)
{
    Gym gym;
    gym.add("=cmd(\"x\"), Ltd", 7, 2);
    gym.add("", 6, 2);
    gym.add("Yard", 3, 1);
    gym.add("Zoo", 4, 1);
    const std::string csv = summaryCsv(groupSummary(gym.facts, gym.review));
    EXPECT_NE(csv.find("\"'=cmd(\"\"x\"\"), Ltd\",no,7,"), std::string::npos) << csv;
    EXPECT_NE(csv.find("\"(no group)\",no,6,"), std::string::npos) << csv;
    EXPECT_NE(csv.find("\"Yard\",yes,,,,,,,,,,\r\n"), std::string::npos) << csv;
    EXPECT_NE(csv.find("\"(everyone)\",no,20,0,0,200,160,20,20,6,"), std::string::npos) << csv;
}

} // namespace
} // namespace levelbar::group_summary_test
