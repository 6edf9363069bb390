// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
// What the plan says reaches the floor: loads, reps, this week's exercises.
#include "storage/class_plan_store.h"
#include "tests/ui/class_floor_fixture.h"
#include "ui/plan/plan_reader.h"

namespace levelbar::ui::class_floor_targets_test {

namespace {

using ::testing::HasSubstr;

class ClassFloorTargetsTest : public ClassFloorTest {
protected:
    // Mara benched 60 kg for eight every week and could have done five more.
    void makeMaraStrong()
    {
        storage::BulkWrite write(*m_logbook, "test", kClassMoment);
        for (int week = 2; week <= 6; ++week) {
            DoneSet set;
            set.member = mara;
            set.exercise = bench;
            set.performed.day = kClassDay - 7 * week;
            set.performed.load = Mass::ofKilograms(60);
            set.performed.reps = 8;
            set.performed.reserve = Reserve{50};
            storage::SetStore::add(write, set);
        }
        write.commit();
    }

    void putWeek(const ClassWeek& week)
    {
        storage::BulkWrite write(*m_logbook, "test", kClassMoment);
        storage::ClassPlanStore::setWeek(write, evening, week);
        write.commit();
    }

    [[nodiscard]] std::string hint() const
    {
        return part<QLabel>("floorHint")->text().toStdString();
    }
};

} // namespace

TEST_F(ClassFloorTargetsTest, SetsArePlannedAtTheLoadsOfThePlanPage)
{
    makeMaraStrong();
    const ClassPlan plan = readClassPlan(*m_logbook, evening, kClassDay);
    const MeetingPlanAnswer answer = planNext(plan, 2, kClassDay);
    std::optional<Mass> aim;
    for (const PlannedTarget& target : answer.targets) {
        if (target.member == mara && target.item == 0) {
            aim = target.load()->load;
        }
    }
    ASSERT_TRUE(aim.has_value());
    ASSERT_GT(aim->kilograms(), 60.0) << "more than last time";
    openPage();
    markPeople(1);
    int seen = 0;
    for (const PlannedSet& set : planned()) {
        if (set.exercise == bench) {
            EXPECT_EQ(set.load, *aim);
            EXPECT_EQ(set.amount, 8) << "no reps in the template: those of last time";
            ++seen;
        }
    }
    EXPECT_EQ(seen, 2);
}

TEST_F(ClassFloorTargetsTest, ALoadThatChangesIsNamedBesideTheLastOne)
{
    makeMaraStrong();
    openPage();
    markPeople(2);
    grid->goTo(grid->model()->index(0, 0));
    const auto place = [this] { return part<QLabel>("floorPlace")->text().toStdString(); };
    EXPECT_THAT(place(), HasSubstr("(last time 60 kg)"));
    grid->goTo(grid->model()->index(1, 0)); // Noor stays at 60
    EXPECT_THAT(place(), ::testing::Not(HasSubstr("last time")));
}

TEST_F(ClassFloorTargetsTest, ThePlansReserveIsAskedForAndNeverTakenAsDone)
{
    makeMaraStrong();
    openPage();
    markPeople(1);
    ASSERT_EQ(planned().front().reserve, Reserve{20});
    enter("");
    ASSERT_EQ(stored().size(), 1U);
    EXPECT_FALSE(stored().front().performed.reserve.has_value());
    EXPECT_EQ(stored().front().performed.known, HowKnown::Accepted);
}

TEST_F(ClassFloorTargetsTest, ALighterWeekHalvesTheSetsAndSaysSo)
{
    putWeek({mondayOf(kClassDay), WeekKind::Lighter, {}, {}});
    openPage();
    EXPECT_THAT(hint(), HasSubstr("A lighter week"));
    markPeople(1);
    EXPECT_EQ(grid->model()->columnCount(), 3) << "one bench set, and a pair of sides";
}

TEST_F(ClassFloorTargetsTest, AWeekWithExercisesOfItsOwnIsDoneInTheTemplatesPlace)
{
    const ExerciseId floorPress = exercise("Floor press");
    putWeek(
        {mondayOf(kClassDay), WeekKind::Usual, {}, {{{floorPress, 4, 6}, 1, Reserve{10}, {}, {}}}});
    openPage();
    EXPECT_THAT(hint(), HasSubstr("This week has exercises of its own"));
    markPeople(1);
    EXPECT_EQ(grid->model()->columnCount(), 4);
    for (const PlannedSet& set : planned()) {
        EXPECT_EQ(set.exercise, floorPress);
    }
}

} // namespace levelbar::ui::class_floor_targets_test
