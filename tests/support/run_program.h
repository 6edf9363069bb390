// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

namespace levelbar::tests {

struct Ran {
    int status = -1; // exit status; -1 when it did not end by itself
    std::string out;
    std::string error;
};

// Runs a command through the shell and waits for it.
[[nodiscard]] Ran run(const std::string& command);

// One of our two programs as a shell word: from the build of this test, or from the folder that
// LEVELBAR_PROGRAMS names.
[[nodiscard]] std::string program(const std::string& name);

// A path or word as one shell word.
[[nodiscard]] std::string quoted(const std::string& word);

} // namespace levelbar::tests
