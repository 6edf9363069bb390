// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/plan/prediction.h"
#include "core/review/calibration.h"
#include "core/review/calibration_words.h"
#include "tests/support/sets.h"

#include <gtest/gtest.h>

namespace levelbar::calibration_test {
namespace {

using tests::day;

const Day kToday = day("2026-11-20");
const ExerciseId kBench{1};
const ExerciseId kSquat{2};

// Expected 10 reps to the end, 8 to 12; done with two in reserve.
AnsweredPlan answered(int member, int reps, ExerciseId exercise = kBench)
{
    AnsweredPlan made;
    made.planned.member = MemberId{member};
    made.planned.exercise = exercise;
    made.planned.load = Mass::ofKilograms(60);
    made.planned.prediction = GivenPrediction{10.0, 8.0, 12.0, Experience::Novice, 1, {}};
    made.done = tests::set(kToday, 1, 60, reps, 2);
    return made;
}

TEST(CalibrationTest, CountsWhatFellInsideByExerciseAndExperience)
{
    std::vector<AnsweredPlan> pairs = {answered(1, 8),          // 10 seen: inside
                                       answered(1, 10),         // 12: still inside
                                       answered(2, 11),         // 13: outside
                                       answered(2, 5, kSquat)}; // 7: outside
    pairs[2].planned.prediction->experience.reset();
    const Calibration result = calibrationOf(pairs);
    EXPECT_EQ(result.all.checks, 4);
    EXPECT_EQ(result.all.people, 2);
    EXPECT_EQ(result.all.inside, 2);
    EXPECT_DOUBLE_EQ(result.all.leanReps, (0.0 + 2.0 + 3.0 - 3.0) / 4.0);
    ASSERT_EQ(result.byExercise.size(), 2U);
    EXPECT_EQ(result.byExercise[0].first, kBench);
    EXPECT_EQ(result.byExercise[0].second.inside, 2);
    ASSERT_EQ(result.byExperience.size(), 2U);
    EXPECT_FALSE(result.byExperience[0].first);
    EXPECT_EQ(result.byExperience[1].second.checks, 3);
}

TEST(CalibrationTest, PassesOverWhatShowsNothing)
{
    const auto isReadWith = [](const auto& change) {
        AnsweredPlan pair = answered(1, 8);
        change(pair);
        return rangeCheck(pair).has_value();
    };
    EXPECT_TRUE(isReadWith([](AnsweredPlan&) {}));
    EXPECT_FALSE(isReadWith([](AnsweredPlan& p) { p.planned.prediction.reset(); }));
    EXPECT_FALSE(isReadWith([](AnsweredPlan& p) { p.done.known = HowKnown::Accepted; }));
    EXPECT_FALSE(isReadWith([](AnsweredPlan& p) { p.done.load = Mass::ofKilograms(62.5); }));
    EXPECT_FALSE(isReadWith([](AnsweredPlan& p) { p.done.reserve.reset(); }));
    EXPECT_FALSE(isReadWith([](AnsweredPlan& p) { p.done.stopped = StopReason::Pain; }));
    EXPECT_FALSE(isReadWith([](AnsweredPlan& p) { p.done.kind = SetKind::Ramp; }));
    EXPECT_TRUE(isReadWith([](AnsweredPlan& p) { p.done.kind = SetKind::Test; }));
    EXPECT_TRUE(isReadWith([](AnsweredPlan& p) {
        p.done.reserve.reset();
        p.done.stopped = StopReason::NoMore;
    }));
    AnsweredPlan keyed = answered(1, 8);
    keyed.done.known = HowKnown::Accepted;
    EXPECT_EQ(calibrationOf(std::span(&keyed, 1)).unread, 1);
    EXPECT_EQ(calibrationOf({}).all.checks, 0);
}

// Wilson 1927 solves |share - p| = z sqrt(p (1 - p) / n) for p; so each end must satisfy it.
TEST(CalibrationTest, WilsonsEndsSolveHisEquation)
{
    for (const auto& [hits, of] :
         {std::pair(81, 263), std::pair(15, 148), std::pair(1, 29), std::pair(9, 10)}) {
        const Estimate share = wilsonShare(hits, of);
        for (const double p : {share.low, share.high}) {
            const double z = std::abs(share.value - p) / std::sqrt(p * (1.0 - p) / of);
            EXPECT_NEAR(z, 1.6448536269514722, 1e-9) << hits << " of " << of;
        }
    }
    EXPECT_DOUBLE_EQ(wilsonShare(0, 20).low, 0.0);
    EXPECT_DOUBLE_EQ(wilsonShare(20, 20).high, 1.0);
    EXPECT_LT(wilsonShare(20, 20).low, 0.95);
}

TEST(CalibrationTest, TheLeanGoesByPersonsNotBySets)
{
    // Two persons, fifty sets each: one at 0, the other at -2. Two values, not a hundred.
    std::vector<AnsweredPlan> pairs;
    for (int i = 0; i < 50; ++i) {
        pairs.push_back(answered(1, 8));
        pairs.push_back(answered(2, 6));
    }
    const RangeScore all = calibrationOf(pairs).all;
    ASSERT_TRUE(all.lean);
    EXPECT_DOUBLE_EQ(all.leanReps, -1.0);
    // Mean of two persons, standard error 1, t with one degree of freedom at 0.95: 6.314.
    EXPECT_NEAR(all.lean->low, -1.0 - 6.314, 0.001);
    EXPECT_EQ(loadLean(all), LoadLean::NotClear);
    EXPECT_FALSE(calibrationOf(std::span(pairs.data(), 1)).all.lean);
}

TEST(CalibrationTest, SaysTooHeavyWhenEverybodyFallsShort)
{
    std::vector<AnsweredPlan> pairs;
    for (int person = 1; person <= 12; ++person) {
        pairs.push_back(answered(person, 6 + person % 3)); // 8, 9 or 10 of 10
    }
    EXPECT_EQ(loadLean(calibrationOf(pairs).all), LoadLean::TooHeavy);
    for (AnsweredPlan& pair : pairs) {
        pair.done.reps = *pair.done.reps + 3;
    }
    EXPECT_EQ(loadLean(calibrationOf(pairs).all), LoadLean::TooLight);
}

TEST(CalibrationTest, SaysItInWords)
{
    EXPECT_TRUE(sentence(calibrationPhrases({})).starts_with("Nothing to judge by yet"));
    std::vector<AnsweredPlan> pairs;
    for (int person = 1; person <= 10; ++person) {
        pairs.push_back(answered(person, person <= 9 ? 7 : 5)); // 9 or 7 of 10 expected
    }
    EXPECT_EQ(sentence(calibrationPhrases(calibrationOf(pairs))),
              "9 of 10 sets fell inside the range given before (90 in 100, 65 to 98; 90 were "
              "promised). For everybody together, loads were about 1.2 reps too heavy.");
}

struct Bencher {
    Library library;
    MemberHistory history;
};

// Twelve weeks of 8 reps with two left at 60 kg, which a steady person keeps to.
Bencher bencher()
{
    Bencher made;
    Exercise bench;
    bench.id = kBench;
    bench.name = "Bench";
    made.library.exercises = {bench};
    made.history.member.experience = Experience::Intermediate;
    SetSeries series{kBench, Side::Both, {}};
    for (int ago = 84; ago >= 3; ago -= 3) {
        series.sets.push_back(tests::set(kToday - ago, 1, 60, 8, 2));
    }
    made.history.sets = {series};
    return made;
}

PlannedSet planned(double kilograms, int number = 1)
{
    PlannedSet made;
    made.exercise = kBench;
    made.number = number;
    made.load = Mass::ofKilograms(kilograms);
    made.amount = 8;
    return made;
}

TEST(PredictionTest, ExpectsOfASteadyPersonWhatTheyAlwaysDid)
{
    const Bencher person = bencher();
    std::vector<PlannedSet> sets = {planned(60), planned(50), planned(60, 3)};
    predict(sets, person.history, person.library, kToday, Moment{7});
    ASSERT_TRUE(sets[0].prediction);
    EXPECT_NEAR(sets[0].prediction->reps, 10.0, 0.5);
    EXPECT_LT(sets[0].prediction->low, 9.0);
    EXPECT_GT(sets[0].prediction->high, 11.0);
    EXPECT_GT(sets[1].prediction->reps, sets[0].prediction->reps + 2.0);
    EXPECT_LT(sets[2].prediction->reps, sets[0].prediction->reps - 0.3); // two sets before it
    EXPECT_EQ(sets[0].prediction->experience, Experience::Intermediate);
    EXPECT_EQ(sets[0].prediction->modelVersion, kPredictionVersion);
    EXPECT_EQ(sets[0].prediction->givenAt, Moment{7});
}

TEST(PredictionTest, DoesNotLookAtTheDayItself)
{
    Bencher person = bencher();
    std::vector<PlannedSet> before = {planned(60)};
    predict(before, person.history, person.library, kToday, Moment{});
    person.history.sets[0].sets.push_back(tests::set(kToday, 1, 60, 20, 0));
    std::vector<PlannedSet> after = {planned(60)};
    predict(after, person.history, person.library, kToday, Moment{});
    EXPECT_EQ(before, after);
}

TEST(PredictionTest, KeepsNothingWhereNothingIsKnown)
{
    const Bencher person = bencher();
    std::vector<PlannedSet> sets = {planned(0), planned(60)};
    sets[1].exercise = kSquat;
    sets[1].prediction = GivenPrediction{};
    predict(sets, person.history, person.library, kToday, Moment{});
    EXPECT_FALSE(sets[0].prediction);
    EXPECT_FALSE(sets[1].prediction);
}

} // namespace
} // namespace levelbar::calibration_test
