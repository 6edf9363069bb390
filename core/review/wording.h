// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/day.h"
#include "core/base/estimate.h"
#include "core/sides/side_difference.h"
#include "core/strength/strength.h"
#include "core/trend/trend.h"

#include <string>
#include <string_view>
#include <vector>

namespace levelbar {

// A sentence template with %1, %2, ... and what goes there. A window translates the template (and
// arguments that are words) before it fills them in.
struct Phrase {
    std::string_view text;
    std::vector<std::string> arguments;
};

// The phrases one after the other, filled in, in English.
[[nodiscard]] std::string sentence(const std::vector<Phrase>& phrases);

// The fixed ladder: "almost certain" (>= 0.99), "very likely" (>= 0.90), "likely" (>= 0.75),
// "leaning" (>= 0.60), "can't tell". probability: 0 to 1, of the thing said.
[[nodiscard]] std::string_view probabilityWord(double probability);

// With one decimal, never "-0.0".
[[nodiscard]] std::string oneDecimal(double value);

// Rounded to what the doubt allows: steps of 1, 2 or 5 times a power of ten, at most a fifth of
// the interval.
[[nodiscard]] std::string roundedToDoubt(double value, const Estimate& estimate);

// "today", "yesterday", "9 days ago", "3 weeks ago".
[[nodiscard]] Phrase agoPhrase(int days);

// "About 71 kg; nine times in ten between 67 and 75." "Built on 14 counted sets." "The last 9 days
// ago."
[[nodiscard]] std::vector<Phrase> phrases(const StrengthEstimate& estimate, Day today);

// "Rising 0.4 % a week, 0.1 to 0.8, over 11 weeks." and the other four calls.
[[nodiscard]] std::vector<Phrase> phrases(const Trend& trend);

// "Left weaker by 12 %, 7 to 18 (very likely)." or "No clear side."
[[nodiscard]] std::vector<Phrase> phrases(const SideReview& review);

// Where there is little room: "rising 0.4 % a week", "can't tell"; "left by 12 %" (weaker),
// "no clear side".
[[nodiscard]] Phrase shortPhrase(const Trend& trend);
[[nodiscard]] Phrase shortPhrase(const SideReview& review);

} // namespace levelbar
