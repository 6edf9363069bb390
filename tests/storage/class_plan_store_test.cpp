// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/class_plan_store.h"
#include "storage/class_store.h"
#include "tests/support/logbook_fixture.h"

#include <gtest/gtest.h>

namespace levelbar::storage::class_plan_store_test {
namespace {

using tests::kNow;

const Day kMonday{20598};

class ClassPlanStoreTest : public testing::Test {
protected:
    ClassPlanStoreTest()
    {
        act([&](Action& action) { morning = ClassStore::add(action, "Morning"); });
    }

    template <typename Work> void act(const Work& work)
    {
        Action action(logbook, ActionKind::PlanWeek, kNow);
        work(action);
        action.commit();
    }

    Logbook logbook = Logbook::inMemory(kNow);
    ClassPlanStore store{logbook};
    ClassId morning;
    ExerciseId bench = tests::exercise(logbook, "Barbell bench press").id;
    ExerciseId squat = tests::exercise(logbook, "Back squat").id;
    PlanItem first{{bench, 3, 8}, 1, Reserve{10}, 40, 90};
    PlanItem second{{squat, 2, {}}, 2, {}, {}, {}};
};

TEST_F(ClassPlanStoreTest, ATemplatesListKeepsWhatThePlanSaysBesides)
{
    act([&](Action& action) { ClassPlanStore::setItems(action, morning, {first, second}); });
    EXPECT_EQ(store.itemsOf(morning), (std::vector{first, second}));
    // The floor's editor knows exercises, sets and reps only.
    act([&](Action& action) {
        ClassStore::setTemplate(action, morning, {{squat, 4, 5}, {bench, 3, 8}});
    });
    second.what = {squat, 4, 5};
    EXPECT_EQ(store.itemsOf(morning), (std::vector{second, first}));
}

TEST_F(ClassPlanStoreTest, BlocksAndWeeksAreReplacedAndTakenBack)
{
    const ClassWeek week{kMonday, WeekKind::Lighter, "After the tests", {second}};
    act([&](Action& action) {
        ClassPlanStore::setBlocks(action, morning, {{1, 25, 2}, {2, 15, 1}});
        ClassPlanStore::setWeek(action, morning, {kMonday, WeekKind::Usual, "", {first, second}});
    });
    act([&](Action& action) { ClassPlanStore::setWeek(action, morning, week); });
    EXPECT_EQ(store.blocksOf(morning), (std::vector<PlanBlock>{{1, 25, 2}, {2, 15, 1}}));
    EXPECT_EQ(store.weeksOf(morning), std::vector{week});
    act([&](Action& action) { ClassPlanStore::removeWeek(action, morning, kMonday); });
    EXPECT_TRUE(store.weeksOf(morning).empty());
    takeBack(logbook, lastTakeable(logbook).value(), kNow);
    EXPECT_EQ(store.weeksOf(morning), std::vector{week});
    takeBack(logbook, lastTakeable(logbook).value(), kNow);
    EXPECT_EQ(store.weeksOf(morning).at(0).items, (std::vector{first, second}));
}

} // namespace
} // namespace levelbar::storage::class_plan_store_test
