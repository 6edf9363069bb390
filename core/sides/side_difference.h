// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/day.h"
#include "core/base/estimate.h"
#include "core/base/id.h"
#include "core/base/side.h"

#include <optional>
#include <string>
#include <string_view>

namespace levelbar {

// What a left/right difference calls for. On screen: no clear side, check again, work on it,
// send on.
enum class SideTier { None, Look, Act, SendOn };

// The measure is an exercise (sets and tested one-rep maxima together) or a test.
struct Measure {
    std::optional<ExerciseId> exercise;
    std::optional<TestId> test;
    std::string name;
};

// A person's left/right difference in one measure. Percentages are 100·(right − left)/(the
// stronger of the two): positive when the right is stronger.
struct SideReview {
    Measure measure;
    Estimate differencePercent;   // count = distinct days with a pair that sizes it
    std::optional<Side> weaker;   // nothing when the centre is 0
    double probabilitySide = 0.5; // that the weaker side really is the weaker one
    double thresholdPercent = 10.0;
    double probabilityBeyondThreshold = 0.0;
    double probabilityBeyondFive = 0.0;
    int days = 0;
    Day lastPair;
    SideTier tier = SideTier::None;
};

[[nodiscard]] std::string_view tierWord(SideTier tier); // "none", "look", "act", "send_on"

} // namespace levelbar
