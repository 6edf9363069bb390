// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/logbook_fixture.h"
#include "tests/support/run_program.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <fstream>

namespace levelbar::target_test {
namespace {

using tests::quoted;
using tests::Ran;

class TargetCommandTest : public testing::Test {
protected:
    void SetUp() override
    {
        ASSERT_EQ(cli("new g.levelbar").status, 0);
        write("members.csv", "member_id,level\nM1,intermediate\n");
        std::string sets = "date,member_id,exercise,set,side,load,unit,reps,rir,class\n";
        for (const char* day : {"05", "08", "12", "15", "19", "22", "26", "29"}) {
            for (const char* number : {"1", "2", "3"}) {
                sets += std::string("2026-01-") + day + ",M1,Barbell bench press," + number +
                        ",both,60,kg,8,2,\n";
            }
        }
        write("sets.csv", sets);
        ASSERT_EQ(cli("import g.levelbar --members members.csv --sets sets.csv").status, 0);
    }

    Ran cli(const std::string& arguments) const
    {
        return tests::run("cd " + quoted(m_folder.path().string()) + " && " +
                          tests::program("levelbar-cli") + " " + arguments);
    }

    Ran target(const std::string& more) const
    {
        return cli("target g.levelbar --member M1 --on 2026-01-31 " + more);
    }

    void write(const char* name, const std::string& text) const
    {
        std::ofstream(m_folder / name, std::ios::binary) << text;
    }

    tests::TemporaryFolder m_folder;
};

TEST_F(TargetCommandTest, JsonIsAsAgreed)
{
    const Ran ran = target("--exercise 'barbell BENCH press' --reps 8 --rir 2 --json");
    ASSERT_EQ(ran.status, 0) << ran.error;
    const auto json = nlohmann::json::parse(ran.out);
    EXPECT_EQ(json["member_id"], "M1");
    EXPECT_EQ(json["exercise"], "Barbell bench press");
    EXPECT_EQ(json["side"], "both");
    EXPECT_EQ(json["reps"], 8);
    EXPECT_EQ(json["rir"], 2);
    const double load = json["load_kg"];
    EXPECT_NEAR(load, 60.0, 2.0);
    EXPECT_LT(json["low_kg"], load);
    EXPECT_GT(json["high_kg"], load);
    EXPECT_LE(json["rounded_load_kg"], 1.01 * load);
    double sum = 20.0;
    for (const double plate : json["plates_each_side_kg"]) {
        sum += 2.0 * plate;
    }
    EXPECT_DOUBLE_EQ(sum, json["rounded_load_kg"]);
    EXPECT_GT(json["percent_1rm"], 60.0);
    EXPECT_LT(json["percent_1rm"], 90.0);
    EXPECT_FALSE(json["warm_up"].empty());
    EXPECT_FALSE(json["basis"].get<std::string>().empty());
}

TEST_F(TargetCommandTest, SaysInWordsWhyThisLoad)
{
    const Ran ran = target("--exercise 'Barbell bench press' --reps 8");
    ASSERT_EQ(ran.status, 0) << ran.error;
    EXPECT_NE(ran.out.find("nine times in ten between"), std::string::npos);
    EXPECT_NE(ran.out.find("does not diagnose"), std::string::npos);
}

TEST_F(TargetCommandTest, WrongUsageAndWrongInputAreToldApart)
{
    EXPECT_EQ(target("--exercise 'Barbell bench press' --reps 0").status, 2);
    EXPECT_EQ(target("--exercise 'Barbell bench press' --reps 8 --rir 11").status, 2);
    EXPECT_EQ(target("--exercise 'Barbell bench press' --reps 8 --side up").status, 2);
    EXPECT_EQ(target("--reps 8").status, 2);
    const Ran unknown = target("--exercise Nonsense --reps 8");
    EXPECT_EQ(unknown.status, 1);
    EXPECT_EQ(unknown.error, "g.levelbar: there is no exercise 'Nonsense'\n");
    EXPECT_EQ(target("--exercise Push-up --reps 8").status, 1);
    EXPECT_EQ(target("--exercise 'Barbell bench press' --side left --reps 8").status, 1);
    EXPECT_EQ(target("--exercise 'Barbell row' --reps 8").status, 1); // nothing leads there
    EXPECT_EQ(cli("target g.levelbar --member M2 --exercise Push-up --reps 8").status, 1);
    EXPECT_EQ(cli("target none.levelbar --member M1 --exercise Push-up --reps 8").status, 3);
}

TEST_F(TargetCommandTest, APushUpIsAnsweredWithAHoleAndReps)
{
    write("more.csv", "member_id,sex,height_cm,body_mass_kg\nM3,female,165,68\n");
    write("push.csv",
          "date,member_id,exercise,set,side,load,unit,reps,rir,class,hook_hole\n"
          "2026-01-29,M3,Incline push-up,1,both,0,kg,11,0,,9\n");
    ASSERT_EQ(cli("import g.levelbar --members more.csv --sets push.csv").status, 0);
    const std::string ask = "target g.levelbar --member M3 --on 2026-01-31 --reps 10 --rir 0 ";
    const Ran ran = cli(ask + "--exercise 'Incline push-up' --json");
    ASSERT_EQ(ran.status, 0) << ran.error;
    const auto json = nlohmann::json::parse(ran.out);
    EXPECT_EQ(json["hole"], 9); // eleven there two days ago, ten asked for
    EXPECT_NEAR(json["hand_height_cm"], 70.0, 1e-9);
    EXPECT_NEAR(json["reps_to_end"], 11.0, 0.5);
    EXPECT_GT(json["load_kg"], 25.0);
    EXPECT_LT(json["load_kg"], 45.0);
    const Ran floor = cli(ask + "--exercise Push-up");
    EXPECT_EQ(floor.status, 0) << floor.error;
    EXPECT_NE(floor.out.find("Floor: about "), std::string::npos) << floor.out;
    EXPECT_EQ(cli(ask + "--exercise 'Hand-release push-up'").status, 1);
}

TEST_F(TargetCommandTest, TheGymsOwnKitDecidesWhatExists)
{
    write("kit.csv",
          "kind;mass;unit;count;name\nbar;20;kg;2;Usual\nplate;15;kg;2;\nplate;2,5;kg;2;\n"
          "dumbbell;10;;2;\n");
    ASSERT_EQ(cli("gym g.levelbar --kit kit.csv --effort rpe").status, 0);
    const auto json = nlohmann::json::parse(
        target("--exercise 'Barbell bench press' --reps 8 --rir 2 --json").out);
    EXPECT_EQ(json["rounded_load_kg"], 55.0); // 20 and a pair of 15 and of 2.5: all there is
    EXPECT_NE(json["basis"].get<std::string>().find("at RPE 8"), std::string::npos);
    EXPECT_EQ(json["basis"].get<std::string>().find("assumed"), std::string::npos);
    const auto kit = nlohmann::json::parse(cli("gym g.levelbar --json").out);
    EXPECT_EQ(kit["assumed"], false);
    EXPECT_EQ(kit["pieces"].size(), 6U);
}

TEST_F(TargetCommandTest, AFaultyKitChangesNothingAndEveryLineIsTold)
{
    write("kit.csv", "kind,mass,unit,count\nbar,20,kg,1\nplate,ten,kg,2\nrope,2,kg,1\n");
    const Ran ran = cli("gym g.levelbar --kit kit.csv");
    EXPECT_EQ(ran.status, 1);
    EXPECT_EQ(ran.error,
              "kit.csv:3: column 'mass': 'ten' is not a number\n"
              "kit.csv:4: column 'kind': 'rope' is none of bar, plate, dumbbell, kettlebell, "
              "collars, step\n");
    EXPECT_EQ(nlohmann::json::parse(cli("gym g.levelbar --json").out)["assumed"], true);
}

TEST_F(TargetCommandTest, SomeoneWhoseLoadsAreInPoundsIsToldPounds)
{
    write("pounds.csv",
          "date,member_id,exercise,set,side,load,unit,reps,rir,class\n"
          "2026-01-30,M1,Barbell bench press,1,both,135,lb,8,2,\n");
    ASSERT_EQ(cli("import g.levelbar --sets pounds.csv").status, 0);
    const Ran ran = target("--exercise 'Barbell bench press' --reps 8");
    EXPECT_NE(ran.out.find(" lb × 8"), std::string::npos) << ran.out;
}

} // namespace
} // namespace levelbar::target_test
