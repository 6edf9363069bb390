// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/support/logbook_fixture.h"
#include "tests/support/run_program.h"

#include <gtest/gtest.h>

#include <fstream>
#include <sstream>

namespace levelbar::report_test {
namespace {

using tests::quoted;
using tests::Ran;

class ReportCommandTest : public testing::Test {
protected:
    void SetUp() override { ASSERT_EQ(cli("new g.levelbar --demo").status, 0); }

    Ran shell(const std::string& command) const
    {
        return tests::run("cd " + quoted(m_folder.path().string()) + " && " + command);
    }

    Ran cli(const std::string& arguments) const
    {
        return shell(tests::program("levelbar-cli") + " " + arguments);
    }

    std::string file(const char* name) const
    {
        std::ifstream in(m_folder / name, std::ios::binary);
        std::ostringstream text;
        text << in.rdbuf();
        return text.str();
    }

    int filesInFolder() const
    {
        const std::filesystem::directory_iterator all(m_folder.path());
        return static_cast<int>(std::distance(begin(all), end(all)));
    }

    tests::TemporaryFolder m_folder;
};

TEST_F(ReportCommandTest, WritesAPdfOfShapesAndText)
{
    const Ran ran = cli("report g.levelbar --member M001 --pdf a.pdf --on 2026-11-20");
    ASSERT_EQ(ran.status, 0) << ran.error;
    EXPECT_EQ(ran.error, "");
    EXPECT_EQ(file("a.pdf").substr(0, 5), "%PDF-");
    EXPECT_EQ(file("a.pdf").find("/Subtype /Image"), std::string::npos);
    EXPECT_EQ(filesInFolder(), 2) << "the logbook and the page, nothing beside them";
    if (shell("command -v pdftotext").status != 0) {
        GTEST_SKIP() << "poppler-utils is not here to read the text";
    }
    const std::string text = shell("pdftotext -layout a.pdf -").out;
    for (const char* words : {"Ilse Brandvold",
                              "Id M001",
                              "As it stood on",
                              "20 November 2026",
                              "Barbell bench press",
                              "Next time",
                              "Left and right",
                              "No norm",
                              "does not",
                              "diagnose"}) {
        EXPECT_NE(text.find(words), std::string::npos) << words << "\n" << text;
    }
    ASSERT_EQ(cli("report g.levelbar --member M001 --pdf b.pdf --paper letter").status, 0);
    EXPECT_NE(shell("pdfinfo b.pdf").out.find("612 x 792"), std::string::npos);
}

TEST_F(ReportCommandTest, ExitStatusesAreAsAgreedAndNothingIsLeft)
{
    const Ran unknown = cli("report g.levelbar --member nobody --pdf a.pdf");
    EXPECT_EQ(unknown.status, 1);
    EXPECT_NE(unknown.error.find("there is no member 'nobody'"), std::string::npos);
    EXPECT_EQ(cli("report g.levelbar --member M001 --pdf g.levelbar").status, 1);
    EXPECT_EQ(cli("report g.levelbar --member M001").status, 2);
    EXPECT_EQ(cli("report g.levelbar --member M001 --pdf a.pdf --on 31.12.2026").status, 2);
    EXPECT_EQ(cli("report none.levelbar --member M001 --pdf a.pdf").status, 3);
    const Ran nowhere = cli("report g.levelbar --member M001 --pdf no/such/folder/a.pdf");
    EXPECT_EQ(nowhere.status, 3);
    EXPECT_NE(nowhere.error.find("a.pdf"), std::string::npos);
    EXPECT_EQ(filesInFolder(), 1);
    EXPECT_EQ(cli("check g.levelbar").status, 0);
}

TEST_F(ReportCommandTest, WithoutTheDesktopProgramBesideItSaysSo)
{
    const Ran ran = shell("mkdir bin && cp " + tests::program("levelbar-cli") +
                          " bin/ && bin/levelbar-cli report g.levelbar --member M001 --pdf a.pdf");
    EXPECT_EQ(ran.status, 3);
    EXPECT_NE(ran.error.find("bin/levelbar cannot be started"), std::string::npos) << ran.error;
}

} // namespace
} // namespace levelbar::report_test
