// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/day.h"

#include <functional>

namespace levelbar::ui {

// The only source of time for pages, handed in by the program (tests hand in a fixed one).
struct Clock {
    std::function<Moment()> now; // UTC
    std::function<Day()> today;  // civil date in the gym's place
};

} // namespace levelbar::ui
