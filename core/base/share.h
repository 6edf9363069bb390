// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/estimate.h"

#include <optional>

namespace levelbar {

// A share, `part` of `whole`, 0 to 1, with its score interval (Wilson 1927, JASA 22:209-212), which
// stays inside 0 to 1 and holds for small counts. count = whole. Nothing when whole is 0 or part
// lies outside 0 to whole.
[[nodiscard]] std::optional<Estimate> shareOf(int part, int whole, double level = kLevel);

} // namespace levelbar
