// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/erase.h"
#include "storage/goal_store.h"
#include "storage/store_error.h"
#include "tests/support/logbook_fixture.h"

#include <gtest/gtest.h>

namespace levelbar::storage::goal_store_test {
namespace {

using tests::addMember;
using tests::exercise;
using tests::kNow;

const Day kDay{20600};

TEST(GoalStoreTest, KeepsOneGoalAnExerciseAndSideAsItWasTyped)
{
    Logbook logbook = Logbook::inMemory(kNow);
    const MemberId member = addMember(logbook, "M1");
    StrengthGoal goal{exercise(logbook, "Barbell bench press").id,
                      Side::Both,
                      Mass::ofThousandths(185'000, MassUnit::Pound),
                      kDay + 84,
                      kDay};
    const auto write = [&](const auto& work) {
        Action action(logbook, ActionKind::EditGoal, kNow);
        work(action);
        return action.commit();
    };
    const GoalStore store(logbook);
    EXPECT_EQ(write([&](auto& action) { GoalStore::put(action, member, goal); }).members,
              (std::vector{member}));
    EXPECT_EQ(store.ofMember(member), (std::vector{goal}));
    StrengthGoal higher = goal;
    higher.load = Mass::ofKilograms(90.0);
    higher.by.reset();
    write([&](auto& action) { GoalStore::put(action, member, higher); });
    EXPECT_EQ(store.ofMember(member), (std::vector{higher}));
    takeBack(logbook, lastTakeable(logbook).value(), kNow);
    EXPECT_EQ(store.ofMember(member), (std::vector{goal}));
    write([&](auto& action) { GoalStore::remove(action, member, goal.exercise, goal.side); });
    EXPECT_TRUE(store.ofMember(member).empty());
    takeBack(logbook, lastTakeable(logbook).value(), kNow);
    eraseMember(logbook, member);
    EXPECT_TRUE(store.ofMember(member).empty());
}

TEST(GoalStoreTest, AGoalOfNothingIsRefusedByTheFile)
{
    Logbook logbook = Logbook::inMemory(kNow);
    const MemberId member = addMember(logbook, "M1");
    Action action(logbook, ActionKind::EditGoal, kNow);
    const StrengthGoal none{exercise(logbook, "Back squat").id, Side::Both, {}, {}, kDay};
    EXPECT_THROW(GoalStore::put(action, member, none), StoreError);
}

} // namespace
} // namespace levelbar::storage::goal_store_test
