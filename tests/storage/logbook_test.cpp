// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later

#include "storage/backup.h"
#include "storage/erase.h"
#include "storage/history_reader.h"
#include "storage/integrity.h"
#include "storage/migrations.h"
#include "storage/recorded_tables.h"
#include "storage/store_error.h"
#include "storage/trial_store.h"
#include "tests/support/logbook_fixture.h"

#include <SQLiteCpp/SQLiteCpp.h>

#include <algorithm>
#include <fstream>
#include <set>
#include <sstream>
#include <sys/stat.h>

namespace levelbar::storage::logbook_test {
namespace {

using tests::addMember;
using tests::benchSet;
using tests::kNow;
using tests::logSet;
using tests::TemporaryFolder;

const Day kDay{20600};

StoreErrorKind kindOf(const std::function<void()>& work)
{
    try {
        work();
    } catch (const StoreError& error) {
        EXPECT_STRNE(error.what(), "");
        return error.kind();
    }
    ADD_FAILURE() << "nothing was thrown";
    return StoreErrorKind::Other;
}

std::string bytesOf(const std::filesystem::path& path)
{
    std::ifstream in(path, std::ios::binary);
    std::ostringstream bytes;
    bytes << in.rdbuf();
    return bytes.str();
}

int filesIn(const std::filesystem::path& folder)
{
    return static_cast<int>(std::distance(std::filesystem::directory_iterator(folder), {}));
}

TEST(LogbookTest, IsOneFileOfItsOwnersWhenClosed)
{
    const TemporaryFolder folder;
    const auto path = folder / "gym.levelbar";
    {
        Logbook logbook = Logbook::create(path, kNow);
        addMember(logbook, "M1");
        EXPECT_GT(filesIn(folder.path()), 1) << "log and lock stand beside it while it is open";
    }
    EXPECT_EQ(filesIn(folder.path()), 1);

    struct stat status {};

    ASSERT_EQ(::stat(path.c_str(), &status), 0);
    EXPECT_EQ(status.st_mode & 0777U, 0600U);
    EXPECT_EQ(Logbook::open(path, kNow).schemaVersion(), currentSchemaVersion());
}

TEST(LogbookTest, IsNeverMadeOverAnotherFile)
{
    const TemporaryFolder folder;
    std::ofstream(folder / "there") << "mine";
    EXPECT_EQ(kindOf([&] { static_cast<void>(Logbook::create(folder / "there", kNow)); }),
              StoreErrorKind::Exists);
    EXPECT_EQ(bytesOf(folder / "there"), "mine");
}

TEST(LogbookTest, RefusesWhatIsNotOne)
{
    const TemporaryFolder folder;
    std::ofstream(folder / "empty");
    std::ofstream(folder / "text") << std::string(5000, 'x');
    {
        SQLite::Database other((folder / "other").string(),
                               SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
        other.exec("CREATE TABLE t (a)");
    }
    for (const char* name : {"empty", "text", "other"}) {
        const std::string before = bytesOf(folder / name);
        EXPECT_EQ(kindOf([&] { static_cast<void>(Logbook::open(folder / name, kNow)); }),
                  StoreErrorKind::NotALogbook)
            << name;
        EXPECT_EQ(bytesOf(folder / name), before) << name;
    }
    EXPECT_EQ(kindOf([&] { static_cast<void>(Logbook::open(folder / "nothing", kNow)); }),
              StoreErrorKind::NotFound);
    EXPECT_EQ(kindOf([&] { static_cast<void>(Logbook::open(folder.path(), kNow)); }),
              StoreErrorKind::NotALogbook);
}

TEST(LogbookTest, LeavesANewerOneUntouched)
{
    const TemporaryFolder folder;
    const auto path = folder / "newer.levelbar";
    Logbook::create(path, kNow).close();
    {
        SQLite::Database raw(path.string(), SQLite::OPEN_READWRITE);
        raw.exec("PRAGMA user_version = 99");
    }
    const std::string before = bytesOf(path);
    EXPECT_EQ(kindOf([&] { static_cast<void>(Logbook::open(path, kNow)); }),
              StoreErrorKind::TooNew);
    EXPECT_EQ(bytesOf(path), before);
}

TEST(LogbookTest, HasOneWriterAndManyReaders)
{
    const TemporaryFolder folder;
    const auto path = folder / "gym.levelbar";
    Logbook writer = Logbook::create(path, kNow);
    addMember(writer, "M1");
    EXPECT_EQ(kindOf([&] { static_cast<void>(Logbook::open(path, kNow)); }), StoreErrorKind::Busy);
    OpenOptions reading;
    reading.mode = OpenMode::ReadOnly;
    Logbook reader = Logbook::open(path, kNow, reading);
    EXPECT_EQ(MemberStore(reader).all().size(), 1U);
    EXPECT_EQ(kindOf([&] { Action(reader, ActionKind::LogSet, kNow); }), StoreErrorKind::ReadOnly);
    const auto version = reader.dataVersion();
    addMember(writer, "M2");
    EXPECT_NE(reader.dataVersion(), version);
    EXPECT_EQ(MemberStore(reader).all().size(), 2U);
    reader.close();
    writer.close();
    EXPECT_EQ(filesIn(folder.path()), 1);
}

TEST(MigrationsTest, AStepThatFailsLeavesTheVersionBefore)
{
    const TemporaryFolder folder;
    const auto path = folder / "gym.levelbar";
    Logbook::create(path, kNow).close();
    SQLite::Database raw(path.string(), SQLite::OPEN_READWRITE);
    const int known = currentSchemaVersion();
    const std::array<Migration, 2> steps = {
        {{known, "known", {}},
         {known + 1, "broken", {"CREATE TABLE half (a) STRICT", "CREATE TABLE wrong ("}}}};
    EXPECT_ANY_THROW(migrate(raw, path, steps));
    EXPECT_EQ(raw.execAndGet("PRAGMA user_version").getInt(), known);
    EXPECT_FALSE(raw.tableExists("half"));
    const std::string copy = "gym.levelbar.before-v" + std::to_string(known + 1);
    EXPECT_TRUE(std::filesystem::exists(folder / copy.c_str())) << "a copy was made before";
}

TEST(SchemaTest, KeepsTheRulesThatTakingBackReliesOn)
{
    const Logbook logbook = Logbook::inMemory(kNow);
    SQLite::Database& database = logbook.database();
    EXPECT_EQ(
        database.execAndGet("SELECT count(*) FROM sqlite_schema WHERE type = 'trigger'").getInt(),
        0);
    EXPECT_EQ(database.execAndGet("SELECT count(*) FROM sqlite_schema WHERE sql LIKE '%CASCADE%'")
                  .getInt(),
              0);
    std::set<std::string> tables;
    SQLite::Statement select(
        database,
        "SELECT name, sql FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%'");
    while (select.executeStep()) {
        const std::string name = select.getColumn(0).getString();
        const std::string sql = select.getColumn(1).getString();
        tables.insert(name);
        EXPECT_NE(sql.find("STRICT"), std::string::npos) << name;
        SQLite::Statement columns(
            database, "SELECT name, \"notnull\", pk, hidden FROM pragma_table_xinfo(?)");
        columns.bind(1, name);
        int keys = 0;
        while (columns.executeStep()) {
            const bool isKey = columns.getColumn(2).getInt() > 0;
            keys += isKey ? 1 : 0;
            EXPECT_TRUE(!isKey || columns.getColumn(1).getInt() == 1)
                << name << " has a key that may be null";
            EXPECT_EQ(columns.getColumn(3).getInt(), 0) << name << " has a generated column";
        }
        EXPECT_GT(keys, 0) << name << " would silently not be recorded";
        if (sql.find("WITHOUT ROWID") == std::string::npos) {
            EXPECT_NE(sql.find("AUTOINCREMENT"), std::string::npos) << name;
        }
    }
    std::set<std::string> listed(kUnrecordedTables.begin(), kUnrecordedTables.end());
    for (const RecordedTable& table : kRecordedTables) {
        listed.insert(table.name);
        SQLite::Statement member(database, "SELECT cid FROM pragma_table_info(?) WHERE name = ?");
        member.bind(1, table.name);
        member.bind(2, std::string_view(table.name) == "member" ? "id" : "member");
        EXPECT_EQ(member.executeStep() ? member.getColumn(0).getInt() : -1, table.memberColumn)
            << table.name;
    }
    EXPECT_EQ(listed, tables);
}

TEST(ActionTest, IsTakenBackAndDoneAgainAlsoAfterAReopening)
{
    const TemporaryFolder folder;
    const auto path = folder / "gym.levelbar";
    {
        Logbook logbook = Logbook::create(path, kNow);
        const MemberId member = addMember(logbook, "M1");
        for (int number = 1; number <= 3; ++number) {
            const Change change = logSet(logbook, benchSet(logbook, member, kDay, number, 8));
            EXPECT_TRUE(change.touchesSets);
            EXPECT_EQ(change.members, std::vector{member});
        }
    }
    Logbook logbook = Logbook::open(path, kNow);
    const MemberId member = MemberStore(logbook).find("M1")->id;
    const auto count = [&] { return SetStore(logbook).ofMember(member).size(); };
    for (std::size_t left : {2U, 1U, 0U}) {
        const Change change = takeBack(logbook, lastTakeable(logbook).value(), kNow);
        EXPECT_TRUE(change.touchesSets);
        EXPECT_EQ(count(), left);
    }
    for (std::size_t there : {1U, 2U, 3U}) {
        takeBack(logbook, lastTakenBack(logbook).value(), kNow);
        EXPECT_EQ(count(), there);
    }
    EXPECT_FALSE(lastTakenBack(logbook));
    takeBack(logbook, lastTakeable(logbook).value(), kNow);
    logSet(logbook, benchSet(logbook, member, kDay, 7, 5));
    EXPECT_FALSE(lastTakenBack(logbook)) << "something new was done";
    EXPECT_EQ(recentActions(logbook, 1).front().members, std::vector{member});
}

TEST(ActionTest, WithoutCommitNothingHappened)
{
    Logbook logbook = Logbook::inMemory(kNow);
    const MemberId member = addMember(logbook, "M1");
    {
        Action action(logbook, ActionKind::LogSet, kNow);
        SetStore::add(action, benchSet(logbook, member, kDay, 1, 8));
    }
    EXPECT_TRUE(SetStore(logbook).ofMember(member).empty());
    Action nothing(logbook, ActionKind::LogSet, kNow);
    nothing.commit();
    EXPECT_EQ(recentActions(logbook, 10).size(), 1U)
        << "an action that changed nothing leaves no trace";
}

TEST(ActionTest, IsNotTakenBackFromUnderLaterChanges)
{
    Logbook logbook = Logbook::inMemory(kNow);
    const MemberId member = addMember(logbook, "M1");
    const ActionId added = recentActions(logbook, 1).front().id;
    logSet(logbook, benchSet(logbook, member, kDay, 1, 8));
    EXPECT_EQ(kindOf([&] { takeBack(logbook, added, kNow); }), StoreErrorKind::Constraint);
    EXPECT_EQ(SetStore(logbook).ofMember(member).size(), 1U);
    EXPECT_TRUE(MemberStore(logbook).find("M1"));
    const ActionId logged = lastTakeable(logbook).value();
    takeBack(logbook, logged, kNow);
    EXPECT_EQ(kindOf([&] { takeBack(logbook, logged, kNow); }), StoreErrorKind::Constraint)
        << "twice";
}

TEST(StoresTest, ASetComesBackWithEveryColumn)
{
    Logbook logbook = Logbook::inMemory(kNow);
    const MemberId member = addMember(logbook, "M'1\" 💪");
    DoneSet set = benchSet(logbook, member, kDay, 3, 7);
    PerformedSet& performed = set.performed;
    performed.order = 12;
    performed.secondsTenths = 305;
    performed.metresTenths = 200;
    performed.load = Mass::ofThousandths(135000, MassUnit::Pound);
    performed.reserve = Reserve{15};
    performed.known = HowKnown::Sheet;
    performed.kind = SetKind::Open;
    performed.stopped = StopReason::Capped;
    performed.isClean = false;
    performed.pain = 4;
    set.painArea = "shoulder";
    set.painSide = Side::Right;
    set.hookHole = 9;
    set.benchAngle = -15;
    set.keyedAt = kNow;
    set.keyedBy = "IK";
    set.note = "Hips \"came\" up,\nslowly";
    logSet(logbook, set);
    EXPECT_EQ(SetStore(logbook).find(keyOf(set)), set);
    EXPECT_EQ(SetStore(logbook).find(keyOf(set))->performed.load.number(), "135");
    EXPECT_EQ(kindOf([&] { logSet(logbook, set); }), StoreErrorKind::Constraint);
    set.performed.reps = 8;
    Action action(logbook, ActionKind::CorrectSet, kNow);
    SetStore::update(action, set);
    action.commit();
    EXPECT_EQ(SetStore(logbook).find(keyOf(set))->performed.reps, 8);
    takeBack(logbook, lastTakeable(logbook).value(), kNow);
    EXPECT_EQ(SetStore(logbook).find(keyOf(set))->performed.reps, 7);
}

TEST(StoresTest, APersonComesBackWithEveryColumn)
{
    Logbook logbook = Logbook::inMemory(kNow);
    Member member;
    member.code = "学生-1";
    member.name = "Zoë";
    member.sex = Sex::Female;
    member.birthDate = Day{5000};
    member.statureTenthMillimetres = 17154;
    member.intakeMass = Mass::ofThousandths(70500, MassUnit::Kilogram);
    member.dominantSide = Side::Left;
    member.experience = Experience::Advanced;
    member.goal = Goal::Power;
    member.group = "Quayside";
    member.note = "private";
    Action action(logbook, ActionKind::AddMember, kNow);
    member.id = MemberStore::add(action, member);
    action.commit();
    EXPECT_EQ(MemberStore(logbook).find("学生-1"), member);
    EXPECT_EQ(kindOf([&] { addMember(logbook, "学生-1"); }), StoreErrorKind::Constraint);
}

TEST(StoresTest, ExercisesAreFoundInAnyCaseAndScript)
{
    Logbook logbook = Logbook::inMemory(kNow);
    EXPECT_TRUE(LibraryStore(logbook).findExercise("BARBELL bench PRESS"));
    EXPECT_FALSE(LibraryStore(logbook).findExercise("Barbell bench pres"));
    Action action(logbook, ActionKind::EditTemplate, kNow);
    Exercise own;
    own.name = "Жим СТОЯ straße";
    LibraryStore::addExercise(action, own);
    action.commit();
    EXPECT_TRUE(LibraryStore(logbook).findExercise("жим стоя STRASSE"));
    EXPECT_GE(LibraryStore(logbook).all().exercises.size(), 41U);
}

TEST(HistoryReaderTest, HandsEveryoneOverInEngineOrder)
{
    Logbook logbook = Logbook::inMemory(kNow);
    const MemberId first = addMember(logbook, "B");
    const MemberId second = addMember(logbook, "A");
    addMember(logbook, "C");
    for (const int number : {3, 1, 2}) {
        logSet(logbook, benchSet(logbook, second, kDay, number, 5 + number));
        logSet(logbook, benchSet(logbook, second, kDay - 7, number, 5 + number));
    }
    std::vector<MemberId> seen;
    forEachHistory(logbook, kDay, [&](MemberHistory& history) {
        seen.push_back(history.member.id);
        if (history.member.id == second) {
            ASSERT_EQ(history.sets.size(), 1U);
            const auto& sets = history.sets.front().sets;
            ASSERT_EQ(sets.size(), 6U);
            EXPECT_TRUE(std::is_sorted(sets.begin(), sets.end(), [](const auto& a, const auto& b) {
                return std::pair(a.day, a.number) < std::pair(b.day, b.number);
            }));
        } else {
            EXPECT_TRUE(history.sets.empty());
        }
    });
    EXPECT_EQ(seen.size(), 3U);
    EXPECT_EQ(historyOf(logbook, first, kDay)->member.code, "B");
    EXPECT_FALSE(historyOf(logbook, MemberId{99}, kDay));
}

TEST(BackupTest, IsWholeAndNeverOverAnotherFile)
{
    const TemporaryFolder folder;
    Logbook logbook = Logbook::create(folder / "gym.levelbar", kNow);
    addMember(logbook, "M1");
    backUp(logbook, folder / "copy.levelbar");
    EXPECT_EQ(kindOf([&] { backUp(logbook, folder / "copy.levelbar"); }), StoreErrorKind::Exists);
    restoreBackup(folder / "copy.levelbar", folder / "again.levelbar", kNow);
    const Logbook again = Logbook::open(folder / "again.levelbar", kNow);
    EXPECT_TRUE(MemberStore(again).find("M1"));
    EXPECT_TRUE(checkIntegrity(again).isSound());
    EXPECT_EQ(
        kindOf([&] { restoreBackup(folder / "copy.levelbar", folder / "again.levelbar", kNow); }),
        StoreErrorKind::Exists);
}

TEST(EraseTest, LeavesNoTraceInTheFile)
{
    const TemporaryFolder folder;
    const auto path = folder / "gym.levelbar";
    {
        Logbook logbook = Logbook::create(path, kNow);
        const MemberId gone = addMember(logbook, "GONE-17", "Quenella Unmistakable");
        const MemberId stays = addMember(logbook, "M2", "Somebody Else");
        DoneSet set = benchSet(logbook, gone, kDay, 1, 8);
        set.note = "quenella's very own note";
        logSet(logbook, set);
        logSet(logbook, benchSet(logbook, stays, kDay, 1, 8));
        eraseMember(logbook, gone);
        EXPECT_FALSE(MemberStore(logbook).find("GONE-17"));
        EXPECT_EQ(SetStore(logbook).ofMember(stays).size(), 1U);
        EXPECT_TRUE(checkIntegrity(logbook).isSound());
    }
    const std::string bytes = bytesOf(path);
    for (const char* trace : {"GONE-17", "Unmistakable", "very own note"}) {
        EXPECT_EQ(bytes.find(trace), std::string::npos) << trace;
    }
    EXPECT_NE(bytes.find("Somebody Else"), std::string::npos) << "the search itself works";
}

TEST(EraseTest, ForgetsNoTableThatNamesAPerson)
{
    Logbook logbook = Logbook::inMemory(kNow);
    const MemberId member = addMember(logbook, "M1");
    SQLite::Database& database = logbook.database();
    const std::string id = std::to_string(member.value);
    database.exec("INSERT INTO member_limit (member, area, side, since) VALUES (" + id +
                  ", 'knee', 1, 0)");
    database.exec("INSERT INTO consent (member, subject, given_on) VALUES (" + id +
                  ", 'photos', 0)");
    database.exec("INSERT INTO emergency_contact VALUES (" + id + ", 1, 'x', 'y', 'z')");
    database.exec("INSERT INTO screening (member, day, form, outcome) VALUES (" + id +
                  ", 0, 'a', 'b')");
    database.exec("INSERT INTO setup_card (member, exercise) VALUES (" + id + ", 1)");
    database.exec("INSERT INTO settled VALUES (" + id + ", 0, NULL, 'x', 0, 0, 0)");
    database.exec("INSERT INTO follow_up (uid, text, written_day, due_day, member) "
                  "VALUES (zeroblob(16), 'ring', 0, 0, " +
                  id + ")");
    eraseMember(logbook, member);
    SQLite::Statement tables(database,
                             "SELECT m.name FROM sqlite_schema m, pragma_table_info(m.name) c "
                             "WHERE m.type = 'table' AND c.name = 'member'");
    int checked = 0;
    while (tables.executeStep()) {
        const std::string name = tables.getColumn(0).getString();
        EXPECT_EQ(database.execAndGet("SELECT count(*) FROM " + name).getInt(), 0) << name;
        ++checked;
    }
    EXPECT_GE(checked, 10);
}

TEST(BulkWriteTest, AnImportIsTakenBackButForWhatChangedSince)
{
    Logbook logbook = Logbook::inMemory(kNow);
    ImportId import;
    MemberId member;
    {
        BulkWrite bulk(logbook, "sets.csv", kNow);
        import = bulk.import().value();
        Member made;
        made.code = "M1";
        member = MemberStore::add(bulk, made);
        SetStore::add(bulk, benchSet(logbook, member, kDay, 1, 8));
        SetStore::add(bulk, benchSet(logbook, member, kDay, 2, 8));
        bulk.commit();
    }
    DoneSet changed = benchSet(logbook, member, kDay, 2, 9);
    Action action(logbook, ActionKind::CorrectSet, kNow);
    SetStore::update(action, changed);
    action.commit();
    EXPECT_EQ(takeBackImport(logbook, import, kNow), 1);
    const auto left = SetStore(logbook).ofMember(member);
    ASSERT_EQ(left.size(), 1U);
    EXPECT_EQ(left[0].performed.reps, 9);
}

} // namespace
} // namespace levelbar::storage::logbook_test
