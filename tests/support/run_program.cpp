// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later

#include "tests/support/run_program.h"

#include "tests/support/logbook_fixture.h"

#include <cstdlib>
#include <fstream>
#include <sstream>
#include <sys/wait.h>

namespace levelbar::tests {

namespace {

std::string textOf(const std::filesystem::path& path)
{
    std::ifstream in(path, std::ios::binary);
    std::ostringstream text;
    text << in.rdbuf();
    return text.str();
}

} // namespace

std::string program(const std::string& name)
{
    const char* const elsewhere = std::getenv("LEVELBAR_PROGRAMS");
    return quoted(std::string(elsewhere == nullptr ? LEVELBAR_BINARY_DIR : elsewhere) + "/" + name);
}

std::string quoted(const std::string& word)
{
    std::string result = "'";
    for (const char c : word) {
        result += c == '\'' ? "'\\''" : std::string(1, c);
    }
    return result + "'";
}

Ran run(const std::string& command)
{
    const TemporaryFolder folder;
    const std::string redirected = "( " + command + " ) >" + quoted((folder / "out").string()) +
                                   " 2>" + quoted((folder / "error").string()) + " </dev/null";
    const int status = std::system(redirected.c_str()); // NOLINT(cert-env33-c): that is the test
    return {WIFEXITED(status) ? WEXITSTATUS(status) : -1,
            textOf(folder / "out"),
            textOf(folder / "error")};
}

} // namespace levelbar::tests
