// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later

#include "tests/support/logbook_fixture.h"
#include "tests/support/run_program.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <fstream>
#include <sstream>

namespace levelbar::cli_test {
namespace {

using tests::quoted;
using tests::Ran;
using tests::TemporaryFolder;

class CliTest : public testing::Test {
protected:
    Ran cli(const std::string& arguments) const
    {
        return tests::run("cd " + quoted(m_folder.path().string()) + " && " +
                          tests::program("levelbar-cli") + " " + arguments);
    }

    void write(const char* name, const std::string& text) const
    {
        std::ofstream(m_folder / name, std::ios::binary) << text;
    }

    std::string exported() const
    {
        std::filesystem::remove_all(m_folder / "out");
        EXPECT_EQ(cli("export g.levelbar out").status, 0);
        std::string all;
        for (const char* name : {"out/members.csv", "out/sets.csv", "out/tests.csv"}) {
            std::ostringstream text;
            text << std::ifstream(m_folder / name, std::ios::binary).rdbuf();
            all += text.str();
        }
        return all;
    }

    static int lines(const std::string& text)
    {
        return static_cast<int>(std::count(text.begin(), text.end(), '\n'));
    }

    TemporaryFolder m_folder;
};

TEST_F(CliTest, MakesTheDemoAndReviewsIt)
{
    ASSERT_EQ(cli("new g.levelbar --demo").status, 0);
    const Ran review = cli("review g.levelbar --on 2026-11-20");
    EXPECT_EQ(review.status, 0);
    EXPECT_NE(review.out.find("People to look at"), std::string::npos);
    EXPECT_NE(review.out.find("Olumide Farayemi"), std::string::npos)
        << "differs by design of the demo";
    std::size_t from = 0;
    while (from < review.out.size()) { // readable at a hundred columns
        const std::size_t to = review.out.find('\n', from);
        EXPECT_LE(to - from, 106U) << review.out.substr(from, to - from); // bytes; accents take two
        from = to + 1;
    }
    EXPECT_EQ(cli("check g.levelbar").status, 0);
}

TEST_F(CliTest, ReviewJsonIsAsAgreed)
{
    ASSERT_EQ(cli("new g.levelbar --demo").status, 0);
    const Ran ran = cli("review g.levelbar --on 2026-11-20 --json");
    ASSERT_EQ(ran.status, 0);
    const auto json = nlohmann::json::parse(ran.out);
    EXPECT_EQ(json["as_of"], "2026-11-20");
    EXPECT_EQ(json["members"].size(), 48U);
    int listed = 0;
    int act = 0;
    int tests = 0;
    for (const auto& member : json["members"]) {
        for (const auto& strength : member["strength"]) {
            EXPECT_LT(strength["low_kg"], strength["one_rm_kg"]);
            EXPECT_LT(strength["one_rm_kg"], strength["high_kg"]);
            EXPECT_EQ(strength["level"], 0.9);
            const auto& trend = strength["trend"];
            const bool isEarly = trend["call"] == "too_early";
            EXPECT_EQ(trend["percent_per_week"].is_null(), isEarly);
            EXPECT_EQ(trend["ask_again_on"].is_string(), isEarly);
        }
        for (const auto& test : member["tests"]) {
            ++tests;
            EXPECT_TRUE(test["test"].is_string());
            EXPECT_TRUE(test["last_value"].is_number());
            const bool isEarly = test["trend"]["call"] == "too_early";
            EXPECT_EQ(test["trend"]["change_per_week"].is_null(), isEarly);
        }
        for (const auto& side : member["sides"]) {
            const double d = side["difference_percent"];
            EXPECT_EQ(side["weaker"], d > 0 ? "left" : (d < 0 ? "right" : "none"));
            listed += side["tier"] == "look" || side["tier"] == "act" ? 1 : 0;
            act += side["tier"] == "act" ? 1 : 0;
            if (side["days"] < 2) {
                EXPECT_TRUE(side["tier"] == "none" || side["tier"] == "send_on");
            }
        }
    }
    EXPECT_EQ(json["look"], listed);
    EXPECT_EQ(json["act"], act);
    EXPECT_GT(act, 0);
    EXPECT_GT(tests, 0);
    const auto one =
        nlohmann::json::parse(cli("review g.levelbar --on 2026-11-20 --member M004 --json").out);
    ASSERT_EQ(one["members"].size(), 1U);
    EXPECT_EQ(one["look"], listed) << "lists are over the whole roster whoever is printed";
    for (const auto& member : json["members"]) {
        if (member["member_id"] == "M004") {
            EXPECT_EQ(member, one["members"][0]);
        }
    }
}

TEST_F(CliTest, ExitStatusTellsWhoseFaultItIs)
{
    EXPECT_EQ(cli("--help").status, 0);
    EXPECT_EQ(cli("").status, 2);
    EXPECT_EQ(cli("frobnicate").status, 2);
    EXPECT_EQ(cli("review nothing.levelbar").status, 3);
    EXPECT_EQ(cli("new g.levelbar").status, 0);
    EXPECT_EQ(cli("new g.levelbar").status, 1);
    EXPECT_EQ(cli("review g.levelbar --on 2026-02-31").status, 2);
    EXPECT_EQ(cli("review g.levelbar --member M9").status, 1);
    EXPECT_EQ(cli("import g.levelbar").status, 2);
    EXPECT_EQ(cli("import g.levelbar --sets nothing.csv").status, 1);
    write("text.levelbar", "not a logbook");
    EXPECT_EQ(cli("review text.levelbar").status, 3);
    EXPECT_EQ(cli("backup g.levelbar b.levelbar").status, 0);
    EXPECT_EQ(cli("backup g.levelbar b.levelbar").status, 1);
    EXPECT_EQ(cli("restore b.levelbar g.levelbar").status, 1);
    EXPECT_EQ(cli("restore b.levelbar c.levelbar").status, 0);
    EXPECT_EQ(cli("erase g.levelbar --member M9").status, 1);
    storage::Logbook writer = storage::Logbook::open(m_folder / "g.levelbar", tests::kNow);
    write("members.csv", "member_id\nM1\n");
    const Ran locked = cli("import g.levelbar --members members.csv");
    EXPECT_EQ(locked.status, 3);
    EXPECT_EQ(lines(locked.error), 1);
    EXPECT_EQ(cli("review g.levelbar").status, 0) << "reading goes on beside a writer";
}

TEST_F(CliTest, BadInputIsOneClearLineAFaultAndChangesNothing)
{
    ASSERT_EQ(cli("new g.levelbar").status, 0);
    write("members.csv", "member_id,name\nM1,Ann\n");
    ASSERT_EQ(cli("import g.levelbar --members members.csv").status, 0);
    const std::string header = "date,member_id,exercise,set,side,load,unit,reps,rir,class\n";
    const std::string good = "2026-11-25,M1,Barbell bench press,1,both,60,kg,8,2,\n";
    const std::string before = exported();
    const std::vector<std::pair<std::string, std::string>> kBad = {
        {"", "the file is empty"},
        {std::string(2000, 'x'), "the column 'date' is missing"},
        {header + std::string(10'000'000, 'y') + "\n", "longer than"},
        {header + std::string("2026-11-25,M1\0,x\n", 17), "control character"},
        {header + "31/02/2026,M1,Barbell bench press,1,both,60,kg,8,2,\n",
         "'31/02/2026' is not a date"},
        {header + "2026-11-25,M1,Barbell bench press,1,both,-60,kg,8,2,\n",
         "'-60' lies outside 0 to 1000"},
        {header + "2026-11-25,M1,Barbell bench press,1,both,60,kg,1e9,2,\n",
         "'1e9' is not a whole number"},
        {header + "2026-11-25,M1,Moon press,1,both,60,kg,8,2,\n",
         "there is no exercise 'Moon press'"},
        {header + good + good, "the same row stands in line 2 already"},
        {header + "\"2026-11-25,M1\n", "a quote is broken"},
    };
    for (const auto& [text, expected] : kBad) {
        write("sets.csv", text);
        const Ran ran = cli("import g.levelbar --sets sets.csv");
        EXPECT_EQ(ran.status, 1) << expected;
        EXPECT_NE(ran.error.find(expected), std::string::npos) << ran.error.substr(0, 500);
        EXPECT_NE(ran.error.find("sets.csv:"), std::string::npos);
        EXPECT_LT(ran.error.size(), 2000U) << "a clear line, not the whole file";
    }
    EXPECT_EQ(exported(), before);
}

TEST_F(CliTest, EveryFaultIsALineOfItsOwnHoweverMany)
{
    ASSERT_EQ(cli("new g.levelbar").status, 0);
    std::string rows = "member_id\n";
    for (int i = 0; i < 1500; ++i) {
        rows += std::string(65, 'x') + "\n";
    }
    write("members.csv", rows);
    const Ran ran = cli("import g.levelbar --members members.csv");
    EXPECT_EQ(ran.status, 1);
    EXPECT_EQ(lines(ran.error), 1500);
    EXPECT_EQ(lines(cli("erase g.levelbar --member 'M\n9'").error), 1);
    EXPECT_EQ(lines(cli("review").error), 1);
    std::filesystem::create_directory(m_folder / "folder");
    const Ran folder = cli("import g.levelbar --members folder");
    EXPECT_EQ(folder.status, 1);
    EXPECT_EQ(folder.error, "folder: cannot be read (Is a directory)\n");
}

TEST_F(CliTest, JsonIsValidWhateverAFileIsCalled)
{
    ASSERT_EQ(cli("new g.levelbar").status, 0);
    write("\xFE.csv", "member_id\n\x01\n");
    const Ran ran = cli("import g.levelbar --json --members " + quoted("\xFE.csv"));
    EXPECT_EQ(ran.status, 1);
    EXPECT_EQ(nlohmann::json::parse(ran.out)["faults"].size(), 1U);
}

TEST_F(CliTest, AnIdWithQuotesAndEmojiComesBackUnchanged)
{
    ASSERT_EQ(cli("new g.levelbar").status, 0);
    write("members.csv", "member_id,name\n\"O'Neil \"\"7\"\" 💪\",Ann\n");
    ASSERT_EQ(cli("import g.levelbar --members members.csv").status, 0);
    EXPECT_NE(exported().find("\"O'Neil \"\"7\"\" 💪\",Ann"), std::string::npos);
    EXPECT_EQ(cli("review g.levelbar --json --member " + quoted("O'Neil \"7\" 💪")).status, 0);
}

TEST_F(CliTest, AnExportImportedElsewhereIsTheSame)
{
    ASSERT_EQ(cli("new g.levelbar --demo").status, 0);
    const std::string first = exported();
    ASSERT_EQ(cli("new h.levelbar").status, 0);
    ASSERT_EQ(
        cli("import h.levelbar --members out/members.csv --sets out/sets.csv --tests out/tests.csv")
            .status,
        0);
    ASSERT_EQ(cli("export h.levelbar out2").status, 0);
    EXPECT_EQ(tests::run("diff -r " + quoted((m_folder / "out").string()) + " " +
                         quoted((m_folder / "out2").string()))
                  .status,
              0);
    EXPECT_GT(first.size(), 1'000'000U);
}

TEST_F(CliTest, ABrokenLogbookFailsItsCheck)
{
    ASSERT_EQ(cli("new g.levelbar --demo").status, 0);
    std::fstream file(m_folder / "g.levelbar", std::ios::in | std::ios::out | std::ios::binary);
    file.seekp(300'000);
    file << std::string(20'000, 'z');
    file.close();
    const Ran ran = cli("check g.levelbar --json");
    EXPECT_EQ(ran.status, 1);
    const auto json = nlohmann::json::parse(ran.out);
    EXPECT_EQ(json["sound"], false);
    EXPECT_EQ(lines(ran.error), static_cast<int>(json["faults"].size())) << "a line each";
}

TEST_F(CliTest, TheCommittedDemoIsWhatItsProgramWrites)
{
    const std::string program = std::string(LEVELBAR_BINARY_DIR) + "/demo-data/make_demo";
    ASSERT_EQ(tests::run(quoted(program) + " " + quoted(m_folder.path().string())).status, 0);
    for (const char* name : {"members.csv", "sets.csv", "tests.csv"}) {
        const std::string committed = std::string(LEVELBAR_SOURCE_DIR) + "/demo-data/" + name;
        EXPECT_EQ(tests::run("cmp " + quoted(committed) + " " + quoted((m_folder / name).string()))
                      .status,
                  0)
            << name;
    }
}

} // namespace
} // namespace levelbar::cli_test
