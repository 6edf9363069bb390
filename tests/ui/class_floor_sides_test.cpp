// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/side_store.h"
#include "tests/ui/class_floor_fixture.h"
#include "ui/floor/floor_sides.h"
#include "ui/floor/typed_set.h"

namespace levelbar::ui::class_floor_sides_test {

namespace {

using ::testing::EndsWith;
using ::testing::HasSubstr;

// Columns of the fixture's class: bench twice, then left and right of the single-arm press.
constexpr int kLeftColumn = 2;
constexpr int kRightColumn = 3;

class ClassFloorSidesTest : public ClassFloorTest {
protected:
    // A review in which Mara differs in the single-arm press.
    [[nodiscard]] ReviewedRosterPointer judged(SideTier tier, Side weaker) const
    {
        auto roster = std::make_shared<ReviewedRoster>();
        roster->library = storage::LibraryStore(*m_logbook).all();
        roster->review.asOf = kClassDay;
        MemberReview member;
        member.member.id = mara;
        SideReview side;
        side.measure.exercise = oneArm;
        side.tier = tier;
        side.weaker = weaker;
        member.sides.push_back(side);
        roster->review.members.push_back(member);
        return roster;
    }

    void openJudged(SideTier tier, Side weaker, int people = 1)
    {
        openPage();
        m_page->setRoster(judged(tier, weaker));
        markPeople(people);
        grid->goTo(grid->model()->index(0, weaker == Side::Left ? kLeftColumn : kRightColumn));
    }

    void prescribe(Day started, bool wantsExtraSet = false)
    {
        storage::Action action(*m_logbook, storage::ActionKind::EditSidePrescription, kClassMoment);
        SidePrescription prescription;
        prescription.exercise = oneArm;
        prescription.started = started;
        prescription.wantsExtraSet = wantsExtraSet;
        storage::SideStore::putPrescription(action, mara, prescription);
        action.commit();
    }

    [[nodiscard]] std::string place() const
    {
        return part<QLabel>("floorPlace")->text().toStdString();
    }

    [[nodiscard]] std::optional<DoneSet> storedSide(Side side) const
    {
        for (const DoneSet& set : stored()) {
            if (set.exercise == oneArm && set.side == side) {
                return set;
            }
        }
        return std::nullopt;
    }
};

} // namespace

TEST_F(ClassFloorSidesTest, TheStartingSideAlternatesFromLastTimeAndIsNamed)
{
    openPage(); // a week ago the left was done first
    markPeople(1);
    EXPECT_EQ(shown(0, kLeftColumn), "14 kg × 10");
    EXPECT_EQ(shown(0, kRightColumn), "first: 14 kg × 10");
    grid->goTo(grid->model()->index(0, kRightColumn));
    EXPECT_THAT(place(), EndsWith("right first"));
}

TEST_F(ClassFloorSidesTest, SomebodyWithoutAPastStartsLeft)
{
    EXPECT_FALSE(lastFirstSide({}, oneArm, kClassDay).has_value());
    openPage();
    markPeople(3);
    EXPECT_THAT(shown(2, kLeftColumn), ::testing::StartsWith("first: "));
}

TEST_F(ClassFloorSidesTest, WhichSideBeganIsReadFromTheLastDayWithBoth)
{
    const auto set = [this](Day day, Side side, int order) {
        DoneSet done;
        done.exercise = oneArm;
        done.side = side;
        done.performed.day = day;
        done.performed.order = order;
        return done;
    };
    const Day day = kClassDay - 7;
    const std::vector<DoneSet> done = {set(day, Side::Right, 3),
                                       set(day, Side::Left, 4),
                                       set(day - 7, Side::Left, 1),
                                       set(day - 7, Side::Right, 2),
                                       set(kClassDay - 1, Side::Left, 1), // one side alone
                                       set(kClassDay, Side::Left, 1)};    // today
    EXPECT_EQ(lastFirstSide(done, oneArm, kClassDay), Side::Right);
    EXPECT_EQ(lastFirstSide(done, oneArm, day), Side::Left);
    EXPECT_FALSE(lastFirstSide(done, bench, kClassDay).has_value());
}

TEST_F(ClassFloorSidesTest, OnTheWorkListTheWeakerSideStarts)
{
    openJudged(SideTier::Act, Side::Left);
    EXPECT_EQ(shown(0, kLeftColumn), "first: 14 kg × 10");
    EXPECT_THAT(place(), HasSubstr("left first, the weaker side"));
}

TEST_F(ClassFloorSidesTest, EnterTakesEverybodysFirstSideBeforeTheOthers)
{
    openJudged(SideTier::Act, Side::Left, 2); // Mara left, Noor alternates to the right
    enter("9");
    EXPECT_EQ(cursor(), std::pair(1, kRightColumn));
    enter("9");
    EXPECT_EQ(cursor(), std::pair(0, kRightColumn));
    enter("9");
    EXPECT_EQ(cursor(), std::pair(1, kLeftColumn));
}

TEST_F(ClassFloorSidesTest, TheFirstSidesRepsAreTheOthersLimitAndEnterStopsThere)
{
    openJudged(SideTier::Act, Side::Left);
    enter("9");
    EXPECT_THAT(said(), EndsWith("The right stops at 9."));
    EXPECT_EQ(shown(0, kRightColumn), "stop at 9");
    EXPECT_EQ(cursor(), std::pair(0, kRightColumn));
    EXPECT_THAT(place(), HasSubstr("stop at 9, as many as the left did"));
    enter("");
    const auto right = storedSide(Side::Right);
    ASSERT_TRUE(right.has_value());
    EXPECT_EQ(right->performed.reps, 9);
    EXPECT_EQ(right->performed.stopped, StopReason::Capped);
    EXPECT_EQ(right->performed.known, HowKnown::Accepted);
    EXPECT_THAT(said(), HasSubstr("capped by the other side"));
}

TEST_F(ClassFloorSidesTest, TheLimitTypedIsCappedUnlessNothingWasLeft)
{
    openJudged(SideTier::Act, Side::Left);
    enter("9");
    enter("9.4");
    EXPECT_EQ(storedSide(Side::Right)->performed.stopped, StopReason::Capped);
    EXPECT_EQ(storedSide(Side::Right)->performed.known, HowKnown::Counted);
    grid->goTo(grid->model()->index(0, kRightColumn));
    enter("9.0");
    EXPECT_FALSE(storedSide(Side::Right)->performed.stopped.has_value());
}

TEST_F(ClassFloorSidesTest, MoreThanTheLimitStaysAndTheLineSaysSo)
{
    openJudged(SideTier::Act, Side::Left);
    enter("9");
    enter("11");
    const auto right = storedSide(Side::Right);
    ASSERT_TRUE(right.has_value());
    EXPECT_EQ(right->performed.reps, 11);
    EXPECT_FALSE(right->performed.stopped.has_value());
    EXPECT_THAT(said(), EndsWith("It went past the limit: the left did 9."));
}

TEST_F(ClassFloorSidesTest, FewerThanTheLimitIsMeasuredAndTheLineSaysSo)
{
    openJudged(SideTier::Act, Side::Left);
    enter("9");
    enter("7.1");
    const auto right = storedSide(Side::Right);
    ASSERT_TRUE(right.has_value());
    EXPECT_EQ(right->performed.reps, 7);
    EXPECT_FALSE(right->performed.stopped.has_value());
    EXPECT_THAT(said(), EndsWith("Other way round today: fewer than the left's 9."));
}

TEST_F(ClassFloorSidesTest, AnAcceptedFirstSideSetsNoLimit)
{
    openJudged(SideTier::Act, Side::Left);
    enter("");
    EXPECT_THAT(said(), EndsWith("Not counted: no limit for the right."));
    EXPECT_EQ(shown(0, kRightColumn), "14 kg × 10");
}

TEST_F(ClassFloorSidesTest, WithoutACapTheOtherSideIsFree)
{
    openPage();
    markPeople(1);
    grid->goTo(grid->model()->index(0, kRightColumn));
    enter("9");
    EXPECT_EQ(shown(0, kLeftColumn), "14 kg × 10");
    EXPECT_TRUE(storage::SideStore(*m_logbook).ofMember(mara).prescriptions.empty());
}

TEST_F(ClassFloorSidesTest, TheCapBeginsWithItsFirstSetAndIsTakenBackWithIt)
{
    openJudged(SideTier::Act, Side::Left);
    enter("9");
    const auto prescriptions = storage::SideStore(*m_logbook).ofMember(mara).prescriptions;
    ASSERT_EQ(prescriptions.size(), 1U);
    EXPECT_EQ(prescriptions.front().started, kClassDay);
    press(Qt::Key_Backspace);
    EXPECT_EQ(shown(0, kRightColumn), "14 kg × 10");
    EXPECT_TRUE(storage::SideStore(*m_logbook).ofMember(mara).prescriptions.empty());
}

TEST_F(ClassFloorSidesTest, TheOtherSideTakesTheSameLoad)
{
    openJudged(SideTier::Act, Side::Left);
    grid->goTo(grid->model()->index(0, kRightColumn));
    keys("l16");
    press(Qt::Key_Enter);
    grid->goTo(grid->model()->index(0, kLeftColumn));
    enter("9");
    enter("");
    EXPECT_EQ(storedSide(Side::Right)->performed.load, Mass::ofKilograms(14));
}

TEST_F(ClassFloorSidesTest, PainEndsTheExerciseForBothSides)
{
    openJudged(SideTier::Act, Side::Left, 2);
    enter("6p4");
    const auto left = storedSide(Side::Left);
    ASSERT_TRUE(left.has_value());
    EXPECT_EQ(left->performed.reps, 6);
    EXPECT_EQ(left->performed.stopped, StopReason::Pain);
    EXPECT_EQ(left->performed.pain, 4);
    EXPECT_THAT(said(), EndsWith("Pain: the exercise is over for both sides today."));
    EXPECT_EQ(shown(0, kRightColumn), "over: pain");
    enter("9"); // Noor's right; Mara's is passed over
    EXPECT_EQ(cursor(), std::pair(1, kLeftColumn));
    grid->goTo(grid->model()->index(0, kRightColumn));
    enter("");
    EXPECT_EQ(fault(), "Pain ended this exercise for both sides today.");
    EXPECT_EQ(stored().size(), 2U);
}

TEST_F(ClassFloorSidesTest, AnOpenPairIsDueAfterTwoWeeksAndIsCounted)
{
    prescribe(kClassDay - 14);
    openJudged(SideTier::Act, Side::Left);
    EXPECT_EQ(shown(0, kLeftColumn), "to one in reserve");
    EXPECT_EQ(shown(0, kRightColumn), "first: to one in reserve");
    grid->goTo(grid->model()->index(0, kRightColumn));
    EXPECT_THAT(place(), HasSubstr("open pair, right first: to one in reserve, both sides"));
    enter("");
    EXPECT_EQ(fault(), "An open pair is counted: type reps and reserve, like 9.1.");
    press(Qt::Key_Escape);
    enter("10.1");
    EXPECT_EQ(shown(0, kLeftColumn), "to one in reserve") << "neither side is capped";
    enter("9.1");
    for (const Side side : {Side::Left, Side::Right}) {
        ASSERT_TRUE(storedSide(side).has_value());
        EXPECT_EQ(storedSide(side)->performed.kind, SetKind::Open);
        EXPECT_FALSE(storedSide(side)->performed.stopped.has_value());
    }
}

TEST_F(ClassFloorSidesTest, TheSetMoreOfTheWeakerSideHasACellOfItsOwn)
{
    {
        storage::BulkWrite write(*m_logbook, "test", kClassMoment);
        storage::ClassStore::setTemplate(write, evening, {{oneArm, 2, {}}});
        write.commit();
    }
    prescribe(kClassDay - 7, true);
    openJudged(SideTier::Act, Side::Left);
    ASSERT_EQ(grid->model()->columnCount(), 6); // L R, L R, and a third pair
    EXPECT_THAT(shown(0, 4), ::testing::StartsWith("one more: "));
    EXPECT_EQ(shown(0, 5), "");
    grid->goTo(grid->model()->index(0, 4));
    EXPECT_THAT(place(), HasSubstr("one set more for the weaker side"));
    enter("9");
    EXPECT_EQ(stored().front().side, Side::Left);
}

// Four weeks under the limit with four or more in reserve.
TEST_F(ClassFloorSidesTest, OnceAWeekTheStrongerSideGoesPastTheLimit)
{
    {
        storage::BulkWrite write(*m_logbook, "test", kClassMoment);
        storage::ClassStore::setTemplate(write, evening, {{oneArm, 2, {}}});
        for (const Side side : {Side::Left, Side::Right}) {
            DoneSet set;
            set.member = mara;
            set.exercise = oneArm;
            set.side = side;
            set.performed.day = kClassDay - 3;
            set.performed.order = side == Side::Left ? 1 : 2;
            set.performed.load = Mass::ofKilograms(14);
            set.performed.reps = 10;
            set.performed.reserve = Reserve{side == Side::Left ? 20 : 50};
            if (side == Side::Right) {
                set.performed.stopped = StopReason::Capped;
            }
            storage::SetStore::add(write, set);
        }
        write.commit();
    }
    prescribe(kClassDay - 30);
    auto roster = std::make_shared<ReviewedRoster>(*judged(SideTier::Act, Side::Left));
    roster->review.members.front().sides.front().openPairs = {{kClassDay - 10, Side::Left, 0.1}};
    openPage();
    m_page->setRoster(roster);
    markPeople(1);
    grid->goTo(grid->model()->index(0, 0));
    enter("9");
    EXPECT_EQ(shown(0, 1), "stop at 9");
    grid->goTo(grid->model()->index(0, 2));
    enter("9");
    EXPECT_THAT(shown(0, 3), ::testing::StartsWith("no limit: "));
    grid->goTo(grid->model()->index(0, 3));
    enter("");
    EXPECT_EQ(fault(), "A set without a limit is counted: type reps and reserve, like 11.2.");
    press(Qt::Key_Escape);
    enter("13.2");
    EXPECT_EQ(stored().back().performed.reps, 13);
    EXPECT_FALSE(stored().back().performed.stopped.has_value());
}

TEST_F(ClassFloorSidesTest, WhoIsSentOnIsNotAskedForTheSet)
{
    openJudged(SideTier::SendOn, Side::Left);
    EXPECT_EQ(shown(0, kLeftColumn), "not today: sent on");
    enter("");
    EXPECT_EQ(fault(), "Sent on: this difference is not ours to train.");
    EXPECT_EQ(stored().size(), 0U);
}

TEST_F(ClassFloorSidesTest, ANewReviewDoesNotTurnAClassRound)
{
    openJudged(SideTier::Act, Side::Left);
    m_page->setRoster(judged(SideTier::Act, Side::Right));
    enter("9");
    EXPECT_EQ(shown(0, kRightColumn), "stop at 9");
}

TEST(TypedSetTest, PainIsAMarkBehindTheAmount)
{
    EXPECT_EQ(parseTypedSet(QStringLiteral("6p"), {})->stopped, StopReason::Pain);
    EXPECT_FALSE(parseTypedSet(QStringLiteral("6/"), {})->pain.has_value());
    EXPECT_EQ(parseTypedSet(QStringLiteral("6.2P10"), {})->pain, 10);
    EXPECT_EQ(parseTypedSet(QStringLiteral("6.2P10"), {})->reserve, Reserve{20});
    EXPECT_FALSE(parseTypedSet(QStringLiteral("6"), {})->stopped.has_value());
    for (const char* bad : {"p", "/", "6p11", "6pp", "p4", "6p4x"}) {
        EXPECT_FALSE(parseTypedSet(QLatin1String(bad), {}).has_value()) << bad;
    }
}

} // namespace levelbar::ui::class_floor_sides_test
