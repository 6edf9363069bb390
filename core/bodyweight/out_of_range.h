// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/fault.h"

namespace levelbar {

// OutOfRange with the three numbers written to so many decimals; NotANumber for NaN and infinity.
[[nodiscard]] tl::unexpected<Fault>
outOfRange(double value, double least, double most, int decimals);

} // namespace levelbar
