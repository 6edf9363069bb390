// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/bodyweight/push_up_words.h"

#include <gtest/gtest.h>

namespace levelbar::push_up_review_test {
namespace {

const Day kToday{20600};
constexpr RackHoles kRack = {Length::ofMillimetres(300), Length::ofMillimetres(50), 25};

// A woman of 1.65 m whose mass was taken twice.
class PushUpReviewTest : public testing::Test {
protected:
    PushUpReviewTest()
    {
        for (const char* key :
             {"push-up", "incline-push-up", "knee-push-up", "feet-raised-push-up", "dip"}) {
            Exercise exercise;
            exercise.id = {static_cast<std::int64_t>(library.exercises.size()) + 1};
            exercise.key = key;
            library.exercises.push_back(exercise);
        }
        TestKind mass;
        mass.id = {1};
        mass.key = "body-mass";
        mass.unit = "kg";
        library.tests = {mass};
        history.member.sex = Sex::Female;
        history.member.statureTenthMillimetres = 16500;
        history.member.intakeMass = Mass::ofKilograms(75);
        history.trials = {
            {mass.id, Side::Both, {weighed(kToday - 40, 70), weighed(kToday - 5, 66)}}};
    }

    [[nodiscard]] static Trial weighed(Day day, int kilograms)
    {
        Trial trial;
        trial.test = {1};
        trial.day = day;
        trial.valueThousandths = 1000 * kilograms;
        trial.unit = "kg";
        return trial;
    }

    // Counted, two left, on the rack's hole.
    DoneSet& add(const char* key, Day day, int reps, std::optional<int> hole = std::nullopt)
    {
        DoneSet set;
        for (const Exercise& exercise : library.exercises) {
            if (exercise.key == key) {
                set.exercise = exercise.id;
            }
        }
        set.performed.day = day;
        set.performed.reps = reps;
        set.performed.reserve = Reserve{20};
        set.hookHole = hole;
        sets.push_back(set);
        return sets.back();
    }

    [[nodiscard]] PushUpReview review(std::optional<Estimate> bench = std::nullopt) const
    {
        return reviewPushUps({history, library, sets, readings, bench}, {kRack, kToday, {}});
    }

    MemberHistory history;
    Library library;
    std::vector<DoneSet> sets;
    std::vector<DatedReading> readings;
};

TEST_F(PushUpReviewTest, TakesTheBodyMassOfTheDay)
{
    EXPECT_EQ(review().bodyMass, Mass::ofKilograms(66));
    EXPECT_EQ(bodyMassOn(history, library, kToday - 6)->mass, Mass::ofKilograms(70));
    EXPECT_EQ(bodyMassOn(history, library, kToday - 41)->mass, Mass::ofKilograms(75));
    EXPECT_FALSE(bodyMassOn(history, library, kToday - 41)->day);
    history.trials.front().trials.back().isValid = false;
    EXPECT_EQ(review().bodyMass, Mass::ofKilograms(70));
}

TEST_F(PushUpReviewTest, SaysWhatIsMissing)
{
    history.trials.clear();
    history.member.intakeMass.reset();
    EXPECT_TRUE(review().lacksMass);
    EXPECT_TRUE(review().others.empty());
    history.member.statureTenthMillimetres.reset();
    EXPECT_TRUE(review().lacksStature);
    EXPECT_FALSE(sentence(nextPhrases(review(), {})).empty());
}

TEST_F(PushUpReviewTest, WithoutASetThereAreLoadsAndNoReps)
{
    const PushUpReview seen = review();
    EXPECT_FALSE(seen.proposed);
    ASSERT_EQ(seen.others.size(), 3U);
    // The floor of a woman: 70.3 % of body mass by the same statics, worked by hand in the notes.
    EXPECT_NEAR(seen.others.front().load.value, 0.703 * 66.0, 0.3);
    EXPECT_FALSE(seen.others.front().reps);
}

TEST_F(PushUpReviewTest, ProposesTheHoleThatChooseHoleDoes)
{
    add("incline-push-up", kToday - 2, 10, 9);
    const PushUpReview seen = review();
    ASSERT_TRUE(seen.telling);
    EXPECT_EQ(seen.telling->hole, 9);
    const Presser presser{Sex::Female, Length{16500}, Mass::ofKilograms(66)};
    const PushUp done{PushUpKind::HandsRaised, kRack.height(9), {}};
    const auto capacity = capacityFromPushUps(presser, {done, 10, Reserve{20}}).value();
    const auto choice = chooseHole(kRack, presser, {}, capacity).value();
    ASSERT_TRUE(seen.proposed);
    EXPECT_EQ(seen.proposed->hole, choice.hole);
    EXPECT_EQ(seen.proposed->reps, choice.reps);
    EXPECT_EQ(seen.others.size(), 3U);
}

TEST_F(PushUpReviewTest, OnlyCountedSetsWithAReserveTellAndTheLastDayFirst)
{
    add("incline-push-up", kToday - 9, 12, 9);
    add("incline-push-up", kToday - 2, 8, 9);
    add("incline-push-up", kToday - 2, 9, 9);
    add("incline-push-up", kToday - 1, 30, 9).performed.known = HowKnown::Group;
    add("incline-push-up", kToday - 1, 30, 9).performed.reserve.reset();
    add("incline-push-up", kToday - 1, 30);
    add("incline-push-up", kToday - 1, 30, 40);
    add("feet-raised-push-up", kToday - 1, 30);
    add("dip", kToday - 1, 30);
    add("push-up", kToday + 1, 30);
    add("push-up", kToday - 7 * kPushUpWeeks - 1, 30);
    const PushUpReview seen = review();
    ASSERT_TRUE(seen.telling);
    EXPECT_EQ(seen.telling->day, kToday - 2);
    EXPECT_EQ(seen.telling->reps, 9);
}

TEST_F(PushUpReviewTest, ToTheEndIsAReserveOfNone)
{
    DoneSet& set = add("push-up", kToday, 7);
    set.performed.reserve.reset();
    set.performed.stopped = StopReason::NoMore;
    EXPECT_EQ(review().telling->reserve, Reserve{0});
}

TEST_F(PushUpReviewTest, ABenchPressStandsInUntilAPushUpIsCounted)
{
    const Estimate bench{30.0, 27.0, 33.0, kLevel, 9};
    EXPECT_TRUE(review(bench).isFromBench);
    EXPECT_TRUE(review(bench).proposed);
    add("push-up", kToday, 7);
    EXPECT_FALSE(review(bench).isFromBench);
}

TEST_F(PushUpReviewTest, AScaleMovesTheLoadAndAnAbsurdReadingIsPassedOver)
{
    const double before = review().others.front().load.value;
    DatedReading heavy{kToday - 3, {{}, Mass::ofKilograms(50), Mass::ofKilograms(56)}};
    readings = {heavy};
    EXPECT_GT(review().others.front().load.value, before + 2.0);
    EXPECT_EQ(review().lever.readings, 1);
    heavy.reading.lockedOut = Mass::ofKilograms(5);
    heavy.reading.atChest = Mass::ofKilograms(6);
    readings.push_back(heavy);
    EXPECT_EQ(review().refusedReadings, 1);
    EXPECT_EQ(review().lever.readings, 1);
    readings.front().day = kToday + 1;
    EXPECT_EQ(review().lever.readings, 0) << "not read yet that day";
}

TEST_F(PushUpReviewTest, IsSaidInWordsOfTheTrade)
{
    add("incline-push-up", kToday - 2, 10, 9);
    const PushUpReview seen = review();
    const std::string next = sentence(nextPhrases(seen, {}));
    EXPECT_EQ(next.rfind("Hole ", 0), 0U) << next;
    EXPECT_NE(next.find(" cm): about "), std::string::npos) << next;
    EXPECT_NE(sentence(basisPhrases(seen)).find("10 reps with 2 in reserve at hole 9"),
              std::string::npos)
        << sentence(basisPhrases(seen));
    EXPECT_EQ(centimetres(Length{7400}), "74 cm");
    EXPECT_EQ(centimetres(Length{7366}), "73.66 cm");
}

} // namespace
} // namespace levelbar::push_up_review_test
