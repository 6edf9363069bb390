// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/fault.h"

#include <cstdint>
#include <string>
#include <string_view>

namespace levelbar {

// Numbers from people and files. The decimal mark is a point; a reader that allows a comma turns
// it first. No exponents, no blanks, no leading plus, no thousands marks: what is not plainly a
// number is refused.

// Whole number from lowest to highest, both included.
[[nodiscard]] Result<std::int64_t>
parseWhole(std::string_view text, std::int64_t lowest, std::int64_t highest);

// Decimal number in units of 10^-decimals ("62.5" with 3 decimals is 62500), from lowest to
// highest in those units. decimals: 0 to 6.
[[nodiscard]] Result<std::int64_t>
parseDecimal(std::string_view text, int decimals, std::int64_t lowest, std::int64_t highest);

// The inverse: 62500 with 3 decimals is "62.5".
[[nodiscard]] std::string decimalText(std::int64_t units, int decimals);

} // namespace levelbar
