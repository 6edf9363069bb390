// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string_view>

// Files of resources/ and demo-data/, compiled in byte for byte so that the programs
// start from any folder. Each view lives as long as the program.
namespace levelbar::resources {

// The exercises shipped with this version (columns: see the header line).
[[nodiscard]] std::string_view exerciseLibraryCsv();

// The ladders shipped with this version, one line a rung, from easy to hard.
[[nodiscard]] std::string_view ladderLibraryCsv();

// The tests shipped with this version.
[[nodiscard]] std::string_view testLibraryCsv();

// The invented gym, in the import format of the outside face.
[[nodiscard]] std::string_view demoMembersCsv();
[[nodiscard]] std::string_view demoSetsCsv();
[[nodiscard]] std::string_view demoTestsCsv();

} // namespace levelbar::resources
