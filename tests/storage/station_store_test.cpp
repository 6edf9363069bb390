// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "storage/erase.h"
#include "storage/exercise_detail_store.h"
#include "storage/gym_store.h"
#include "storage/migrations.h"
#include "storage/scale_store.h"
#include "storage/setup_store.h"
#include "storage/shipped_library.h"
#include "storage/station_store.h"
#include "storage/store_error.h"
#include "tests/support/logbook_fixture.h"

#include <SQLiteCpp/SQLiteCpp.h>

#include <functional>

namespace levelbar::storage::station_store_test {
namespace {

using tests::addMember;
using tests::exercise;
using tests::kNow;

const Day kToday{20600};

void write(Logbook& logbook, ActionKind kind, const std::function<void(WriteScope&)>& work)
{
    Action action(logbook, kind, kNow);
    work(action);
    action.commit();
}

Rack squatRack()
{
    Rack rack;
    rack.name = "Squat rack";
    rack.holes = {Length{3175}, Length{508}, 28};
    rack.count = 4;
    return rack;
}

// A gym with one rack in a room and two benches without one.
class StationStoreTest : public testing::Test {
protected:
    StationStoreTest()
    {
        write(logbook, ActionKind::EditStation, [this](WriteScope& scope) {
            room = StationStore::put(scope, Room{{}, "Hall"});
            Rack wanted = squatRack();
            wanted.room = room;
            rack = StationStore::put(scope, wanted);
            bench = StationStore::put(scope, Bench{{}, {}, "Bench", {-15, 0, 30}, 2});
        });
    }

    [[nodiscard]] Stations stations() const { return StationStore(logbook).all(); }

    Logbook logbook = Logbook::inMemory(kNow);
    RoomId room;
    RackId rack;
    BenchId bench;
};

TEST_F(StationStoreTest, StationsComeBackAsTheyWerePut)
{
    Rack wanted = squatRack();
    wanted.id = rack;
    wanted.room = room;
    EXPECT_EQ(stations().racks, std::vector{wanted});
    EXPECT_EQ(stations().benches, (std::vector{Bench{bench, {}, "Bench", {-15, 0, 30}, 2}}));
    wanted.holes.count = 30;
    wanted.room.reset();
    write(logbook, ActionKind::EditStation, [&](WriteScope& scope) {
        EXPECT_EQ(StationStore::put(scope, wanted), rack);
    });
    EXPECT_EQ(stations().racks, std::vector{wanted});
    takeBack(logbook, lastTakeable(logbook).value(), kNow);
    EXPECT_EQ(stations().racks.front().holes.count, 28);
}

TEST_F(StationStoreTest, ATakenNameIsRefused)
{
    EXPECT_THROW(write(logbook,
                       ActionKind::EditStation,
                       [](WriteScope& scope) { StationStore::put(scope, squatRack()); }),
                 StoreError);
    EXPECT_EQ(stations().racks.size(), 1U);
}

TEST_F(StationStoreTest, ARackThatGoesLeavesItsCardsUnconfirmedAndComesBackWithThem)
{
    const MemberId member = addMember(logbook, "M1");
    SetupCard card;
    card.member = member;
    card.exercise = exercise(logbook, "Barbell bench press").id;
    card.rack = rack;
    card.hookHole = 9;
    card.safetyHole = 4;
    card.benchAngle = -15;
    card.gripMark = "index finger on the ring";
    card.footPosition = "on blocks";
    card.note = "Hips \"came\" up";
    card.isConfirmed = true;
    write(logbook, ActionKind::EditSetupCard, [&](WriteScope& s) { SetupStore::put(s, card); });
    EXPECT_EQ(SetupStore(logbook).find(member, card.exercise), card);
    write(logbook, ActionKind::EditStation, [&](WriteScope& scope) {
        StationStore::remove(scope, room);
        StationStore::remove(scope, rack);
    });
    const SetupCard left = SetupStore(logbook).find(member, card.exercise).value();
    EXPECT_FALSE(left.isConfirmed);
    EXPECT_FALSE(left.rack);
    EXPECT_EQ(left.hookHole, 9);
    EXPECT_TRUE(stations().racks.empty());
    takeBack(logbook, lastTakeable(logbook).value(), kNow);
    EXPECT_EQ(SetupStore(logbook).ofMember(member), std::vector{card});
    EXPECT_EQ(stations().rooms.size(), 1U);
}

TEST_F(StationStoreTest, ProposalsLearnFromTheConfirmedCardsOfOthers)
{
    const ExerciseId press = exercise(logbook, "Barbell bench press").id;
    std::vector<MemberId> members;
    for (const char* code : {"M1", "M2", "M3"}) {
        members.push_back(addMember(logbook, code));
        SetupCard card;
        card.member = members.back();
        card.exercise = press;
        card.hookHole = static_cast<int>(members.size());
        card.isConfirmed = members.size() != 2;
        write(logbook, ActionKind::EditSetupCard, [&](WriteScope& s) { SetupStore::put(s, card); });
    }
    const auto others = SetupStore(logbook).confirmedBut(press, members[0]);
    ASSERT_EQ(others.size(), 1U);
    EXPECT_EQ(others.front().member, members[2]);
    write(logbook, ActionKind::EditSetupCard, [&](WriteScope& scope) {
        SetupStore::remove(scope, members[2], press);
    });
    EXPECT_TRUE(SetupStore(logbook).confirmedBut(press, members[0]).empty());
}

TEST_F(StationStoreTest, WhatIsGoneIsGoneThatDayOnly)
{
    Kit kit = assumedKit();
    kit.isAssumed = false;
    write(logbook, ActionKind::EditGym, [&](WriteScope& scope) { GymStore::setKit(scope, kit); });
    const PieceKey plates = PieceKey::of(kit.plates.front());
    write(logbook, ActionKind::MarkGone, [&](WriteScope& scope) {
        StationStore::setGone(scope, kToday, plates, 2);
        StationStore::setGone(scope, kToday, plates, 4);
        StationStore::setGone(scope, kToday, PieceKey::of(stations().racks.front()), 1);
    });
    EXPECT_EQ(StationStore(logbook).goneOn(kToday).size(), 2U);
    EXPECT_EQ(StationStore(logbook).goneOn(kToday).front(), (GonePieces{plates, 4}));
    const int owned = kit.plates.front().count;
    EXPECT_EQ(GymStore(logbook).kitOn(kToday).plates.front().count, owned - 4);
    EXPECT_EQ(GymStore(logbook).kitOn(kToday + 1), kit);
    write(logbook, ActionKind::MarkGone, [&](WriteScope& scope) {
        StationStore::setGone(scope, kToday, plates, 0);
    });
    EXPECT_EQ(GymStore(logbook).kitOn(kToday), kit);
    takeBack(logbook, lastTakeable(logbook).value(), kNow);
    EXPECT_EQ(GymStore(logbook).kitOn(kToday).plates.front().count, owned - 4);
    write(logbook, ActionKind::EditStation, [&](WriteScope& s) { StationStore::remove(s, rack); });
    EXPECT_EQ(StationStore(logbook).goneOn(kToday).size(), 1U);
}

TEST_F(StationStoreTest, ScaleReadingsAndCardsGoWithThePerson)
{
    const MemberId member = addMember(logbook, "M1");
    DatedReading reading{kToday, {}};
    reading.reading.pushUp = {PushUpKind::HandsRaised, Length::ofMillimetres(600), {}};
    reading.reading.lockedOut = Mass::ofKilograms(32);
    reading.reading.atChest = Mass::ofThousandths(85'000, MassUnit::Pound);
    SetupCard card;
    card.member = member;
    card.exercise = exercise(logbook, "Back squat").id;
    write(logbook, ActionKind::ReadScale, [&](WriteScope& scope) {
        ScaleStore::put(scope, member, reading);
        reading.reading.lockedOut = Mass::ofKilograms(33);
        ScaleStore::put(scope, member, reading);
        SetupStore::put(scope, card);
    });
    EXPECT_EQ(ScaleStore(logbook).ofMember(member), std::vector{reading});
    EXPECT_EQ(recentActions(logbook, 1).front().members, std::vector{member});
    eraseMember(logbook, member);
    EXPECT_TRUE(ScaleStore(logbook).ofMember(member).empty());
    EXPECT_FALSE(MemberStore(logbook).find("M1"));
}

TEST_F(StationStoreTest, AReadingIsRemovedByItsDayAndHeight)
{
    const MemberId member = addMember(logbook, "M1");
    const DatedReading reading{kToday, {{}, Mass::ofKilograms(50), Mass::ofKilograms(56)}};
    write(logbook, ActionKind::ReadScale, [&](WriteScope& scope) {
        ScaleStore::put(scope, member, reading);
        ScaleStore::remove(scope, member, kToday, Length{1});
    });
    EXPECT_EQ(ScaleStore(logbook).ofMember(member).size(), 1U);
    write(logbook, ActionKind::ReadScale, [&](WriteScope& scope) {
        ScaleStore::remove(scope, member, kToday, {});
    });
    EXPECT_TRUE(ScaleStore(logbook).ofMember(member).empty());
}

TEST(LibraryChangeTest, ARenamedShippedExerciseKeepsItsNameWhenTheLibraryIsRefreshed)
{
    Logbook logbook = Logbook::inMemory(kNow);
    Exercise press = exercise(logbook, "Barbell bench press");
    press.name = "Bench";
    write(logbook, ActionKind::EditExercise, [&](WriteScope& scope) {
        LibraryStore::updateExercise(scope, press);
        LibraryStore::setHidden(scope, exercise(logbook, "Floor press").id, true);
    });
    logbook.database().exec("DELETE FROM setting WHERE name = 'library_version'");
    refreshShippedLibrary(logbook, kNow);
    EXPECT_EQ(exercise(logbook, "Bench").key, "barbell-bench-press");
    EXPECT_TRUE(exercise(logbook, "Floor press").isHidden);
    press.name = "Barbell bench press";
    write(logbook, ActionKind::EditExercise, [&](WriteScope& scope) {
        LibraryStore::updateExercise(scope, press);
    });
    EXPECT_EQ(logbook.database().execAndGet("SELECT count(*) FROM exercise_change").getInt(), 0)
        << "the shipped name is no change";
}

TEST(LibraryChangeTest, AnOwnExerciseChangesInAllItsParts)
{
    Logbook logbook = Logbook::inMemory(kNow);
    Exercise own;
    own.name = "Log press";
    write(logbook, ActionKind::AddExercise, [&](WriteScope& scope) {
        own.id = LibraryStore::addExercise(scope, own);
    });
    own = exercise(logbook, "Log press");
    own.name = "Log clean and press";
    own.pattern = Pattern::VerticalPress;
    own.implement = Implement::Barbell;
    own.sidedness = Sidedness::Either;
    own.amount = AmountKind::Seconds;
    own.load = LoadKind::Added;
    own.baseExerciseKey = "standing-barbell-press";
    own.ratioToBase = 0.9;
    own.ratioSpreadPercent = 12.0;
    own.source = "this gym";
    write(logbook, ActionKind::EditExercise, [&](WriteScope& scope) {
        LibraryStore::updateExercise(scope, own);
    });
    EXPECT_EQ(exercise(logbook, "Log clean and press"), own);
}

// The file was written by schema 5: two people, three sets, a set-up card without a rack.
TEST(OlderLogbookTest, SchemaFiveOpensAndItsCardHasNoRack)
{
    const tests::TemporaryFolder folder;
    const std::filesystem::path path = folder / "v5.levelbar";
    std::filesystem::copy_file(LEVELBAR_SOURCE_DIR "/tests/storage/data/v5.levelbar", path);
    {
        SQLite::Database raw(path.string(), SQLite::OPEN_READONLY);
        ASSERT_EQ(raw.execAndGet("PRAGMA user_version").getInt(), 5) << "or this tests nothing";
    }
    Logbook logbook = Logbook::open(path, kNow, {});
    EXPECT_EQ(logbook.schemaVersion(), currentSchemaVersion());
    const auto member = MemberStore(logbook).find("W1");
    ASSERT_TRUE(member);
    const auto card =
        SetupStore(logbook).find(member->id, exercise(logbook, "Barbell bench press").id);
    ASSERT_TRUE(card);
    EXPECT_EQ(card->hookHole, 9);
    EXPECT_TRUE(card->isConfirmed);
    EXPECT_FALSE(card->rack);
    EXPECT_TRUE(StationStore(logbook).all().racks.empty());
}

} // namespace
} // namespace levelbar::storage::station_store_test
