// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later

#include "tests/support/cli_folder.h"

#include <sys/stat.h>

namespace levelbar::awkward_places_test {
namespace {

using tests::Ran;

constexpr std::array kReading = {"review",
                                 "sides",
                                 "how-right",
                                 "target --member M1 --exercise 'Barbell bench press' --reps 8",
                                 "gym",
                                 "check"};

// "review --json" becomes "review g.levelbar --json".
std::string of(const std::string& command, const std::string& logbook = "g.levelbar")
{
    const std::size_t blank = std::min(command.find(' '), command.size());
    return command.substr(0, blank) + " " + logbook + command.substr(blank);
}

class AwkwardPlacesTest : public tests::CliFolder {
protected:
    void SetUp() override { makeGym(); }

    void TearDown() override { ::chmod(m_folder.path().c_str(), 0700); }

    void mode(const std::filesystem::path& path, mode_t bits) const
    {
        ASSERT_EQ(::chmod(path.c_str(), bits), 0);
    }

    void expectReadable(const std::string& why) const
    {
        for (const char* command : kReading) {
            const Ran ran = plainCli(of(command));
            EXPECT_EQ(ran.status, 0) << command << ", " << why << "\n" << ran.error;
            EXPECT_EQ(ran.error, "") << command << ", " << why;
        }
    }

    // Leaves what a program that was killed leaves: a log beside the logbook, and M3 only in it.
    void leaveLog() const
    {
        storage::Logbook logbook = storage::Logbook::open(m_folder / "g.levelbar", tests::kNow);
        tests::addMember(logbook, "M3");
        std::filesystem::copy_file(m_folder / "g.levelbar", m_folder / "killed.levelbar");
        std::filesystem::copy_file(m_folder / "g.levelbar-wal", m_folder / "killed.levelbar-wal");
    }
};

TEST_F(AwkwardPlacesTest, AFolderAndAFileThatAreReadOnlyAreRead)
{
    const std::string before = bytes("g.levelbar");
    mode(m_folder / "g.levelbar", 0400);
    expectReadable("read-only file");
    mode(m_folder.path(), 0500);
    expectReadable("read-only file and folder");
    mode(m_folder / "g.levelbar", 0600);
    expectReadable("read-only folder");
    EXPECT_EQ(bytes("g.levelbar"), before);
    EXPECT_EQ(names(), (std::set<std::string>{"g.levelbar", "members.csv", "sets.csv"}));
}

TEST_F(AwkwardPlacesTest, WritingThereIsRefusedAndLeavesNothing)
{
    write("more.csv", "member_id\nM3\n");
    write("kit.csv", "kind,mass,unit,count,name\nbar,20,kg,1,\nplate,10,kg,4,\n");
    const std::string before = bytes("g.levelbar");
    const auto files = names();
    for (const auto& [folderBits, fileBits] :
         {std::pair<mode_t, mode_t>{0700, 0400}, {0500, 0600}}) {
        mode(m_folder / "g.levelbar", fileBits);
        mode(m_folder.path(), folderBits);
        for (const char* command :
             {"import --members more.csv", "gym --kit kit.csv", "erase --member M1"}) {
            const Ran ran = plainCli(of(command));
            EXPECT_EQ(ran.status, 3) << command;
            EXPECT_EQ(lines(ran.error), 1) << ran.error;
            EXPECT_NE(ran.error.find("g.levelbar may not be written"), std::string::npos)
                << ran.error;
        }
        EXPECT_EQ(names(), files);
    }
    EXPECT_EQ(plainCli("new h.levelbar").status, 3);
    EXPECT_EQ(plainCli("backup g.levelbar h.levelbar").status, 3);
    EXPECT_EQ(plainCli("restore g.levelbar h.levelbar").status, 3);
    EXPECT_EQ(plainCli("export g.levelbar out").status, 3);
    EXPECT_EQ(plainCli("report g.levelbar --member M1 --pdf a.pdf").status, 3);
    EXPECT_EQ(names(), files);
    EXPECT_EQ(bytes("g.levelbar"), before);
}

TEST_F(AwkwardPlacesTest, ALogThatAKilledProgramLeftIsReadAlong)
{
    leaveLog();
    for (const char* command : kReading) {
        EXPECT_EQ(plainCli(of(command, "killed.levelbar")).status, 0) << command;
    }
    EXPECT_EQ(cli("review killed.levelbar --member M3").status, 0) << "what stood in the log only";
    EXPECT_EQ(cli("backup killed.levelbar copy.levelbar").status, 0);
    EXPECT_EQ(cli("review copy.levelbar --member M3").status, 0);
}

TEST_F(AwkwardPlacesTest, ALogThatCannotBeReadAlongIsNotPassedOver)
{
    leaveLog();
    mode(m_folder.path(), 0500);
    for (const char* command : kReading) {
        const Ran ran = plainCli(of(command, "killed.levelbar"));
        EXPECT_EQ(ran.status, 3) << command << ": M3 would be missing";
        EXPECT_NE(ran.error.find("killed.levelbar-wal holds changes"), std::string::npos)
            << ran.error;
    }
}

TEST_F(AwkwardPlacesTest, AnotherLogbooksLogIsNotPlayedIntoANewOne)
{
    leaveLog();
    ASSERT_TRUE(std::filesystem::remove(m_folder / "killed.levelbar"));
    for (const char* command : {"new killed.levelbar",
                                "restore g.levelbar killed.levelbar",
                                "backup g.levelbar killed.levelbar"}) {
        const Ran ran = cli(command);
        EXPECT_EQ(ran.status, 1) << command;
        EXPECT_NE(ran.error.find("killed.levelbar-wal is left"), std::string::npos) << ran.error;
    }
    EXPECT_EQ(names().count("killed.levelbar"), 0U);
    EXPECT_EQ(names().count("killed.levelbar-wal"), 1U);
}

TEST_F(AwkwardPlacesTest, BesideAWriterEverythingIsReadAndNothingWritten)
{
    write("more.csv", "member_id\nM3\n");
    storage::Logbook writer = storage::Logbook::open(m_folder / "g.levelbar", tests::kNow);
    tests::addMember(writer, "M9");
    expectReadable("beside a writer");
    EXPECT_EQ(cli("review g.levelbar --member M9").status, 0) << "what was just written is seen";
    EXPECT_EQ(cli("backup g.levelbar copy.levelbar").status, 0);
    EXPECT_EQ(cli("export g.levelbar out").status, 0);
    EXPECT_EQ(cli("import g.levelbar --members more.csv --dry-run").status, 0);
    for (const char* command :
         {"import --members more.csv", "gym --effort rpe", "erase --member M1"}) {
        const Ran ran = cli(of(command));
        EXPECT_EQ(ran.status, 3) << command;
        EXPECT_NE(ran.error.find("being written by another program"), std::string::npos);
    }
    EXPECT_EQ(cli("review g.levelbar --member M3").status, 1);
    writer.close();
    EXPECT_EQ(cli("check g.levelbar").status, 0);
}

TEST_F(AwkwardPlacesTest, ADryRunKeepsEveryByte)
{
    write("more.csv", "member_id,classes\nM3,Evening\n");
    write("bad.csv", "member_id,sex\nM4,7\n");
    const std::string before = bytes("g.levelbar");
    const auto written = std::filesystem::last_write_time(m_folder / "g.levelbar");
    const auto files = names();
    const Ran good = cli("import g.levelbar --members more.csv --dry-run");
    EXPECT_EQ(good.status, 0) << good.error;
    EXPECT_NE(good.out.find("1 added"), std::string::npos) << good.out;
    EXPECT_EQ(cli("import g.levelbar --members bad.csv --dry-run").status, 1);
    mode(m_folder / "g.levelbar", 0400);
    mode(m_folder.path(), 0500);
    EXPECT_EQ(plainCli("import g.levelbar --members more.csv --dry-run").status, 0);
    EXPECT_TRUE(bytes("g.levelbar") == before);
    EXPECT_EQ(std::filesystem::last_write_time(m_folder / "g.levelbar"), written);
    EXPECT_EQ(names(), files);
}

TEST_F(AwkwardPlacesTest, WhatCannotBePrintedOrReadToItsEndIsAFailure)
{
    EXPECT_EQ(cli("review g.levelbar --json >/dev/full").status, 3);
    EXPECT_EQ(cli("check g.levelbar >/dev/full").status, 3);
    const Ran ran = cli("import g.levelbar --members /proc/self/mem"); // opens, but cannot be read
    EXPECT_EQ(ran.status, 1);
    EXPECT_EQ(ran.error, "/proc/self/mem: cannot be read (Input/output error)\n");
}

} // namespace
} // namespace levelbar::awkward_places_test
