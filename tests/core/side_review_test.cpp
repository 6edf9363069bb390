// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later

#include "core/review/review.h"
#include "core/review/side_words.h"
#include "core/sides/side_pairs.h"
#include "tests/support/random.h"
#include "tests/support/sets.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace levelbar::side_review_test {
namespace {

using tests::day;
using tests::set;

const Day kToday = day("2026-06-30");
constexpr ExerciseId kArmPress{2};
constexpr ExerciseId kOverhead{3};
constexpr ExerciseId kSquat{4};
constexpr TestId kGrip{1};
const MeasureKey kGripKey{std::nullopt, kGrip};
const MeasureKey kPressKey{kArmPress, std::nullopt};

Exercise exerciseNamed(ExerciseId id, const char* name, Sidedness sides)
{
    Exercise made;
    made.id = id;
    made.name = name;
    made.sidedness = sides;
    return made;
}

Library library()
{
    Library made;
    made.exercises = {exerciseNamed(kArmPress, "Single-arm press", Sidedness::SingleSided),
                      exerciseNamed(kOverhead, "Overhead press", Sidedness::TwoSided),
                      exerciseNamed(kSquat, "Back squat", Sidedness::TwoSided)};
    TestKind grip;
    grip.id = kGrip;
    grip.key = "grip-strength";
    grip.name = "Grip strength";
    grip.unit = "kg";
    grip.isSided = true;
    made.tests = {grip};
    return made;
}

Trial trial(Day on, Side side, double value)
{
    Trial made;
    made.test = kGrip;
    made.day = on;
    made.side = side;
    made.valueThousandths = std::llround(1000.0 * value);
    made.unit = "kg";
    return made;
}

// Grip on `days` days, a week apart, the last one a week ago.
MemberHistory grips(int days, double left, double right)
{
    MemberHistory made;
    made.member.id = MemberId{1};
    made.trials = {{kGrip, Side::Left, {}}, {kGrip, Side::Right, {}}};
    for (int i = days; i > 0; --i) {
        made.trials[0].trials.push_back(trial(kToday - 7 * i, Side::Left, left));
        made.trials[1].trials.push_back(trial(kToday - 7 * i, Side::Right, right));
    }
    return made;
}

// The single-arm press on as many days, both sides to two in reserve.
MemberHistory presses(int days, int leftReps, int rightReps)
{
    MemberHistory made;
    made.member.id = MemberId{1};
    made.sets = {{kArmPress, Side::Left, {}}, {kArmPress, Side::Right, {}}};
    for (int i = days; i > 0; --i) {
        made.sets[0].sets.push_back(set(kToday - 7 * i, 1, 20, leftReps, 2));
        made.sets[1].sets.push_back(set(kToday - 7 * i, 1, 20, rightReps, 2));
    }
    return made;
}

MemberReview
reviewed(const MemberHistory& history, const ReviewSettings& settings = {}, Day on = kToday)
{
    const Library known = library();
    Reviewer reviewer(known, on, settings);
    reviewer.add(history);
    return reviewer.finish().members.front();
}

SideReview
sideOf(const MemberHistory& history, const ReviewSettings& settings = {}, Day on = kToday)
{
    const MemberReview review = reviewed(history, settings, on);
    EXPECT_EQ(review.sides.size(), 1U);
    return review.sides.empty() ? SideReview{} : review.sides.front();
}

ReviewSettings withReason(const MeasureKey& measure, Day since, double agreed)
{
    ReviewSettings settings;
    settings.sideRecords[MemberId{1}].reasons = {
        {measure, "plays tennis", since, std::nullopt, agreed}};
    return settings;
}

ReviewSettings withAreas()
{
    ReviewSettings settings;
    settings.areas = {
        {kArmPress, {"shoulder", "elbow"}}, {kOverhead, {"shoulder"}}, {kSquat, {"knee"}}};
    return settings;
}

void addPain(MemberHistory& history, ExerciseId exercise, Day on)
{
    PerformedSet hurt = set(on, 1, 40, 5, 2);
    hurt.pain = 5;
    history.sets.push_back({exercise, Side::Both, {hurt}});
}

TEST(SideReviewTest, SaysWhyAndSinceWhenItIsListed)
{
    const SideReview late = sideOf(grips(4, 30, 42));
    EXPECT_EQ(late.tier, SideTier::Act);
    EXPECT_EQ(late.listing.why, SideWhy::BeyondThreshold);
    ASSERT_TRUE(late.listing.since);
    EXPECT_GE(*late.listing.since, kToday - 21) << "two days at least before it";
    EXPECT_FALSE(late.listing.isSinceBefore);
    const SideReview early = sideOf(grips(16, 30, 42));
    EXPECT_TRUE(early.listing.isSinceBefore);
    EXPECT_EQ(early.listing.since, kToday - 56);
    EXPECT_EQ(sentence(sincePhrases(early.listing)), "Since 5 May or before.");
}

TEST(SideReviewTest, SaysWhenAndWhyTheNameCameOff)
{
    MemberHistory better = grips(12, 32, 40);
    for (std::size_t i = 6; i < 12; ++i) {
        better.trials[0].trials[i].valueThousandths = 41'000;
    }
    const SideReview review = sideOf(better);
    EXPECT_EQ(review.tier, SideTier::None);
    ASSERT_TRUE(review.left);
    EXPECT_EQ(review.left->why, SideWhy::NotSure);
    EXPECT_GT(review.left->day, kToday - 42);
    EXPECT_FALSE(sideOf(grips(12, 40, 40)).left) << "never was on one";
}

TEST(SideReviewTest, AKnownReasonKeepsTheNameOff)
{
    const MemberHistory history = grips(10, 30, 42);
    const double agreed = sideOf(history).differencePercent.value;
    const SideReview known = sideOf(history, withReason(kGripKey, kToday - 20, agreed));
    EXPECT_EQ(known.tier, SideTier::None);
    EXPECT_EQ(known.listing.why, SideWhy::KnownReason);
    EXPECT_EQ(sentence(listingPhrases(known)), "Known since 10 Jun: plays tennis.");
    ASSERT_TRUE(known.left);
    EXPECT_EQ(known.left->from, SideTier::Act);
    EXPECT_EQ(known.left->why, SideWhy::KnownReason);
    EXPECT_EQ(sideOf(history, withReason(kPressKey, kToday - 20, agreed)).tier, SideTier::Act)
        << "another measure's reason says nothing of this one";
    ReviewSettings ended = withReason(kGripKey, kToday - 20, agreed);
    ended.sideRecords[MemberId{1}].reasons[0].ended = kToday - 5;
    EXPECT_EQ(sideOf(history, ended).tier, SideTier::Act);
}

TEST(SideReviewTest, AMuchLargerDifferenceIsNewInSpiteOfAReason)
{
    const MemberHistory history = grips(10, 30, 42);
    const SideReview larger = sideOf(history, withReason(kGripKey, kToday - 40, 12.0));
    EXPECT_EQ(larger.tier, SideTier::Act);
    ASSERT_TRUE(larger.news);
    EXPECT_EQ(larger.news->what, SideNews::Larger);
    const double now = larger.differencePercent.value;
    EXPECT_FALSE(sideOf(history, withReason(kGripKey, kToday - 40, now - 4.0)).news)
        << "under five points";
    const double otherSide = -now;
    EXPECT_TRUE(sideOf(history, withReason(kGripKey, kToday - 40, otherSide)).news)
        << "as large, on the other side";
}

TEST(SideReviewTest, PainIsNewInSpiteOfAReason)
{
    MemberHistory history = presses(10, 6, 13);
    history.sets[0].sets.back().pain = 4;
    const SideReview hurt = sideOf(history, withReason(kPressKey, kToday - 20, 20.0));
    EXPECT_EQ(hurt.tier, SideTier::SendOn);
    EXPECT_EQ(hurt.listing.why, SideWhy::Hurts);
    ASSERT_TRUE(hurt.news);
    EXPECT_EQ(hurt.news->what, SideNews::Pain);
    EXPECT_EQ(hurt.news->day, kToday - 7);
}

TEST(SideReviewTest, PainInTheSameAreaPausesTheVerdictForTwoWeeks)
{
    MemberHistory history = presses(10, 6, 13);
    EXPECT_EQ(sideOf(history, withAreas()).tier, SideTier::Act);
    addPain(history, kOverhead, kToday - 14);
    const SideReview paused = sideOf(history, withAreas());
    EXPECT_EQ(paused.tier, SideTier::None);
    EXPECT_EQ(paused.listing.why, SideWhy::Paused);
    EXPECT_EQ(sentence(listingPhrases(paused)),
              "Paused: Overhead press hurt on 16 Jun (shoulder). Judged again from 1 Jul.");
    EXPECT_EQ(sideOf(history, withAreas(), kToday + 1).tier, SideTier::Act);
    MemberHistory elsewhere = presses(10, 6, 13);
    addPain(elsewhere, kSquat, kToday - 2);
    EXPECT_EQ(sideOf(elsewhere, withAreas()).tier, SideTier::Act) << "the knee is another area";
}

TEST(SideReviewTest, EveryMeasureHasItsThreshold)
{
    const MemberHistory history = grips(10, 32, 40);
    EXPECT_EQ(sideOf(history).tier, SideTier::Act);
    ReviewSettings settings;
    settings.sideThresholds = {{kGripKey, 30.0}};
    const SideReview review = sideOf(history, settings);
    EXPECT_EQ(review.thresholdPercent, 30.0);
    EXPECT_EQ(review.tier, SideTier::Look);
    settings.sideThresholds = {{kPressKey, 30.0}};
    EXPECT_EQ(sideOf(history, settings).thresholdPercent, kUsualThreshold);
}

TEST(SideReviewTest, AnEntrySlipIsAskedAbout)
{
    MemberHistory history = grips(4, 40, 41);
    history.trials[1].trials[2].valueThousandths = 14'000;
    const MemberReview review = reviewed(history);
    ASSERT_EQ(review.slips.size(), 1U);
    EXPECT_EQ(sentence(phrases(review.slips.front())),
              "Grip strength, 16 Jun: left 40 kg, right 14 kg. A slip of the pen?");
    EXPECT_EQ(review.sides.front().days, 3) << "it counts for nothing";
    MemberHistory pressed = presses(4, 8, 8);
    pressed.sets[0].sets[1].load = Mass::ofKilograms(200);
    ASSERT_EQ(reviewed(pressed).slips.size(), 1U);
    EXPECT_EQ(reviewed(pressed).slips.front().slip.left, "8 x 200 kg");
    EXPECT_TRUE(reviewed(history, withReason(kGripKey, kToday - 14, 0.0)).slips.empty())
        << "a reason agreed since then has answered it";
    EXPECT_TRUE(reviewed(history, {}, kToday + 121).slips.empty()) << "it has no weight any more";
}

TEST(SideReviewTest, AfterAnOperationTheGoodSideBeforeIsTheMeasure)
{
    // Both sides fell from 40 to 30 alike: today's ratio shows nothing.
    MemberHistory history = grips(12, 40, 40);
    for (TrialSeries& side : history.trials) {
        for (std::size_t i = 6; i < 12; ++i) {
            side.trials[i].valueThousandths = 30'000;
        }
    }
    ReviewSettings settings;
    const Day operated = history.trials[0].trials[5].day + 1;
    settings.sideRecords[MemberId{1}].surgeries = {{"", kGripKey, Side::Left, operated}};
    const SideReview review = sideOf(history, settings);
    EXPECT_NEAR(review.differencePercent.value, 0.0, 1.5);
    EXPECT_EQ(review.days, 6) << "what was before the operation is no part of the difference";
    ASSERT_TRUE(review.baseline && review.baseline->percentOfIt);
    EXPECT_NEAR(review.baseline->percentOfIt->value, 75.0, 1e-6);
    EXPECT_LT(review.baseline->percentOfIt->high, 90.0);
    EXPECT_NEAR(*review.baseline->goodBefore, 40.0, 1e-6);
    EXPECT_NEAR(*review.baseline->operatedNow, 30.0, 1e-6);
    settings.sideRecords[MemberId{1}].surgeries = {{"wrist", std::nullopt, Side::Left, operated}};
    EXPECT_TRUE(sideOf(history, settings).baseline) << "by its area";
    settings.sideRecords[MemberId{1}].surgeries = {{"knee", std::nullopt, Side::Left, operated}};
    EXPECT_FALSE(sideOf(history, settings).baseline);
    settings.sideRecords[MemberId{1}].surgeries = {{"", kGripKey, Side::Left, kToday - 100}};
    EXPECT_FALSE(sideOf(history, settings).baseline->percentOfIt) << "never measured before";
}

TEST(SideReviewTest, APersonsWordsDoNotSpeakOfTheList)
{
    SideReview review = sideOf(grips(6, 34, 40));
    const std::string own = sentence(phrases(review));
    for (const SideTier tier : {SideTier::None, SideTier::Look, SideTier::Act, SideTier::SendOn}) {
        review.tier = tier;
        EXPECT_EQ(sentence(phrases(review)), own);
    }
    // The same person beside a roster full of larger differences: off the list or on it, the
    // reason names only the own probability.
    const Library known = library();
    Reviewer reviewer(known, kToday);
    reviewer.add(grips(6, 34, 40));
    for (int i = 2; i < 40; ++i) {
        MemberHistory other = grips(6, 24, 40);
        other.member.id = MemberId{i};
        reviewer.add(other);
    }
    const SideReview crowded = reviewer.finish().members.front().sides.front();
    const std::string why = sentence(listingPhrases(crowded));
    EXPECT_NE(why.find(inHundred(crowded.probabilityBeyondThreshold)), std::string::npos) << why;
}

TEST(SideOrderTest, WhoWentFirstIsKnownAndChangesNothingByItself)
{
    std::vector<PerformedSet> left = {set(kToday, 1, 20, 8, 1)};
    std::vector<PerformedSet> right = {set(kToday, 1, 20, 10, 1)};
    left[0].order = 1;
    right[0].order = 2;
    const auto leftFirst = pairsFromSets(left, right, nullptr);
    std::swap(left[0].order, right[0].order);
    const auto rightFirst = pairsFromSets(left, right, nullptr);
    ASSERT_EQ(leftFirst.size(), 1U);
    ASSERT_EQ(rightFirst.size(), 1U);
    EXPECT_EQ(leftFirst[0].first, Side::Left);
    EXPECT_EQ(rightFirst[0].first, Side::Right);
    EXPECT_EQ(leftFirst[0].logPercent, rightFirst[0].logPercent);
}

TEST(SideOrderTest, TheSecondSidesFatigueListsNobodyWhereTheStartAlternates)
{
    // Equal people; whichever side comes second does 4 % less.
    tests::Random random(41);
    const Library known = library();
    Reviewer reviewer(known, kToday);
    for (int person = 1; person <= 100; ++person) {
        MemberHistory history = grips(10, 40, 40);
        history.member.id = MemberId{person};
        for (std::size_t i = 0; i < 10; ++i) {
            for (std::size_t side = 0; side < 2; ++side) {
                const double tired = (i + side) % 2 == 1 ? 0.96 : 1.0;
                history.trials[side].trials[i].valueThousandths =
                    std::llround(40'000 * tired * std::exp(random.normal(0.0, 0.04)));
            }
        }
        reviewer.add(history);
    }
    const Review review = reviewer.finish();
    EXPECT_EQ(review.look, 0);
    EXPECT_EQ(review.act, 0);
}

} // namespace
} // namespace levelbar::side_review_test
