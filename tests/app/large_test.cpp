// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later

#include "tests/support/logbook_fixture.h"
#include "tests/support/random.h"
#include "tests/support/run_program.h"

#include <gtest/gtest.h>

#include <chrono>
#include <cstdio>
#include <fstream>

namespace levelbar::large_test {
namespace {

using tests::quoted;

// Two million sets: 2,000 people over ten years. Prints times and the size of the file.
TEST(LargeTest, TwoMillionSetsSlow)
{
    const tests::TemporaryFolder folder;
    {
        std::ofstream members(folder / "members.csv");
        std::ofstream sets(folder / "sets.csv");
        members << "member_id\n";
        sets << "date,member_id,exercise,set,side,load,unit,reps,rir,class\n";
        tests::Random random(1);
        for (int person = 0; person < 2000; ++person) {
            members << "P" << person << "\n";
            for (int session = 0; session < 334; ++session) {
                const std::string date = isoText(Day{17000 + 10 * session});
                for (int number = 1; number <= 3; ++number) {
                    sets << date << ",P" << person << ",Barbell bench press," << number << ",both,"
                         << 40 + 2.5 * random.below(20) << ",kg," << 5 + random.below(6) << ","
                         << random.below(4) << ",Class " << person % 20 << "\n";
                }
            }
        }
    }
    const std::string cli = tests::program("levelbar-cli");
    const std::string into = "cd " + quoted(folder.path().string()) + " && " + cli + " ";
    const auto timed = [&](const char* what, const std::string& arguments) {
        const auto start = std::chrono::steady_clock::now();
        const auto ran = tests::run(into + arguments);
        const std::chrono::duration<double> took = std::chrono::steady_clock::now() - start;
        std::printf("%s: %.1f s\n", what, took.count());
        EXPECT_EQ(ran.status, 0) << ran.error.substr(0, 500);
    };
    timed("new", "new g.levelbar");
    timed("import", "import g.levelbar --members members.csv --sets sets.csv");
    timed("review", "review g.levelbar --json --on 2026-01-01");
    std::printf("file: %.0f MB\n",
                static_cast<double>(std::filesystem::file_size(folder / "g.levelbar")) / 1e6);
}

} // namespace
} // namespace levelbar::large_test
