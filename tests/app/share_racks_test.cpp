// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/logbook_fixture.h"
#include "tests/support/run_program.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <fstream>

namespace levelbar::share_racks_test {
namespace {

using tests::quoted;
using tests::Ran;
using tests::TemporaryFolder;

class ShareRacksTest : public testing::Test {
protected:
    Ran share(const std::string& lifters, const std::string& options = "") const
    {
        std::ofstream(m_folder / "l.csv", std::ios::binary) << lifters;
        return run("share-racks --lifters l.csv " + options);
    }

    Ran run(const std::string& arguments) const
    {
        return tests::run("cd " + quoted(m_folder.path().string()) + " && " +
                          tests::program("levelbar-cli") + " " + arguments);
    }

    TemporaryFolder m_folder;
};

constexpr const char* kFour = "member_id,load_kg,hook_hole\nA,60,5\nB,100,7\nC,62.5,5\nD,100,8\n";

TEST_F(ShareRacksTest, JsonIsAsAgreed)
{
    const Ran ran = share(kFour, "--racks 2 --json");
    ASSERT_EQ(ran.status, 0) << ran.error;
    // A side: 20; 20 1.25 (two plates on, two off, no hooks); 25 15 twice, with other holes.
    EXPECT_EQ(nlohmann::ordered_json::parse(ran.out).dump(),
              R"({"racks":[{"order":["A","C"],"plate_moves":4,"hook_moves":0},)"
              R"({"order":["B","D"],"plate_moves":0,"hook_moves":4}],)"
              R"("plate_moves":4,"hook_moves":4,"lower_bound":8,"proved_best":true})");
}

TEST_F(ShareRacksTest, TakesOneRackABarOfTwentyAndCommonPlatesUnlessTold)
{
    const auto moves = [&](const std::string& options) {
        const auto json = nlohmann::json::parse(share(kFour, options + " --json").out);
        EXPECT_EQ(json["racks"].size(), 1U);
        return json["plate_moves"].get<int>();
    };
    // One round over all branches (20, 1.25, 25, 15), on and off, both sides: 4 * 4.
    EXPECT_EQ(moves(""), 16);
    // A bar of 15: 22.5 = 20 2.5; 23.75 = 20 2.5 1.25; 42.5 = 25 15 2.5. Branches 6.
    EXPECT_EQ(moves("--bar 15"), 24);
    // Only 20 and 1.25: 20; 20 1.25; 20 20. Branches below the common 20: 2.
    EXPECT_EQ(moves("--plates 20,1.25"), 8);
}

TEST_F(ShareRacksTest, PrintsATableThatFitsAHundredColumns)
{
    const std::string longest(64, 'x');
    const Ran ran = share("member_id;load_kg;mood\n" + longest + ";997,5;ok\nB;60;good\n");
    ASSERT_EQ(ran.status, 0) << ran.error;
    EXPECT_NE(ran.out.find("997.5"), std::string::npos) << "a decimal comma is taken with ;";
    EXPECT_NE(ran.out.find("Proved"), std::string::npos);
    EXPECT_NE(ran.error.find("l.csv:1: column 'mood'"), std::string::npos);
    std::size_t from = 0;
    while (from < ran.out.size()) {
        const std::size_t to = ran.out.find('\n', from);
        EXPECT_LE(to - from, 104U) << ran.out.substr(from, to - from); // bytes; … takes three
        from = to + 1;
    }
}

TEST_F(ShareRacksTest, NamesEveryFaultWithItsLineAndColumn)
{
    const Ran ran =
        share("member_id,load_kg,hook_hole\nA,15,5\nB,61,5\nA,60,0\nC,ten,\n,,\nD,60,x\n");
    EXPECT_EQ(ran.status, 1);
    EXPECT_EQ(ran.out, "");
    EXPECT_EQ(ran.error,
              "l.csv:2: column 'load_kg': '15' is lighter than the bar, 20\n"
              "l.csv:3: column 'load_kg': '61' cannot be made with these plates; the nearest loads "
              "are 60 and 62.5\n"
              "l.csv:4: column 'member_id': the same row stands in line 2 already\n"
              "l.csv:4: column 'hook_hole': '0' is not a whole number from 1 to 99\n"
              "l.csv:5: column 'load_kg': 'ten' is not a number\n"
              "l.csv:6: column 'member_id': a value is needed\n"
              "l.csv:6: column 'load_kg': a value is needed\n"
              "l.csv:7: column 'hook_hole': 'x' is not a whole number from 1 to 99\n");
}

TEST_F(ShareRacksTest, RefusesFilesThatCannotBeShared)
{
    const Ran few = share(kFour, "--racks 5");
    EXPECT_EQ(few.status, 1);
    EXPECT_EQ(few.error, "l.csv: too few lifters (4) for the racks (5)\n");
    EXPECT_EQ(share("member_id,load_kg\n").status, 1) << "nobody";
    EXPECT_EQ(share("").status, 1);
    const Ran column = share("member_id,hook_hole\nA,5\n");
    EXPECT_EQ(column.status, 1);
    EXPECT_EQ(column.error, "l.csv:1: the column 'load_kg' is missing\n");
    EXPECT_EQ(run("share-racks --lifters none.csv").status, 1);
}

TEST_F(ShareRacksTest, RefusesWrongUsage)
{
    EXPECT_EQ(run("share-racks").status, 2);
    for (const char* options : {"--racks 0",
                                "--racks two",
                                "--bar heavy",
                                "--bar -5",
                                "--plates 25,big",
                                "--plates 0",

                                "--rack 2"}) {
        EXPECT_EQ(share(kFour, options).status, 2) << options;
    }
    EXPECT_EQ(run("share-racks --help").status, 0);
}

} // namespace
} // namespace levelbar::share_racks_test
