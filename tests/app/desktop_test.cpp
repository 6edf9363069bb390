// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later

#include "tests/support/logbook_fixture.h"
#include "tests/support/run_program.h"

#include <gtest/gtest.h>

#include <map>
#include <string>

namespace levelbar::desktop_test {
namespace {

using tests::quoted;
using tests::TemporaryFolder;

std::string desktop(const std::string& arguments)
{
    return "QT_QPA_PLATFORM=offscreen " + tests::program("levelbar") + " " + arguments;
}

TEST(DesktopTest, WritesAPictureOfEveryPageFromAnyFolder)
{
    const TemporaryFolder folder;
    const auto ran = tests::run(
        "cd / && " + desktop("--demo --screenshot " + quoted((folder / "shots").string())));
    EXPECT_EQ(ran.status, 0) << ran.error;
    std::map<std::string, int> pictures; // by page
    for (const auto& entry : std::filesystem::directory_iterator(folder / "shots")) {
        EXPECT_GT(entry.file_size(), 10'000U) << entry.path();
        const std::string name = entry.path().filename().string();
        ++pictures[name.substr(0, name.find("-light")).substr(0, name.find("-dark"))];
    }
    for (const char* page : {"today",
                             "people",
                             "timetable",
                             "floor",
                             "plan",
                             "sides",
                             "exercises",
                             "gym",
                             "reports",
                             "person",
                             "person-sides",
                             "person-tests",
                             "person-sets",
                             "person-body-weight"}) {
        EXPECT_EQ(pictures[page], 4) << page << ": two themes, two sizes";
    }
    for (const char* window : {"emergency", "incident"}) {
        EXPECT_EQ(pictures[window], 2) << window << ": two themes";
    }
}

TEST(DesktopTest, HelpAndWrongOptionsSaySo)
{
    EXPECT_EQ(tests::run(desktop("--help")).status, 0);
    EXPECT_NE(tests::run(desktop("--no-such-thing")).status, 0);
    EXPECT_EQ(tests::run(desktop("--theme purple")).status, 2);
}

} // namespace
} // namespace levelbar::desktop_test
