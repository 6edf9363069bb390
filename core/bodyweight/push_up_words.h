// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/bodyweight/push_up_review.h"
#include "core/review/wording.h"

namespace levelbar {

// "74 cm", "62.5 cm".
[[nodiscard]] std::string centimetres(Length length);

// "Hole 9 (74 cm): about 36 kg (30 to 42); about 10 reps (7 to 14)." "Floor: ..."
[[nodiscard]] std::vector<Phrase> phrases(const PushUpRung& rung);

// What to do next: the proposed hole and how it fits; or what is missing for it.
[[nodiscard]] std::vector<Phrase> nextPhrases(const PushUpReview& review, const RepsWanted& wanted);

// What it rests on: the set or the bench, body mass and its day, readings of the scale.
[[nodiscard]] std::vector<Phrase> basisPhrases(const PushUpReview& review);

} // namespace levelbar
