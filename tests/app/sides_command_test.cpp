// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/logbook_fixture.h"
#include "tests/support/run_program.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <fstream>
#include <sstream>

namespace levelbar::sides_command_test {
namespace {

using Json = nlohmann::json;
using tests::quoted;
using tests::Ran;

// Six people, grip on five days: M1 differs by a quarter, M2's fourth day was typed wrong.
class SidesCommandTest : public testing::Test {
protected:
    void SetUp() override
    {
        ASSERT_EQ(cli("new g.levelbar").status, 0);
        std::string members = "member_id,name\n";
        std::string tests = "date,member_id,test,side,trial,value,valid\n";
        for (int person = 1; person <= 6; ++person) {
            const std::string id = "M" + std::to_string(person);
            members += id + ",\n";
            for (int on = 0; on < 5; ++on) {
                const std::string head = "2026-03-0" + std::to_string(1 + on) + "," + id;
                const double left = person == 1 ? 30.0 : 40.0 + 0.5 * ((on + person) % 3);
                const double right = person == 2 && on == 3 ? 14.0 : 40.0;
                tests += head + ",Grip strength,left,1," + std::to_string(left) + ",yes\n";
                tests += head + ",Grip strength,right,1," + std::to_string(right) + ",yes\n";
            }
        }
        std::ofstream(m_folder / "members.csv") << members;
        std::ofstream(m_folder / "tests.csv") << tests;
        const Ran imported = cli("import g.levelbar --members members.csv --tests tests.csv");
        ASSERT_EQ(imported.status, 0) << imported.error;
    }

    Ran cli(const std::string& arguments) const
    {
        return tests::run("cd " + quoted(m_folder.path().string()) + " && " +
                          tests::program("levelbar-cli") + " " + arguments);
    }

    Ran sides(const std::string& more) const
    {
        return cli("sides g.levelbar --on 2026-03-10 " + more);
    }

    static void expectReadable(const std::string& text)
    {
        std::istringstream lines(text);
        for (std::string line; std::getline(lines, line);) {
            EXPECT_LE(line.size(), 100U) << line;
        }
    }

    tests::TemporaryFolder m_folder;
};

TEST_F(SidesCommandTest, TheListsSayWhyAndSinceWhen)
{
    const Ran ran = sides("");
    ASSERT_EQ(ran.status, 0) << ran.error;
    expectReadable(ran.out);
    EXPECT_NE(ran.out.find("Work on it"), std::string::npos) << ran.out;
    EXPECT_NE(ran.out.find("over 10 %: 99 in 100"), std::string::npos) << ran.out;
    EXPECT_NE(ran.out.find("A slip of the pen?"), std::string::npos) << ran.out;
    const Json json = Json::parse(sides("--json").out);
    EXPECT_EQ(json["act"], 1);
    ASSERT_EQ(json["lists"]["act"].size(), 1U);
    EXPECT_EQ(json["lists"]["act"][0]["member_id"], "M1");
    EXPECT_EQ(json["lists"]["act"][0]["why"], "beyond_threshold");
    EXPECT_TRUE(json["lists"]["act"][0]["since"].is_string());
    ASSERT_EQ(json["questions"].size(), 1U);
    EXPECT_EQ(json["questions"][0]["member_id"], "M2");
    EXPECT_EQ(json["questions"][0]["right"], "14 kg");
}

TEST_F(SidesCommandTest, OnePersonHasIndicesAndAPlan)
{
    const Ran ran = sides("--member M1");
    ASSERT_EQ(ran.status, 0) << ran.error;
    expectReadable(ran.out);
    EXPECT_NE(ran.out.find("Left weaker by"), std::string::npos) << ran.out;
    EXPECT_NE(ran.out.find("never trained for"), std::string::npos) << "the grip is a test";
    const Json json = Json::parse(sides("--member M1 --json").out);
    ASSERT_EQ(json["sides"].size(), 1U);
    const Json& side = json["sides"][0];
    EXPECT_EQ(side["trainable"], false);
    EXPECT_EQ(side["indices"].size(), 7U);
    EXPECT_FALSE(side["plan"]["capped"]);
}

TEST_F(SidesCommandTest, AMeasureHasItsReliability)
{
    const Ran ran = sides("--measure 'Grip strength'");
    ASSERT_EQ(ran.status, 0) << ran.error;
    expectReadable(ran.out);
    const Json json = Json::parse(sides("--measure 'Grip strength' --json").out);
    EXPECT_EQ(json["people"], 6);
    EXPECT_EQ(json["people_with_two_days"], 6);
    const double error = json["typical_error_percent"]["value"];
    EXPECT_GT(error, 0.0);
    EXPECT_NEAR(json["detectable_change_percent"], 2.7718 * error, 0.001);
}

TEST_F(SidesCommandTest, WhoOrWhatIsNotThereIsTheInputsFault)
{
    EXPECT_EQ(sides("--member nobody").status, 1);
    EXPECT_EQ(sides("--measure nothing").status, 1);
    EXPECT_EQ(sides("--member M1 --measure 'Grip strength'").status, 2);
}

} // namespace
} // namespace levelbar::sides_command_test
