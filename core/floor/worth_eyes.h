// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/id.h"
#include "core/strength/expected_learning.h"

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

namespace levelbar {

// Where most is at risk. Not a score of a person: why a set should be watched.
struct EyesReasons {
    bool hasPain = false;     // today, or last time
    bool isNew = false;       // fewer than three days
    bool isBack = false;      // after more than three weeks
    bool isFirstLoad = false; // heavier than ever before
    bool isMaximum = false;   // at most one in reserve at four reps or fewer, or a test

    friend bool operator==(const EyesReasons&, const EyesReasons&) = default;
};

// A set of the coming round.
struct EyesQuestion {
    std::size_t cell = 0; // whatever the asker needs to know it by
    MemberId member;
    std::optional<StrengthFit> fit; // of the exercise, up to yesterday; nothing: never done
    bool hasLoad = true;            // false: body weight, of which no strength is estimated
    ComingSet set;
    EyesReasons reasons;
};

struct EyesPick {
    std::size_t cell = 0;
    EyesReasons reasons;
    double fall = 0.0; // of the variance of ln 1RM, expected if counted
    bool isForSafety = false;
};

inline constexpr std::size_t kMostEyes = 6;

// The sets of a round that are worth counting, at most six and one a person: first, up to three,
// where most is at risk (pain, then a maximum, new, back, first time at a load), then those that
// teach most. The rest may go with a key. Sets that neither teach nor risk anything are left out.
[[nodiscard]] std::vector<EyesPick> worthEyes(std::span<const EyesQuestion> round,
                                              const StrengthParameters& parameters,
                                              std::size_t most = kMostEyes);

} // namespace levelbar
