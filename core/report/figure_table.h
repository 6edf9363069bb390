// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/review/figures.h"

#include <string>

namespace levelbar {

// What a strength chart shows, as RFC 4180: a line a dot, then a line a point of the band. Loads
// as typed; one_rm_kg, low_kg and high_kg in kilograms with three decimals. Columns:
// row (set, test, band), date, one_rm_kg, low_kg, high_kg, known, at_least (yes, no), load, unit,
// reps, rir.
[[nodiscard]] std::string figureCsv(const StrengthFigure& figure);

} // namespace levelbar
