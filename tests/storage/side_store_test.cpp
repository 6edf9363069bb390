// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later

#include "storage/erase.h"
#include "storage/migrations.h"
#include "storage/side_store.h"
#include "storage/store_error.h"
#include "storage/trial_store.h"
#include "tests/support/logbook_fixture.h"
#include "tests/support/sets.h"

#include <SQLiteCpp/SQLiteCpp.h>

namespace levelbar::storage::side_store_test {
namespace {

using tests::addMember;
using tests::day;
using tests::exercise;
using tests::kNow;

MeasureKey armPress(const Logbook& logbook)
{
    return {exercise(logbook, "Single-arm dumbbell bench press").id, std::nullopt};
}

MeasureKey grip(const Logbook& logbook)
{
    for (const TestKind& test : LibraryStore(logbook).all().tests) {
        if (test.key == "grip-strength") {
            return {std::nullopt, test.id};
        }
    }
    ADD_FAILURE() << "no grip test in the library";
    return {};
}

KnownReason reason(const MeasureKey& measure, const char* since, const char* text = "plays tennis")
{
    return {measure, text, day(since), std::nullopt, -14.5};
}

template <typename Write> Change write(Logbook& logbook, ActionKind kind, const Write& work)
{
    Action action(logbook, kind, kNow);
    work(action);
    return action.commit();
}

TEST(SideStoreTest, ReasonsComeBackAsTheyWereWritten)
{
    Logbook logbook = Logbook::inMemory(kNow);
    const MemberId member = addMember(logbook, "M1");
    const KnownReason tennis = reason(grip(logbook), "2026-03-01");
    const Change change = write(logbook, ActionKind::EditSideReason, [&](WriteScope& scope) {
        SideStore::putReason(scope, member, tennis);
    });
    EXPECT_TRUE(change.touchesRoster);
    EXPECT_EQ(change.members, std::vector{member});
    const SideRecords records = SideStore(logbook).ofMember(member);
    EXPECT_EQ(records.reasons, std::vector{tennis});
    EXPECT_NE(records.reasonFor(grip(logbook), day("2026-03-01")), nullptr);
    EXPECT_EQ(records.reasonFor(grip(logbook), day("2026-02-28")), nullptr);
    EXPECT_EQ(records.reasonFor(armPress(logbook), day("2026-03-01")), nullptr);
}

TEST(SideStoreTest, ANewReasonEndsTheOneBefore)
{
    Logbook logbook = Logbook::inMemory(kNow);
    const MemberId member = addMember(logbook, "M1");
    write(logbook, ActionKind::EditSideReason, [&](WriteScope& scope) {
        SideStore::putReason(scope, member, reason(grip(logbook), "2026-03-01"));
        SideStore::putReason(scope, member, reason(armPress(logbook), "2026-03-01"));
        SideStore::putReason(scope, member, reason(grip(logbook), "2026-05-01", "old fracture"));
    });
    const SideRecords records = SideStore(logbook).ofMember(member);
    ASSERT_EQ(records.reasons.size(), 3U);
    EXPECT_EQ(records.reasonFor(grip(logbook), day("2026-04-30"))->text, "plays tennis");
    EXPECT_EQ(records.reasonFor(grip(logbook), day("2026-05-01"))->text, "old fracture");
    EXPECT_NE(records.reasonFor(armPress(logbook), day("2026-06-01")), nullptr)
        << "another measure's reason stays";
}

TEST(SideStoreTest, AReasonIsEndedAndTheEndIsTakenBack)
{
    Logbook logbook = Logbook::inMemory(kNow);
    const MemberId member = addMember(logbook, "M1");
    KnownReason tennis = reason(grip(logbook), "2026-03-01");
    write(logbook, ActionKind::EditSideReason, [&](WriteScope& scope) {
        SideStore::putReason(scope, member, tennis);
    });
    tennis.ended = day("2026-04-01");
    write(logbook, ActionKind::EditSideReason, [&](WriteScope& scope) {
        SideStore::putReason(scope, member, tennis);
    });
    EXPECT_EQ(SideStore(logbook).ofMember(member).reasons, std::vector{tennis});
    takeBack(logbook, lastTakeable(logbook).value(), kNow);
    EXPECT_FALSE(SideStore(logbook).ofMember(member).reasons.front().ended);
}

TEST(SideStoreTest, TheUsualThresholdNeedsNoRow)
{
    Logbook logbook = Logbook::inMemory(kNow);
    write(logbook, ActionKind::EditSideThreshold, [&](WriteScope& scope) {
        SideStore::setThreshold(scope, grip(logbook), 15.5);
        SideStore::setThreshold(scope, armPress(logbook), 8.0);
        SideStore::setThreshold(scope, armPress(logbook), 12.0);
    });
    const std::map<MeasureKey, double> both = {{grip(logbook), 15.5}, {armPress(logbook), 12.0}};
    EXPECT_EQ(SideStore(logbook).thresholds(), both);
    write(logbook, ActionKind::EditSideThreshold, [&](WriteScope& scope) {
        SideStore::setThreshold(scope, grip(logbook), kUsualThreshold);
    });
    EXPECT_EQ(SideStore(logbook).thresholds().size(), 1U);
}

TEST(SideStoreTest, OnePrescriptionOfAnExerciseRunsAtATime)
{
    Logbook logbook = Logbook::inMemory(kNow);
    const MemberId member = addMember(logbook, "M1");
    SidePrescription first{*armPress(logbook).exercise, day("2026-03-01"), {}, {}, false};
    write(logbook, ActionKind::EditSidePrescription, [&](WriteScope& scope) {
        SideStore::putPrescription(scope, member, first);
        first.wantsExtraSet = true;
        SideStore::putPrescription(scope, member, first);
    });
    EXPECT_EQ(SideStore(logbook).ofMember(member).prescriptions, std::vector{first});
    SidePrescription second = first;
    second.started = day("2026-06-01");
    EXPECT_THROW(write(logbook,
                       ActionKind::EditSidePrescription,
                       [&](WriteScope& s) { SideStore::putPrescription(s, member, second); }),
                 StoreError);
    first.ended = day("2026-05-24");
    first.why = SideEnd::Closed;
    write(logbook, ActionKind::EditSidePrescription, [&](WriteScope& scope) {
        SideStore::putPrescription(scope, member, first);
        SideStore::putPrescription(scope, member, second);
    });
    const SideRecords records = SideStore(logbook).ofMember(member);
    EXPECT_EQ(records.prescriptions, (std::vector{first, second}));
    EXPECT_EQ(records.prescriptionFor(first.exercise, day("2026-05-24")), nullptr);
    EXPECT_EQ(*records.prescriptionFor(first.exercise, day("2026-06-02")), second);
}

TEST(SideStoreTest, OperationsAreAddedOnceAndTakenAway)
{
    Logbook logbook = Logbook::inMemory(kNow);
    const MemberId member = addMember(logbook, "M1");
    const Surgery knee{"knee", std::nullopt, Side::Left, day("2026-01-15")};
    const Surgery hand{"", grip(logbook), Side::Right, day("2026-02-15")};
    write(logbook, ActionKind::EditSurgery, [&](WriteScope& scope) {
        SideStore::addSurgery(scope, member, knee);
        SideStore::addSurgery(scope, member, hand);
        SideStore::addSurgery(scope, member, knee);
    });
    EXPECT_EQ(SideStore(logbook).ofMember(member).surgeries, (std::vector{knee, hand}));
    write(logbook, ActionKind::EditSurgery, [&](WriteScope& scope) {
        SideStore::removeSurgery(scope, member, hand);
    });
    EXPECT_EQ(SideStore(logbook).ofMember(member).surgeries, std::vector{knee});
}

TEST(SideStoreTest, ErasingAPersonTakesTheirRecordsAlong)
{
    Logbook logbook = Logbook::inMemory(kNow);
    const MemberId gone = addMember(logbook, "M1");
    const MemberId stays = addMember(logbook, "M2");
    write(logbook, ActionKind::EditSideReason, [&](WriteScope& scope) {
        for (const MemberId member : {gone, stays}) {
            SideStore::putReason(scope, member, reason(grip(logbook), "2026-03-01"));
            SideStore::putPrescription(
                scope, member, {*armPress(logbook).exercise, day("2026-03-01"), {}, {}, false});
            SideStore::addSurgery(scope, member, {"knee", {}, Side::Left, day("2026-01-15")});
        }
    });
    eraseMember(logbook, gone);
    const auto all = SideStore(logbook).all();
    ASSERT_EQ(all.size(), 1U);
    EXPECT_EQ(all.begin()->first, stays);
}

TEST(SideStoreTest, AReviewIsToldOfAllOfIt)
{
    Logbook logbook = Logbook::inMemory(kNow);
    const MemberId member = addMember(logbook, "M1");
    write(logbook, ActionKind::EditSideReason, [&](WriteScope& scope) {
        SideStore::putReason(scope, member, reason(grip(logbook), "2026-03-01"));
        SideStore::setThreshold(scope, grip(logbook), 15.0);
    });
    const ReviewSettings settings = SideStore(logbook).reviewSettings();
    EXPECT_EQ(settings.sideRecords.at(member).reasons.size(), 1U);
    EXPECT_EQ(settings.sideThresholds.at(grip(logbook)), 15.0);
    EXPECT_FALSE(settings.areas.at(*armPress(logbook).exercise).empty());
}

// The file was written by the program of schema 3.
TEST(OlderLogbookTest, SchemaThreeOpensAndTakesWhatIsNew)
{
    const tests::TemporaryFolder folder;
    const std::filesystem::path path = folder / "v3.levelbar";
    std::filesystem::copy_file(LEVELBAR_SOURCE_DIR "/tests/storage/data/v3.levelbar", path);
    {
        SQLite::Database raw(path.string(), SQLite::OPEN_READONLY);
        ASSERT_EQ(raw.execAndGet("PRAGMA user_version").getInt(), 3) << "or this tests nothing";
    }
    Logbook logbook = Logbook::open(path, kNow, {});
    EXPECT_EQ(logbook.schemaVersion(), currentSchemaVersion());
    const auto member = MemberStore(logbook).find("W1");
    ASSERT_TRUE(member);
    const auto sets = SetStore(logbook).ofMember(member->id);
    ASSERT_EQ(sets.size(), 2U);
    EXPECT_EQ(sets.front().performed.load, Mass::ofKilograms(14));
    EXPECT_TRUE(SideStore(logbook).all().empty());
    EXPECT_TRUE(SideStore(logbook).thresholds().empty());
    write(logbook, ActionKind::EditSideReason, [&](WriteScope& scope) {
        SideStore::putReason(scope, member->id, reason(grip(logbook), "2026-03-01"));
    });
    EXPECT_EQ(SideStore(logbook).all().size(), 1U);
    const std::string copy = "v3.levelbar.before-v" + std::to_string(currentSchemaVersion());
    EXPECT_TRUE(std::filesystem::exists(folder / copy.c_str()));
}

} // namespace
} // namespace levelbar::storage::side_store_test
