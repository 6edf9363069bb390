// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "tests/support/logbook_fixture.h"
#include "tests/support/run_program.h"

#include <algorithm>
#include <fstream>
#include <set>
#include <sstream>
#include <unistd.h>

namespace levelbar::tests {

// A folder in which levelbar-cli runs.
class CliFolder : public testing::Test {
protected:
    [[nodiscard]] Ran shell(const std::string& command) const
    {
        return run("cd " + quoted(m_folder.path().string()) + " && " + command);
    }

    [[nodiscard]] Ran cli(const std::string& arguments) const
    {
        return shell(program() + " " + arguments);
    }

    // The same, but without the rights that let root write what is read only.
    [[nodiscard]] Ran plainCli(const std::string& arguments) const
    {
        const bool isRoot = ::geteuid() == 0;
        return shell((isRoot ? "setpriv --bounding-set=-all --inh-caps=-all " : "") + program() +
                     " " + arguments);
    }

    void write(const std::string& name, const std::string& text) const
    {
        std::ofstream(m_folder.path() / name, std::ios::binary) << text;
    }

    [[nodiscard]] std::string bytes(const std::string& name) const
    {
        std::ifstream in(m_folder.path() / name, std::ios::binary);
        std::ostringstream text;
        text << in.rdbuf();
        return std::move(text).str();
    }

    void overwrite(const std::string& name, std::size_t at, const std::string& text) const
    {
        std::fstream file(m_folder.path() / name, std::ios::in | std::ios::out | std::ios::binary);
        file.seekp(static_cast<std::streamoff>(at));
        file << text;
    }

    [[nodiscard]] std::set<std::string> names() const
    {
        std::set<std::string> all;
        for (const auto& entry : std::filesystem::directory_iterator(m_folder.path())) {
            all.insert(entry.path().filename().string());
        }
        return all;
    }

    // g.levelbar with M1 and M2, who bench pressed on twenty days, both sides by one arm on six.
    void makeGym() const
    {
        ASSERT_EQ(cli("new g.levelbar").status, 0);
        write("members.csv", "member_id,name\nM1,Ann\nM2,Ben\n");
        std::string sets = "date,member_id,exercise,set,side,load,unit,reps,rir,class\n";
        for (int day = 1; day <= 20; ++day) {
            const std::string date =
                "2026-10-" + std::string(day < 10 ? "0" : "") + std::to_string(day);
            for (const char* who : {"M1", "M2"}) {
                sets += date + "," + who + ",Barbell bench press,1,both,60,kg,8,2,Morning\n";
                if (day <= 6) {
                    for (const char* side : {"left", "right"}) {
                        sets += date + "," + who + ",Single-arm dumbbell bench press,1," + side +
                                ",14,kg," + (*side == 'l' ? "8" : "10") + ",1,\n";
                    }
                }
            }
        }
        write("sets.csv", sets);
        const Ran ran = cli("import g.levelbar --members members.csv --sets sets.csv");
        ASSERT_EQ(ran.status, 0) << ran.error;
    }

    static int lines(const std::string& text)
    {
        return static_cast<int>(std::count(text.begin(), text.end(), '\n'));
    }

    TemporaryFolder m_folder;

private:
    static std::string program() { return tests::program("levelbar-cli"); }
};

} // namespace levelbar::tests
