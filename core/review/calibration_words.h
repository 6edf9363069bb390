// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/review/calibration.h"
#include "core/review/wording.h"

namespace levelbar {

// "43 of 47 sets fell inside the range given before (91 in 100, 82 to 96; 90 were promised)." and
// what the lean says, over all and for each experience of which it is clear.
[[nodiscard]] std::vector<Phrase> calibrationPhrases(const Calibration& calibration);

} // namespace levelbar
