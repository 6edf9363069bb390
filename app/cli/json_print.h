// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <nlohmann/json.hpp>

namespace levelbar::cli {

// The answer of a command with --json, on standard output. Bytes that are no UTF-8 (file names,
// what SQLite quotes of a damaged file) become U+FFFD: the output is JSON whatever they hold.
void printJson(const nlohmann::ordered_json& json);

} // namespace levelbar::cli
