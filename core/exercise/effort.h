// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/exercise/done_set.h"

#include <string>
#include <string_view>

namespace levelbar {

// How effort is shown and typed: one choice a gym. What is stored is always the reserve.
enum class EffortScale {
    Reserve, // reps in reserve
    Rpe,     // the RIR-based RPE scale of the trade: 10 less the reserve (Zourdos 2016)
};

// The RPE scale has numbers for at most so much in reserve (RPE 5).
inline constexpr Reserve kMostRpeReserve{50};

// The number on the scale ("2", "8"). Beyond the RPE scale's end the reserve is given in words by
// whoever asks: see isOnScale.
[[nodiscard]] std::string effortNumber(Reserve reserve, EffortScale scale);
[[nodiscard]] bool isOnScale(Reserve reserve, EffortScale scale);

// What was typed on the scale, as reps in reserve. RPE: 5 to 10 in halves. OutOfRange otherwise.
[[nodiscard]] Result<Reserve> parseEffort(std::string_view text, EffortScale scale);

// A cell of the class floor. Reserve: as parseCell(text). RPE: after the mark stands the RPE, 5 to
// 10, halves with both digits: "9.8" is nine at RPE 8, "9.85" nine at 8.5. NotACell or NotARpeCell
// otherwise.
[[nodiscard]] Result<CellEntry> parseCell(std::string_view text, EffortScale scale);

} // namespace levelbar
