// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "demo-data/demo_people.h"

#include <string>
#include <vector>

namespace levelbar::demo {

// What they did in nine months of classes, and what was tested.
[[nodiscard]] std::string setsCsv(const std::vector<Person>& people, tests::Random& random);
[[nodiscard]] std::string testsCsv(const std::vector<Person>& people, tests::Random& random);

} // namespace levelbar::demo
