// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/day.h"
#include "core/member/member.h"

#include <optional>

namespace levelbar {

// What was said beforehand of a planned set, kept as it was said: how many reps to the end (done
// and left together, as people tell them) its load allows, nine times in ten from low to high.
struct GivenPrediction {
    double reps = 0.0;
    double low = 0.0; // not under 0
    double high = 0.0;
    std::optional<Experience> experience; // the person's on that day
    int modelVersion = 0;                 // kPredictionVersion of the program that said it
    Moment givenAt;

    friend bool operator==(const GivenPrediction&, const GivenPrediction&) = default;
};

// To be raised whenever the strength model or the range says something else of the same sets.
inline constexpr int kPredictionVersion = 2;

} // namespace levelbar
