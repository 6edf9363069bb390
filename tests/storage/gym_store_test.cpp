// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/gym_store.h"
#include "storage/migrations.h"
#include "tests/support/logbook_fixture.h"

#include <gtest/gtest.h>

namespace levelbar::storage::gym_store_test {
namespace {

using tests::kNow;

Kit smallKit()
{
    const auto pounds = [](std::int64_t count) {
        return Mass::ofThousandths(count * 1000, MassUnit::Pound);
    };
    Kit kit;
    kit.bars = {{"Usual", Mass::ofKilograms(20), 6}, {"Light", pounds(35), 1}};
    kit.collars = Mass::ofKilograms(0.5);
    kit.plates = {{Mass::ofKilograms(10), 7}, {pounds(45), 4}};
    kit.handWeights = {{Implement::Dumbbell, Mass::ofKilograms(8), 2},
                       {Implement::Kettlebell, Mass::ofKilograms(16), 1}};
    kit.stackStep = Mass::ofKilograms(5);
    return kit;
}

void saveKit(Logbook& logbook, const Kit& kit)
{
    Action action(logbook, ActionKind::EditGym, kNow);
    GymStore::setKit(action, kit);
    action.commit();
}

TEST(GymStoreTest, UntilSomebodySaysTheUsualKitIsAssumed)
{
    const Logbook logbook = Logbook::inMemory(kNow);
    EXPECT_EQ(GymStore(logbook).kit(), assumedKit());
}

TEST(GymStoreTest, AKitComesBackAsItWasTyped)
{
    Logbook logbook = Logbook::inMemory(kNow);
    saveKit(logbook, smallKit());
    EXPECT_EQ(GymStore(logbook).kit(), smallKit());
}

TEST(GymStoreTest, AChangeOfTheKitIsTakenBackInOneStep)
{
    Logbook logbook = Logbook::inMemory(kNow);
    saveKit(logbook, smallKit());
    Kit other = smallKit();
    other.plates.clear();
    other.bars.front().count = 2;
    saveKit(logbook, other);
    takeBack(logbook, lastTakeable(logbook).value(), kNow);
    EXPECT_EQ(GymStore(logbook).kit(), smallKit());
    takeBack(logbook, lastTakeable(logbook).value(), kNow);
    EXPECT_TRUE(GymStore(logbook).kit().isAssumed);
}

TEST(GymStoreTest, TheScaleOfEffortIsOneChoiceAGym)
{
    Logbook logbook = Logbook::inMemory(kNow);
    EXPECT_EQ(GymStore(logbook).effortScale(), EffortScale::Reserve);
    Action action(logbook, ActionKind::EditGym, kNow);
    GymStore::setEffortScale(action, EffortScale::Rpe);
    action.commit();
    EXPECT_EQ(GymStore(logbook).effortScale(), EffortScale::Rpe);
    takeBack(logbook, lastTakeable(logbook).value(), kNow);
    EXPECT_EQ(GymStore(logbook).effortScale(), EffortScale::Reserve);
}

// The file was written by the program of schema 1.
TEST(OlderLogbookTest, SchemaOneOpensWithEverythingInItAndACopyBeside)
{
    const tests::TemporaryFolder folder;
    const std::filesystem::path path = folder / "v1.levelbar";
    std::filesystem::copy_file(LEVELBAR_SOURCE_DIR "/tests/storage/data/v1.levelbar", path);
    {
        Logbook logbook = Logbook::open(path, kNow, {});
        EXPECT_EQ(logbook.schemaVersion(), currentSchemaVersion());
        const auto member = MemberStore(logbook).find("V2");
        ASSERT_TRUE(member);
        const auto sets = SetStore(logbook).ofMember(member->id);
        ASSERT_EQ(sets.size(), 1U);
        EXPECT_EQ(sets.front().performed.load, Mass::ofThousandths(135'000, MassUnit::Pound));
        EXPECT_EQ(ClassStore(logbook).classesOf(member->id).size(), 1U);
        saveKit(logbook, smallKit());
        EXPECT_EQ(GymStore(logbook).kit(), smallKit());
    }
    const std::string copy = "v1.levelbar.before-v" + std::to_string(currentSchemaVersion());
    EXPECT_TRUE(std::filesystem::exists(folder / copy.c_str()));
}

} // namespace
} // namespace levelbar::storage::gym_store_test
