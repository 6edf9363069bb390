// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/exercise/done_set.h"

namespace levelbar {

// From this score on (of 10) a pain matters: common practice, no source.
inline constexpr int kPainThatMatters = 3;

// A pain that matters, or one that ended the set.
[[nodiscard]] inline bool hurts(const PerformedSet& set)
{
    return set.pain.value_or(0) >= kPainThatMatters || set.stopped == StopReason::Pain;
}

} // namespace levelbar
