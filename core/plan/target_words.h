// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/exercise/effort.h"
#include "core/plan/target.h"
#include "core/review/wording.h"

#include <string>
#include <vector>

namespace levelbar {

// "with 2 in reserve", "at RPE 8". Above 5 in reserve the RPE scale has no number of its own and
// the reserve is said.
[[nodiscard]] Phrase effortPhrase(Reserve reserve, EffortScale scale);

// "52.5 kg × 8", and what to do with it: "Raise from 50 kg.", "Hold 50 kg.".
[[nodiscard]] std::vector<Phrase> headline(const Target& target);

// "About 54 kg allow 8 reps with 2 in reserve; nine times in ten between 51 and 57."
[[nodiscard]] std::vector<Phrase> loadPhrases(const Target& target, EffortScale scale);

// How many reps a heavy load allows this person, beside the average of the gym.
[[nodiscard]] std::vector<Phrase> curvePhrases(const Target& target);

// Why this load, and what would change it.
[[nodiscard]] std::vector<Phrase> reasonPhrases(const Target& target);

// What the last day with evidence did: "12 Nov, 3 sets: up 1.2 %. With 60 kg 10 reps were in it;
// about 9 were expected."
[[nodiscard]] std::vector<Phrase> phrases(const LastMove& move);

// "15 + 1.25 a side", "bare bar"; empty for what is not a bar.
[[nodiscard]] std::string platesText(const AvailableLoad& load, Implement implement);

// What stands beside a heavy load; empty when it is not one.
[[nodiscard]] std::vector<Phrase> cautionPhrases(const Target& target);

} // namespace levelbar
