// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>
#include <vector>

namespace levelbar {

// A group smaller than this is not shown: its numbers would speak of people one can name. Common
// practice in reports to employers, no source.
inline constexpr int kLeastGroup = 5;

// Which groups must not be shown when their total is. `sizes`: people behind each group, 0 or
// more; `already`: withheld for another reason (empty, or as long as sizes). Withheld is who is
// smaller than `least`; and because what is missing can be taken from the total, the smallest
// others too, until those withheld are none, or at least two that have `least` people together.
// Of equal sizes the first goes. Where the groups cannot hide each other all are withheld.
[[nodiscard]] std::vector<bool> withheldGroups(std::span<const int> sizes,
                                               const std::vector<bool>& already = {},
                                               int least = kLeastGroup);

} // namespace levelbar
