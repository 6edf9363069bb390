// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later

#include "tests/support/logbook_fixture.h"
#include "tests/support/run_program.h"

#include <gtest/gtest.h>

namespace levelbar {
namespace {

using tests::quoted;
using tests::TemporaryFolder;

std::string desktop(const std::string& arguments)
{
    return "QT_QPA_PLATFORM=offscreen " + quoted(std::string(LEVELBAR_BINARY_DIR) + "/levelbar") +
           " " + arguments;
}

TEST(DesktopTest, WritesAPictureOfEveryPageFromAnyFolder)
{
    const TemporaryFolder folder;
    const auto ran = tests::run(
        "cd / && " + desktop("--demo --screenshot " + quoted((folder / "shots").string())));
    EXPECT_EQ(ran.status, 0) << ran.error;
    int pictures = 0;
    for (const auto& entry : std::filesystem::directory_iterator(folder / "shots")) {
        EXPECT_GT(entry.file_size(), 10'000U) << entry.path();
        ++pictures;
    }
    EXPECT_EQ(pictures, 16) << "four pages, two themes, two sizes";
}

TEST(DesktopTest, HelpAndWrongOptionsSaySo)
{
    EXPECT_EQ(tests::run(desktop("--help")).status, 0);
    EXPECT_NE(tests::run(desktop("--no-such-thing")).status, 0);
    EXPECT_EQ(tests::run(desktop("--theme purple")).status, 2);
}

} // namespace
} // namespace levelbar
