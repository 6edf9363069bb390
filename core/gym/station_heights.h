// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/length.h"
#include "core/base/mass.h"
#include "core/exercise/exercise.h"
#include "core/member/member.h"

#include <optional>

namespace levelbar {

// Whose body a station is set to.
struct BodySize {
    std::optional<Sex> sex;        // not known: midway between both
    std::optional<Length> stature; // not known: the mean of the sex, with its spread
    std::optional<Mass> bodyMass;
};

// The height a bar should hang or a safety should lie at, with its standard deviation.
struct StationHeight {
    double millimetres = 0.0;
    double spread = 0.0; // mm, between people of this size; > 0
};

struct StationHeights {
    StationHeight hook;
    std::optional<StationHeight> safety; // none where nothing is to be caught
};

// What height says of a station, before anybody has tried it; nothing for exercises whose height
// is no matter of the body (a push-up's bar is its dose: see chooseHole).
//
// Body lengths are ANSUR II's (US Army 2012) on stature, the residual spreads with them.
// Bench: the hook a straight arm's reach over the pad, less 6 cm to lift the bar out (trade: 5 to
// 8), the shoulder joint 7 cm over the pad (assumed), the pad at 43 cm (sport: 42 to 45), grip 1.5
// times the breadth of the shoulders, at most 81 cm (IPF). An inclined bench lifts the shoulder by
// the trunk's length over the seat (acromion less trochanter). Floor press: the pad at 0. Safeties
// 3.5 cm under the chest (2 to 5), of ANSUR's depth, and no higher for an incline than that.
// Squat: hook at 0.73 of stature (0.72 to 0.735); safeties at 0.48, which is the bar at a thigh
// held level less 5 cm, reckoned without a source. Standing press: just under the top of the
// breastbone, 0.80. Inverted row: 0.44 (a straight arm's hang and 10 cm). Pull-up: the overhead
// reach and 5 cm. Spreads: assumed where no source is named; the bench's is 3 cm, as its 5 cm
// hold nine in ten.
// benchAngle: degrees; empty for a press on the floor.
[[nodiscard]] std::optional<StationHeights>
stationHeights(const Exercise& exercise, std::optional<int> benchAngle, const BodySize& body);

// Mean stature by sex, and its standard deviation, in mm: what stands in when nobody measured.
struct MeanStature {
    double mean = 0.0;
    double spread = 0.0;
};

[[nodiscard]] MeanStature meanStature(std::optional<Sex> sex);

} // namespace levelbar
