// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later

// The shipped library: is it complete, and what does an update leave alone?
#include "storage/exercise_detail_store.h"
#include "storage/ladder_store.h"
#include "storage/shipped_library.h"
#include "tests/support/logbook_fixture.h"

#include <SQLiteCpp/SQLiteCpp.h>

#include <algorithm>
#include <array>
#include <map>
#include <set>

namespace levelbar::storage::library_test {
namespace {

using tests::exercise;
using tests::kNow;
using tests::TemporaryFolder;

// As if the logbook had been left by a program with another library: every shipped word is old.
void makeLibraryOld(Logbook& logbook)
{
    SQLite::Database& database = logbook.database();
    database.exec("UPDATE exercise SET name = 'Old ' || name, pattern = 10, source = ''"
                  " WHERE is_shipped = 1");
    database.exec("UPDATE exercise_detail SET cues = 'old', cautions = 'old', areas = '',"
                  " bench_angle = 45 WHERE exercise IN (SELECT id FROM exercise WHERE is_shipped)");
    database.exec("DELETE FROM ladder_rung WHERE place > 2 AND ladder IN"
                  " (SELECT id FROM ladder WHERE is_shipped = 1)");
    database.exec("UPDATE ladder SET name = 'Old' WHERE is_shipped = 1");
    database.exec("UPDATE setting SET value = '0' WHERE name = 'library_version'");
}

TEST(ShippedLibraryTest, HoldsAtLeast120ExercisesInNinePatterns)
{
    const Logbook logbook = Logbook::inMemory(kNow);
    std::map<Pattern, int> patterns;
    const Library library = LibraryStore(logbook).all();
    EXPECT_GE(library.exercises.size(), 120U);
    for (const Exercise& each : library.exercises) {
        ++patterns[each.pattern];
    }
    EXPECT_EQ(patterns.size(), 9U);
    EXPECT_FALSE(patterns.contains(Pattern::Other));
    for (const auto& [pattern, count] : patterns) {
        EXPECT_GE(count, 10) << patternWord(pattern);
    }
}

TEST(ShippedLibraryTest, EveryExerciseIsComplete)
{
    const Logbook logbook = Logbook::inMemory(kNow);
    const auto details = ExerciseDetailStore(logbook).all();
    std::set<std::string> names;
    for (const Exercise& each : LibraryStore(logbook).all().exercises) {
        const ExerciseDetail& detail = details.at(each.id);
        EXPECT_FALSE(each.key.empty());
        EXPECT_EQ(each.key.find_first_not_of("abcdefghijklmnopqrstuvwxyz-"), std::string::npos)
            << each.key;
        EXPECT_TRUE(names.insert(each.name).second) << each.name;
        EXPECT_FALSE(each.source.empty()) << each.key;
        EXPECT_GE(detail.cues.size(), 3U) << each.key;
        EXPECT_GE(detail.cautions.size(), 1U) << each.key;
        EXPECT_GE(detail.areas.size(), 1U) << each.key;
        EXPECT_EQ(checkDetail(detail), detail) << each.key;
        const bool isOnABench = each.name.find("bench press") != std::string::npos;
        EXPECT_TRUE(!isOnABench || detail.benchAngle) << each.key;
        // A band's load is not known in kilograms.
        EXPECT_TRUE(each.implement != Implement::Band || each.load == LoadKind::None) << each.key;
    }
}

TEST(ShippedLibraryTest, EveryReferenceLiftIsThereWithARatioAndItsSpread)
{
    const Logbook logbook = Logbook::inMemory(kNow);
    const Library library = LibraryStore(logbook).all();
    int related = 0;
    for (const Exercise& each : library.exercises) {
        const bool hasBase = !each.baseExerciseKey.empty();
        EXPECT_EQ(hasBase, each.ratioToBase.has_value()) << each.key;
        EXPECT_EQ(hasBase, each.ratioSpreadPercent.has_value()) << each.key;
        if (!hasBase) {
            continue;
        }
        ++related;
        const auto base = std::find_if(
            library.exercises.begin(), library.exercises.end(), [&](const Exercise& candidate) {
                return candidate.key == each.baseExerciseKey;
            });
        ASSERT_NE(base, library.exercises.end()) << each.key;
        EXPECT_NE(base->key, each.key);
        // Only lifts for reps with a load of their own have a maximum to compare.
        for (const Exercise* lift : {&each, &*base}) {
            EXPECT_EQ(lift->load, LoadKind::External) << each.key;
            EXPECT_EQ(lift->amount, AmountKind::Reps) << each.key;
        }
        EXPECT_GT(*each.ratioToBase, 0.3) << each.key;
        EXPECT_LT(*each.ratioToBase, 1.4) << each.key;
        EXPECT_GE(*each.ratioSpreadPercent, 5.0) << each.key;
        EXPECT_LE(*each.ratioSpreadPercent, 15.0) << each.key;
    }
    EXPECT_GE(related, 15);
}

TEST(ShippedLibraryTest, ThePushUpFamilyIsThereInFull)
{
    const Logbook logbook = Logbook::inMemory(kNow);
    const auto ladders = LadderStore(logbook).all();
    ASSERT_FALSE(ladders.empty());
    EXPECT_EQ(ladders.front().key, "push-up");
    std::vector<std::string> keys;
    for (const Rung& rung : ladders.front().rungs) {
        if (std::find(keys.begin(), keys.end(), rung.exerciseKey) == keys.end()) {
            keys.push_back(rung.exerciseKey);
        }
    }
    EXPECT_EQ(keys,
              (std::vector<std::string>{"wall-push-up",
                                        "incline-push-up",
                                        "knee-push-up",
                                        "push-up",
                                        "hand-release-push-up",
                                        "feet-raised-push-up",
                                        "weighted-push-up"}));
}

// The names that the outside face promises.
TEST(ShippedLibraryTest, TheNamesThatOthersRelyOnStay)
{
    const Logbook logbook = Logbook::inMemory(kNow);
    const std::array names = {"Barbell bench press",
                              "Incline barbell bench press",
                              "Floor press",
                              "Dumbbell bench press",
                              "Single-arm dumbbell bench press",
                              "Push-up",
                              "Hand-release push-up",
                              "Incline push-up",
                              "Single-leg press",
                              "Single-leg knee extension"};
    for (const char* name : names) {
        EXPECT_EQ(exercise(logbook, name).name, name);
    }
}

// The file was written by the program of schema 1 with the first library, of 58 exercises.
TEST(ShippedLibraryTest, TheFirstLibrarysKeysAndNamesAreUnchanged)
{
    const TemporaryFolder folder;
    const std::filesystem::path path = folder / "v1.levelbar";
    std::filesystem::copy_file(LEVELBAR_SOURCE_DIR "/tests/storage/data/v1.levelbar", path);
    std::map<std::string, std::string> before;
    {
        SQLite::Database raw(path.string(), SQLite::OPEN_READONLY);
        SQLite::Statement select(raw, "SELECT key, name FROM exercise WHERE is_shipped = 1");
        while (select.executeStep()) {
            before.emplace(select.getColumn(0).getString(), select.getColumn(1).getString());
        }
    }
    ASSERT_EQ(before.size(), 58U);
    const Logbook logbook = Logbook::open(path, kNow, {});
    const Library library = LibraryStore(logbook).all();
    for (const auto& [key, name] : before) {
        EXPECT_EQ(exercise(logbook, name.c_str()).key, key);
    }
    // None was left behind with the words of the old library.
    SQLite::Statement old(logbook.database(),
                          "SELECT count(*) FROM exercise WHERE is_shipped = 1 AND "
                          "library_version <> ?");
    old.bind(1, kLibraryVersion);
    ASSERT_TRUE(old.executeStep());
    EXPECT_EQ(old.getColumn(0).getInt(), 0);
    EXPECT_FALSE(ExerciseDetailStore(logbook).find(exercise(logbook, "Push-up").id).cues.empty());
    EXPECT_EQ(LadderStore(logbook).all().size(), 9U);
}

TEST(LibraryUpdateTest, BringsEverythingShippedUpToDate)
{
    Logbook logbook = Logbook::inMemory(kNow);
    const Library library = LibraryStore(logbook).all();
    const auto details = ExerciseDetailStore(logbook).all();
    const auto ladders = LadderStore(logbook).all();
    makeLibraryOld(logbook);
    EXPECT_NE(LibraryStore(logbook).all().exercises, library.exercises);
    EXPECT_NE(ExerciseDetailStore(logbook).all(), details);
    EXPECT_NE(LadderStore(logbook).all(), ladders);
    refreshShippedLibrary(logbook, kNow);
    EXPECT_EQ(LibraryStore(logbook).all().exercises, library.exercises);
    EXPECT_EQ(ExerciseDetailStore(logbook).all(), details);
    EXPECT_EQ(LadderStore(logbook).all(), ladders);
}

TEST(LibraryUpdateTest, LeavesWhatTheGymChangedAndMade)
{
    const TemporaryFolder folder;
    const auto path = folder / "gym.levelbar";
    Exercise own;
    own.name = "Rope climb";
    own.pattern = Pattern::VerticalPull;
    ExerciseDetail ownDetail;
    ownDetail.cues = {"Feet on the rope"};
    ownDetail.benchAngle = 10;
    ExerciseDetail changed;
    Ladder changedLadder;
    {
        Logbook logbook = Logbook::create(path, kNow);
        const Exercise bench = exercise(logbook, "Barbell bench press");
        changed = ExerciseDetailStore(logbook).find(bench.id);
        changed.cues.push_back("Look at the third light");
        changed.benchAngle.reset();
        changedLadder = LadderStore(logbook).all().front();
        changedLadder.rungs.erase(changedLadder.rungs.begin() + 1);
        changedLadder.isShipped = false;
        Action action(logbook, ActionKind::EditGym, kNow);
        own.id = LibraryStore::addExercise(action, own);
        own.isShipped = false;
        ExerciseDetailStore::set(action, own, ownDetail);
        ExerciseDetailStore::set(action, bench, changed);
        LadderStore::put(action, changedLadder);
        SQLite::Statement rename(logbook.database(),
                                 "INSERT INTO exercise_change VALUES (?, 'name', 'Bench')");
        rename.bind(1, bench.id.value);
        rename.exec();
        logbook.database().exec("UPDATE exercise SET is_hidden = 1 WHERE key = 'dip'");
        action.commit();
        makeLibraryOld(logbook);
    }
    const Logbook logbook = Logbook::open(path, kNow, {});
    const ExerciseDetailStore details(logbook);
    EXPECT_EQ(exercise(logbook, "Bench").key, "barbell-bench-press");
    EXPECT_EQ(details.find(exercise(logbook, "Bench").id), changed);
    EXPECT_EQ(exercise(logbook, "Rope climb").id, own.id);
    EXPECT_EQ(details.find(own.id), ownDetail);
    EXPECT_TRUE(exercise(logbook, "Dip").isHidden);
    EXPECT_EQ(exercise(logbook, "Dip").pattern, Pattern::HorizontalPress);
    const auto ladders = LadderStore(logbook).all();
    const auto same = [&](const Ladder& ladder) { return ladder.key == changedLadder.key; };
    EXPECT_EQ(std::count_if(ladders.begin(), ladders.end(), same), 1);
    EXPECT_EQ(*std::find_if(ladders.begin(), ladders.end(), same), changedLadder);
}

TEST(LibraryUpdateTest, PartsThatTheGymDidNotChangeStillMove)
{
    Logbook logbook = Logbook::inMemory(kNow);
    const Exercise bench = exercise(logbook, "Barbell bench press");
    const ExerciseDetail shipped = ExerciseDetailStore(logbook).find(bench.id);
    makeLibraryOld(logbook);
    ExerciseDetail detail = ExerciseDetailStore(logbook).find(bench.id);
    detail.cues = {"Mine"};
    Action action(logbook, ActionKind::EditGym, kNow);
    ExerciseDetailStore::set(action, bench, detail);
    action.commit();
    refreshShippedLibrary(logbook, kNow);
    ExerciseDetail expected = shipped;
    expected.cues = {"Mine"};
    EXPECT_EQ(ExerciseDetailStore(logbook).find(bench.id), expected);
}

TEST(LibraryUpdateTest, AShippedExerciseOfAnOwnOnesNameComesHidden)
{
    Logbook logbook = Logbook::inMemory(kNow);
    const std::int64_t shipped = exercise(logbook, "Trap-bar carry").id.value;
    SQLite::Database& database = logbook.database();
    database.exec("DELETE FROM ladder_rung WHERE exercise = " + std::to_string(shipped));
    database.exec("DELETE FROM exercise_detail WHERE exercise = " + std::to_string(shipped));
    database.exec("DELETE FROM exercise WHERE id = " + std::to_string(shipped));
    Exercise own;
    own.name = "TRAP-BAR carry";
    Action action(logbook, ActionKind::EditGym, kNow);
    own.id = LibraryStore::addExercise(action, own);
    action.commit();
    makeLibraryOld(logbook);
    refreshShippedLibrary(logbook, kNow);
    EXPECT_EQ(exercise(logbook, "trap-bar carry").id, own.id) << "sets go on where they were";
    EXPECT_FALSE(exercise(logbook, "trap-bar carry").isHidden);
    for (const Exercise& each : LibraryStore(logbook).all().exercises) {
        EXPECT_EQ(each.isHidden, each.key == "trap-bar-carry") << each.key;
    }
}

} // namespace
} // namespace levelbar::storage::library_test
