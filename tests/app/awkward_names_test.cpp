// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later

#include "tests/support/cli_folder.h"

#include <nlohmann/json.hpp>

namespace levelbar::awkward_names_test {
namespace {

using tests::quoted;
using tests::Ran;

// Quotes, a backslash, a character beyond the basic plane, right to left with its marks, a
// combining accent, and what a shell or a spreadsheet would take for its own.
const std::vector<std::string> kNames = {
    "O'Neil \"7\" \\n",
    "💪🏽 Ann",
    "\xD7\xA9\xD7\x9C\xD7\x95\xD7\x9D \xE2\x80\xAB\xD8\xB3\xD9\x84\xD8\xA7\xD9\x85\xE2\x80\xAC",
    "Zoe\xCC\x88",
    "=1+1;$(reboot)`x`"};

std::string csv(const std::string& text)
{
    std::string cell = "\"";
    for (const char c : text) {
        cell += c == '"' ? "\"\"" : std::string(1, c);
    }
    return cell + "\"";
}

class AwkwardNamesTest : public tests::CliFolder {
protected:
    void SetUp() override
    {
        ASSERT_EQ(cli("new g.levelbar").status, 0);
        std::string members = "member_id,name,group,classes,note\n";
        std::string sets = "date,member_id,exercise,set,side,load,reps,rir,class,note\n";
        for (const std::string& name : kNames) {
            members += csv(name) + "," + csv(name) + "," + csv(name) + "," + csv(name) + "," +
                       csv(name + "\nsecond line") + "\n";
            for (const char* day : {"01", "04", "08", "11", "15", "18", "22", "25"}) {
                for (const char* side : {"left", "right"}) {
                    sets += std::string("2026-10-") + day + "," + csv(name) + "," +
                            csv("Press " + name) + ",1," + side + ",14," +
                            (*side == 'l' ? "8" : "12") + ",1," + csv(name) + "," + csv(name) +
                            "\n";
                }
            }
        }
        write("members.csv", members);
        write("sets.csv", sets);
        const Ran ran =
            cli("import g.levelbar --members members.csv --sets sets.csv --add-exercises --json");
        ASSERT_EQ(ran.status, 0) << ran.error;
        EXPECT_EQ(nlohmann::json::parse(ran.out)["exercises_added"], kNames.size());
    }

    nlohmann::json json(const std::string& arguments) const
    {
        const Ran ran = cli(arguments + " --json");
        EXPECT_EQ(ran.status, 0) << arguments << "\n" << ran.error;
        const auto parsed = nlohmann::json::parse(ran.out, nullptr, false);
        EXPECT_FALSE(parsed.is_discarded()) << arguments << "\n" << ran.out;
        return parsed;
    }
};

TEST_F(AwkwardNamesTest, ComeBackInTheJsonOfEveryCommand)
{
    const auto review = json("review g.levelbar --on 2026-10-26");
    const auto sides = json("sides g.levelbar --on 2026-10-26");
    EXPECT_TRUE(sides.is_object());
    for (const std::string& name : kNames) {
        const auto isNamed = [&](const auto& member) {
            return member["member_id"] == name && member["name"] == name;
        };
        EXPECT_TRUE(std::any_of(review["members"].begin(), review["members"].end(), isNamed))
            << name;
        const std::string who = " --member=" + quoted(name) + " --on 2026-10-26";
        const auto one = json("review g.levelbar" + who);
        EXPECT_EQ(one["members"][0]["strength"][0]["exercise"], "Press " + name);
        EXPECT_EQ(json("sides g.levelbar" + who)["member_id"], name);
        json("sides g.levelbar --on 2026-10-26 --measure=" + quoted("Press " + name));
        const auto target =
            json("target g.levelbar --reps 8 --exercise=" + quoted("Press " + name) + who);
        EXPECT_EQ(target["exercise"], "Press " + name);
    }
    json("how-right g.levelbar");
    json("check g.levelbar");
    json("gym g.levelbar");
}

TEST_F(AwkwardNamesTest, OfKitAndLiftersComeBackToo)
{
    std::string kit = "kind,mass,unit,count,name\nplate,10,kg,4,\n";
    std::string lifters = "member_id,load_kg\n";
    for (const std::string& name : kNames) {
        kit += "bar,20,kg,1," + csv(name) + "\n";
        lifters += csv(name) + ",60\n";
    }
    write("kit.csv", kit);
    write("l.csv", lifters);
    const std::string pieces = json("gym g.levelbar --kit kit.csv").dump();
    const std::string order = json("share-racks --lifters l.csv").dump();
    for (const std::string& name : kNames) {
        const std::string asJson = nlohmann::json(name).dump();
        EXPECT_NE(pieces.find(asJson), std::string::npos) << pieces;
        EXPECT_NE(order.find(asJson), std::string::npos) << order;
    }
}

TEST_F(AwkwardNamesTest, ControlCharactersAreRefusedInEveryName)
{
    const std::string header = "member_id,name,group,classes\n";
    for (const char* control : {"\x01", "\x1B[31m", "\x7F", "\xC2\x85", "\n"}) {
        for (int column = 0; column < 4; ++column) {
            std::string row;
            for (int i = 0; i < 4; ++i) {
                const std::string cell = i == 0 ? "M9" : "x";
                row += (i > 0 ? "," : "") + csv(i == column ? cell + control + "y" : cell);
            }
            write("bad.csv", header + row + "\n");
            const Ran ran = cli("import g.levelbar --members bad.csv --json");
            EXPECT_EQ(ran.status, 1) << column;
            EXPECT_EQ(lines(ran.error), 1) << ran.error;
            EXPECT_EQ(ran.error.find('\x1B'), std::string::npos) << "a terminal would obey it";
            const auto parsed = nlohmann::json::parse(ran.out);
            EXPECT_EQ(parsed["written"], false);
            EXPECT_EQ(parsed["faults"].size(), 1U);
        }
    }
}

TEST_F(AwkwardNamesTest, AreOnOneLineOfWhatIsPrinted)
{
    for (const char* command : {"erase g.levelbar --member ",
                                "review g.levelbar --member ",
                                "sides g.levelbar --member ",
                                "sides g.levelbar --measure "}) {
        const Ran ran = cli(command + quoted("a\nb\x1B[31m"));
        EXPECT_EQ(ran.status, 1) << command;
        EXPECT_EQ(lines(ran.error), 1) << command << ran.error;
        EXPECT_EQ(ran.error.find('\x1B'), std::string::npos) << command;
    }
    const std::string odd = "a\nb\x1B[31m.levelbar";
    for (const char* command : {"review ", "check ", "backup x.levelbar ", "new no/"}) {
        const Ran ran = cli(command + quoted(odd));
        EXPECT_NE(ran.status, 0) << command;
        EXPECT_EQ(lines(ran.error), 1) << command << ran.error;
        EXPECT_EQ(ran.error.find('\x1B'), std::string::npos) << command;
    }
}

} // namespace
} // namespace levelbar::awkward_names_test
