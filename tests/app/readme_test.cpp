// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later

#include "tests/support/cli_folder.h"

namespace levelbar::readme_test {
namespace {

class ReadmeTest : public tests::CliFolder {
protected:
    // Every line of README.md that begins with the program's name, without its comment.
    static std::vector<std::string> commandLines()
    {
        std::vector<std::string> all;
        std::ifstream readme(std::string(LEVELBAR_SOURCE_DIR) + "/README.md");
        const std::string program = "levelbar-cli ";
        for (std::string line; std::getline(readme, line);) {
            if (line.starts_with(program)) {
                line = line.substr(program.size(), line.find("  #") - program.size());
                all.push_back(line);
            }
        }
        return all;
    }
};

TEST_F(ReadmeTest, EveryCommandLineOfItWorks)
{
    write("members.csv", "member_id,name\nM001,Ann\n");
    write("sets.csv",
          "date,member_id,exercise,set,side,load,unit,reps,rir,class\n"
          "2026-10-01,M001,Floor press,1,both,60,kg,8,2,Morning\n"
          "2026-10-05,M001,Floor press,1,both,60,kg,9,2,Morning\n");
    write("tests.csv",
          "date,member_id,test,side,trial,value,unit,valid\n"
          "2026-10-01,M001,Grip strength,left,1,31.5,kg,yes\n");
    write("kit.csv", "kind,mass,unit,count,name\nbar,20,kg,1,\nplate,10,kg,4,\nplate,1.25,kg,2,\n");
    std::string lifters = "member_id,load_kg,hook_hole\n";
    for (const char* who : {"A", "B", "C", "D", "E", "F", "G"}) {
        lifters += std::string(who) + ",60,9\n";
    }
    write("l.csv", lifters);
    const auto commands = commandLines();
    ASSERT_GT(commands.size(), 12U);
    for (const std::string& arguments : commands) {
        const tests::Ran ran = cli(arguments);
        EXPECT_EQ(ran.status, 0) << arguments << "\n" << ran.error;
        EXPECT_EQ(ran.error, "") << arguments;
        EXPECT_NE(ran.out, "") << arguments;
    }
}

TEST_F(ReadmeTest, EveryCommandExplainsItself)
{
    const std::string help = cli("--help").out;
    for (const char* command : {"new",
                                "import",
                                "review",
                                "sides",
                                "how-right",
                                "target",
                                "export",
                                "report",
                                "share-racks",
                                "check",
                                "backup",
                                "restore",
                                "erase",
                                "gym"}) {
        EXPECT_NE(help.find(command), std::string::npos);
        EXPECT_EQ(cli(std::string(command) + " --help").status, 0) << command;
    }
}

} // namespace
} // namespace levelbar::readme_test
