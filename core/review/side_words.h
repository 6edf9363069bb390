// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/review/review.h"
#include "core/review/wording.h"
#include "core/sides/side_prescription.h"

#include <vector>

namespace levelbar {

// Sentences about a left/right difference: templates that a window translates. They speak of this
// person alone.

// Why it is on its list or on none: "Over 10 % with 93 in 100." "Pain in Overhead press on 3 May,
// with a clear side."
[[nodiscard]] std::vector<Phrase> listingPhrases(const SideReview& review);

// "Since 3 May." "Since 3 May or before." Nothing where there is no day.
[[nodiscard]] std::vector<Phrase> sincePhrases(const SideListing& listing);

// "Off the list to work on since 3 May: not sure enough." Nothing when it came off none.
[[nodiscard]] std::vector<Phrase> leavingPhrases(const SideReview& review);

// "Known since 3 May: plays tennis." and what is new since. Nothing without a reason.
[[nodiscard]] std::vector<Phrase> reasonPhrases(const SideReview& review);

// "Left, operated on 3 May: 84 % of what the right did before (76 to 93)." Nothing without one.
[[nodiscard]] std::vector<Phrase> baselinePhrases(const SideReview& review);

// "Grip strength, 3 May: left 40 kg, right 14 kg. A slip of the pen?"
[[nodiscard]] std::vector<Phrase> phrases(const SlipQuestion& question);

// What to do next, a sentence for each rule that decided, with its numbers.
[[nodiscard]] std::vector<Phrase> phrases(const SidePlan& plan);

// "93 in 100"; never 0 or 100.
[[nodiscard]] std::string inHundred(double probability);

} // namespace levelbar
