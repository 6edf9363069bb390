// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "tests/support/logbook_fixture.h"
#include "tests/support/run_program.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <chrono>
#include <cstdio>
#include <string>

namespace levelbar::tests {

// Runs the real program over the open data.
class OpenDataFixture : public testing::Test {
protected:
    // The review as of a day, of a new logbook with one study's people and tests in it.
    nlohmann::json review(const std::string& study, const std::string& file, const std::string& on)
    {
        const std::string data = LEVELBAR_TEST_DATA;
        const std::string cli = program("levelbar-cli");
        const std::string into = "cd " + quoted(m_folder.path().string()) + " && ";
        const auto write = [&](const std::string& what) {
            const Ran made = run(into + "awk -v study=" + study + " -f " +
                                 quoted(data + "/to_" + what + ".awk") + " " +
                                 quoted(data + "/" + file) + " > " + what + ".csv");
            EXPECT_EQ(made.status, 0) << made.error;
        };
        write("members");
        write("tests");
        const auto start = std::chrono::steady_clock::now();
        const Ran imported = run(into + cli + " new g.levelbar && " + cli +
                                 " import g.levelbar --members members.csv --tests tests.csv");
        EXPECT_EQ(imported.status, 0) << imported.error;
        const auto middle = std::chrono::steady_clock::now();
        const Ran ran = run(into + cli + " review g.levelbar --json --on " + on);
        EXPECT_EQ(ran.status, 0) << ran.error;
        const std::chrono::duration<double> importing = middle - start;
        const std::chrono::duration<double> reviewing = std::chrono::steady_clock::now() - middle;
        std::printf("%s: import %.2f s, review %.2f s\n",
                    study.c_str(),
                    importing.count(),
                    reviewing.count());
        return nlohmann::json::parse(ran.out);
    }

    TemporaryFolder m_folder;
};

} // namespace levelbar::tests
