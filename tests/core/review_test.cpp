// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later

#include "core/plan/class_plan.h"
#include "core/review/figures.h"
#include "core/review/review.h"
#include "core/review/wording.h"
#include "tests/support/sets.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace levelbar::review_test {
namespace {

using tests::day;
using tests::set;

const Day kToday = day("2026-06-30");

Library library()
{
    Library made;
    Exercise bench;
    bench.id = ExerciseId{1};
    bench.key = "barbell-bench-press";
    bench.name = "Barbell bench press";
    Exercise arm;
    arm.id = ExerciseId{2};
    arm.key = "single-arm-dumbbell-bench-press";
    arm.name = "Single-arm dumbbell bench press";
    arm.sidedness = Sidedness::SingleSided;
    made.exercises = {bench, arm};
    TestKind grip;
    grip.id = TestId{1};
    grip.key = "grip-strength";
    grip.name = "Grip strength";
    grip.unit = "kg";
    grip.isSided = true;
    TestKind maximum;
    maximum.id = TestId{2};
    maximum.name = "One-rep max: Barbell bench press";
    maximum.unit = "kg";
    maximum.maximumOf = ExerciseId{1};
    made.tests = {grip, maximum};
    return made;
}

MemberHistory history(int id)
{
    MemberHistory made;
    made.member.id = MemberId{id};
    made.member.code = "M" + std::to_string(id);
    made.member.experience = Experience::Novice;
    SetSeries bench{ExerciseId{1}, Side::Both, {}};
    for (int week = 0; week < 12; ++week) {
        bench.sets.push_back(set(kToday - 7 * (12 - week), 1, 60, 8, 2));
    }
    made.sets = {bench};
    return made;
}

bool hasKind(const MemberReview& member, AttentionKind kind)
{
    return std::any_of(member.attention.begin(), member.attention.end(), [&](const Attention& a) {
        return a.kind == kind;
    });
}

TEST(ReviewTest, KnowsWhoIsThereAndWhenTheyWereSeen)
{
    const Library known = library();
    Reviewer reviewer(known, kToday);
    reviewer.add(history(1));
    const Review review = reviewer.finish();
    ASSERT_EQ(review.members.size(), 1U);
    EXPECT_EQ(review.members[0].lastSeen, kToday - 7);
    EXPECT_EQ(review.members[0].daysSeen, 12);
    ASSERT_EQ(review.members[0].strength.size(), 1U);
    EXPECT_EQ(review.members[0].strength[0].strength.lastSet, kToday - 7);
}

TEST(ReviewTest, AnEarlierReviewSeesOnlyWhatWasKnownThen)
{
    const Library known = library();
    Reviewer early(known, kToday - 70);
    early.add(history(1));
    MemberHistory cut = history(1);
    cut.sets[0].sets.resize(3);
    Reviewer short_(known, kToday - 70);
    short_.add(cut);
    const Review a = early.finish();
    const Review b = short_.finish();
    EXPECT_EQ(a.members[0].strength[0].strength.oneRepMax,
              b.members[0].strength[0].strength.oneRepMax);
    EXPECT_EQ(a.members[0].daysSeen, b.members[0].daysSeen);
}

TEST(ReviewTest, PainComesFirst)
{
    const Library known = library();
    MemberHistory hurt = history(1);
    hurt.sets[0].sets.back().pain = 5;
    Reviewer reviewer(known, kToday);
    reviewer.add(hurt);
    const Review review = reviewer.finish();
    ASSERT_FALSE(review.members[0].attention.empty());
    EXPECT_EQ(review.members[0].attention[0].kind, AttentionKind::Pain);
    EXPECT_EQ(sentence(review.members[0].attention[0]),
              "Pain 5 of 10 in Barbell bench press on 23 Jun; sets with pain in four weeks: 1.");
}

TEST(ReviewTest, NotSeenForWeeksIsSaidUntilItIsLongAgo)
{
    const Library known = library();
    for (const auto& [days, isSaid] :
         {std::pair(10, false), std::pair(40, true), std::pair(200, false)}) {
        Reviewer reviewer(known, kToday - 7 + days);
        reviewer.add(history(1));
        EXPECT_EQ(hasKind(reviewer.finish().members[0], AttentionKind::Absence), isSaid) << days;
    }
}

TEST(ReviewTest, SetsAndTestedMaximaAreOneMeasure)
{
    const Library known = library();
    MemberHistory both = history(1);
    Trial tested;
    tested.day = kToday;
    tested.valueThousandths = 80000;
    tested.unit = "kg";
    both.trials = {{TestId{2}, Side::Both, {tested}}};
    Reviewer reviewer(known, kToday);
    reviewer.add(both);
    const Review review = reviewer.finish();
    ASSERT_EQ(review.members[0].strength.size(), 1U);
    EXPECT_EQ(review.members[0].strength[0].strength.oneRepMax.count, 13);
}

TEST(FiguresTest, EverySetAndTestHasItsDot)
{
    const Library known = library();
    MemberHistory mixed = history(1);
    mixed.sets[0].sets[3].known = HowKnown::Accepted;
    mixed.sets[0].sets[4].reserve.reset();
    const StrengthFigure figure = strengthFigure(mixed, known, ExerciseId{1}, Side::Both, kToday);
    EXPECT_EQ(figure.dots.size(), 12U);
    EXPECT_TRUE(figure.dots[3].isBound);
    EXPECT_TRUE(figure.dots[4].isBound);
    EXPECT_FALSE(figure.dots[5].isBound);
    ASSERT_FALSE(figure.band.empty());
    EXPECT_EQ(figure.band.back().day, kToday);
    for (const BandPoint& point : figure.band) {
        EXPECT_LT(point.low, point.value);
        EXPECT_LT(point.value, point.high);
    }
    EXPECT_TRUE(strengthFigure(mixed, known, ExerciseId{2}, Side::Left, kToday).dots.empty());
}

TEST(FiguresTest, TheNearestDotIsTheOnePointedAt)
{
    StrengthFigure figure;
    figure.dots.resize(2);
    figure.dots[0] = {kToday, 50.0, HowKnown::Counted, false, false, std::nullopt};
    figure.dots[1] = {kToday + 10, 60.0, HowKnown::Counted, false, false, std::nullopt};
    EXPECT_EQ(nearestDot(figure, kToday + 1, 51.0, 1.0, 1.0), 0U);
    EXPECT_EQ(nearestDot(figure, kToday + 9, 61.0, 1.0, 1.0), 1U);
    EXPECT_FALSE(nearestDot({}, kToday, 50.0, 1.0, 1.0));
}

TEST(WordingTest, RoundsToWhatTheDoubtAllows)
{
    const Estimate wide{71.4, 66.9, 75.2, kLevel, 14};
    EXPECT_EQ(roundedToDoubt(wide.value, wide), "71");
    const Estimate wider{714.0, 600.0, 830.0, kLevel, 14};
    EXPECT_EQ(roundedToDoubt(wider.value, wider), "720");
    const Estimate fine{5.234, 5.1, 5.4, kLevel, 3};
    EXPECT_EQ(roundedToDoubt(fine.value, fine), "5.25");
}

TEST(WordingTest, KeepsToTheLadder)
{
    EXPECT_EQ(probabilityWord(0.995), "almost certain");
    EXPECT_EQ(probabilityWord(0.93), "very likely");
    EXPECT_EQ(probabilityWord(0.80), "likely");
    EXPECT_EQ(probabilityWord(0.62), "leaning");
    EXPECT_EQ(probabilityWord(0.59), "can't tell");
}

TEST(WordingTest, NamesTheWeakerSideOrNone)
{
    SideReview side;
    side.differencePercent = {12.3, 6.8, 17.9, kLevel, 3};
    side.weaker = Side::Left;
    side.probabilitySide = 0.992;
    EXPECT_EQ(sentence(phrases(side)), "Left weaker by 12 %, 7 to 18 (almost certain).");
    side.differencePercent = {-12.3, -17.9, -6.8, kLevel, 3};
    side.weaker = Side::Right;
    EXPECT_EQ(sentence(phrases(side)), "Right weaker by 12 %, 7 to 18 (almost certain).");
    side.probabilitySide = 0.7;
    EXPECT_EQ(sentence(phrases(side)), "No clear side.");
}

TEST(ClassPlanTest, PlansWhatEachLiftedLast)
{
    const Library known = library();
    const auto done =
        [](Day when, int number, double kilograms, int reps, ExerciseId exercise, Side side) {
            DoneSet made;
            made.member = MemberId{1};
            made.exercise = exercise;
            made.side = side;
            made.performed = set(when, number, kilograms, reps, 1);
            return made;
        };
    const std::vector<DoneSet> past = {
        done(kToday - 14, 1, 55, 8, ExerciseId{1}, Side::Both),
        done(kToday - 7, 1, 60, 8, ExerciseId{1}, Side::Both),
        done(kToday - 7, 2, 57.5, 6, ExerciseId{1}, Side::Both),
        done(kToday - 7, 1, 20, 9, ExerciseId{2}, Side::Left),
    };
    const std::vector<TemplateItem> items = {{ExerciseId{1}, 3, std::nullopt},
                                             {ExerciseId{2}, 1, 10}};
    const auto plan = planFromLast(MeetingId{5}, MemberId{1}, items, known.exercises, past);
    ASSERT_EQ(plan.size(), 5U);
    EXPECT_EQ(plan[0].load.number(), "60");
    EXPECT_EQ(plan[1].load.number(), "57.5");
    EXPECT_EQ(plan[2].load.number(), "57.5") << "a third set goes by the last one";
    EXPECT_EQ(plan[3].side, Side::Left);
    EXPECT_EQ(plan[3].amount, 10);
    EXPECT_TRUE(plan[4].isNew) << "the right side was never done";
}

TEST(ClassPlanTest, ProposesWhatMostPeopleDid)
{
    std::vector<DoneSet> sets;
    for (int person = 1; person <= 6; ++person) {
        for (int number = 1; number <= 3; ++number) {
            DoneSet made;
            made.member = MemberId{person};
            made.meeting = MeetingId{1};
            made.exercise = ExerciseId{1};
            made.performed = set(kToday, number, 60, 8);
            sets.push_back(made);
        }
    }
    DoneSet odd = sets.front();
    odd.exercise = ExerciseId{2};
    sets.push_back(odd);
    const auto items = templateFromHistory(sets);
    ASSERT_EQ(items.size(), 1U);
    EXPECT_EQ(items[0].exercise, ExerciseId{1});
    EXPECT_EQ(items[0].sets, 3);
}

} // namespace
} // namespace levelbar::review_test
