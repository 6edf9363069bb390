// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later

#include "tests/support/cli_folder.h"

#include <SQLiteCpp/SQLiteCpp.h>
#include <nlohmann/json.hpp>

namespace levelbar::damaged_logbook_test {
namespace {

using tests::Ran;

constexpr std::size_t kPage = 4096;

class DamagedLogbookTest : public tests::CliFolder {
protected:
    void SetUp() override { makeGym(); }

    // Ends with 3, one line that names the file and says it is damaged, and nothing else.
    void expectRefused(const std::string& arguments, const std::string& why) const
    {
        const Ran ran = cli(arguments);
        EXPECT_EQ(ran.status, 3) << arguments << ", " << why << "\n" << ran.out;
        EXPECT_EQ(lines(ran.error), 1) << arguments << ", " << why << "\n" << ran.error;
        EXPECT_TRUE(ran.error.starts_with("g.levelbar is ")) << arguments << "\n" << ran.error;
        EXPECT_EQ(ran.out, "") << arguments;
    }

    void change(const char* sql) const
    {
        SQLite::Database database((m_folder / "g.levelbar").string(), SQLite::OPEN_READWRITE);
        database.exec(sql);
    }

    nlohmann::json faultsFound() const
    {
        const Ran ran = cli("check g.levelbar --json");
        EXPECT_EQ(ran.status, 1) << ran.error;
        const auto json = nlohmann::json::parse(ran.out);
        EXPECT_EQ(json["sound"], false);
        EXPECT_EQ(lines(ran.error), static_cast<int>(json["faults"].size())) << "a line each";
        return json["faults"];
    }
};

TEST_F(DamagedLogbookTest, NothingIsReadFromItAndNothingWritten)
{
    const std::string whole = bytes("g.levelbar");
    write("more.csv", "member_id\nM3\n");
    const std::size_t pages = whole.size() / kPage;
    ASSERT_GT(pages, 40U);
    for (std::size_t page = 2; page < pages; page += pages / 8) { // not the first: no logbook then
        write("g.levelbar", whole);
        overwrite("g.levelbar", page * kPage, std::string(kPage, 'z'));
        const std::string why = "page " + std::to_string(page + 1);
        const std::string damaged = bytes("g.levelbar");
        expectRefused("review g.levelbar", why);
        expectRefused("import g.levelbar --members more.csv", why);
        expectRefused("backup g.levelbar copy.levelbar", why);
        EXPECT_EQ(bytes("g.levelbar"), damaged) << why;
    }
    EXPECT_EQ(names(),
              (std::set<std::string>{"g.levelbar", "members.csv", "more.csv", "sets.csv"}));
}

TEST_F(DamagedLogbookTest, EveryCommandRefusesATruncatedOne)
{
    const std::string whole = bytes("g.levelbar");
    write("more.csv", "member_id\nM3\n");
    write("kit.csv", "kind,mass,unit,count,name\nbar,20,kg,1,\nplate,10,kg,4,\n");
    for (const std::size_t size : {whole.size() - 1, whole.size() - kPage, whole.size() / 2 + 7}) {
        write("g.levelbar", whole.substr(0, size));
        const std::string why = std::to_string(size) + " of " + std::to_string(whole.size());
        for (const char* arguments :
             {"review g.levelbar --json",
              "sides g.levelbar",
              "how-right g.levelbar",
              "gym g.levelbar",
              "gym g.levelbar --kit kit.csv",
              "target g.levelbar --member M1 --exercise 'Floor press' --reps 8",
              "report g.levelbar --member M1 --pdf a.pdf",
              "import g.levelbar --members more.csv",
              "import g.levelbar --members more.csv --dry-run",
              "export g.levelbar out",
              "backup g.levelbar copy.levelbar",
              "erase g.levelbar --member M1"}) {
            expectRefused(arguments, why);
        }
        EXPECT_EQ(bytes("g.levelbar"), whole.substr(0, size)) << why;
        EXPECT_EQ(faultsFound().size(), 1U);
    }
    EXPECT_EQ(names().count("copy.levelbar") + names().count("copy.levelbar.part"), 0U);
    EXPECT_EQ(names().count("out"), 0U);
}

TEST_F(DamagedLogbookTest, AnEmptyFileIsNoLogbook)
{
    write("g.levelbar", "");
    const Ran ran = cli("import g.levelbar --members members.csv");
    EXPECT_EQ(ran.status, 3);
    EXPECT_EQ(ran.error, "g.levelbar is not a Levelbar logbook.\n");
    EXPECT_EQ(bytes("g.levelbar"), "");
}

TEST_F(DamagedLogbookTest, CheckNamesTheReferenceThatIsBroken)
{
    change("PRAGMA foreign_keys = OFF; DELETE FROM member WHERE code = 'M2'");
    const auto faults = faultsFound();
    const std::string all = faults.dump();
    EXPECT_NE(
        all.find("table done_set, column member: 32 rows name a row of member that is not there"),
        std::string::npos)
        << all;
    EXPECT_LT(faults.size(), 5U) << "a line a column, not a line a row";
    EXPECT_EQ(cli("backup g.levelbar copy.levelbar").status, 3);
    EXPECT_EQ(cli("export g.levelbar out").status, 3);
}

TEST_F(DamagedLogbookTest, CheckNamesTheIndexTheColumnAndTheTableThatAreMissing)
{
    change("DROP INDEX done_set_meeting; DROP TABLE surgery; "
           "ALTER TABLE member DROP COLUMN note");
    const std::string all = faultsFound().dump();
    for (const char* part : {"index done_set_meeting is missing",
                             "table surgery is missing",
                             "column note of table member is missing"}) {
        EXPECT_NE(all.find(part), std::string::npos) << all;
    }
}

TEST_F(DamagedLogbookTest, CheckNamesTheSchemaVersionThatIsWrong)
{
    change("PRAGMA user_version = 3");
    const auto faults = faultsFound();
    ASSERT_EQ(faults.size(), 1U) << faults;
    EXPECT_NE(faults[0].get<std::string>().find("schema version 3"), std::string::npos);
    change("PRAGMA user_version = 9000");
    EXPECT_EQ(cli("check g.levelbar --json").status, 3);
}

TEST_F(DamagedLogbookTest, CheckNamesTheTableOfADamagedPage)
{
    std::size_t root = 0;
    {
        SQLite::Database database((m_folder / "g.levelbar").string());
        root = static_cast<std::size_t>(
            database.execAndGet("SELECT rootpage FROM sqlite_schema WHERE name = 'done_set'")
                .getInt64());
    }
    overwrite("g.levelbar", (root - 1) * kPage, std::string(kPage, 'z'));
    const std::string all = faultsFound().dump();
    EXPECT_NE(all.find("done_set"), std::string::npos) << all;
}

} // namespace
} // namespace levelbar::damaged_logbook_test
