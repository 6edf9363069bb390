// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "tests/support/dense_strength.h"

#include <map>
#include <string>
#include <vector>

namespace levelbar::tests {

// The tested maxima of the open leg data, by person and exercise as the library names it, in
// order of week; week 0 is the study's first.
using LegTests = std::map<std::string, std::map<std::string, std::vector<DenseTest>>>;

[[nodiscard]] LegTests readLegTests(const std::string& path);

} // namespace levelbar::tests
