// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/day.h"

#include <string_view>

namespace levelbar {

// A day to come, typed as a date (2026-12-04) or as days from today (14): 1 to 366 days ahead.
// NotADate, DateOutOfRange or NotAWholeNumber otherwise.
[[nodiscard]] Result<Day> parseDueDay(std::string_view text, Day today);

} // namespace levelbar
