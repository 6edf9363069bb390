// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/sides/side_listing.h"
#include "core/sides/side_model.h"
#include "core/sides/side_records.h"

#include <optional>

namespace levelbar {

// One measure on one day, seen with what its roster teaches.
struct SideContext {
    Day day;
    const SideNoise& noise;
    const SidePrior& prior;
    double thresholdPercent = kUsualThreshold;
};

// A difference within the four weeks up to the day, seen twice or more and over the threshold, that
// the pairs before (two days or more) make implausible: beyond 1.96 standard errors.
[[nodiscard]] std::optional<SideJump> jumpOf(const SideSeries& series, const SideContext& context);

// The last pain within `days` up to the day: of the measure alone, or of its area too. Null when
// there was none.
[[nodiscard]] const PainDay* lastPain(const SideSeries& series, Day day, int days, bool isOwnOnly);

// What first happened after a reason was agreed, up to the day: pain in the measure, a jump, or a
// difference at least 5 points larger than agreed (or as much on the other side) whose interval
// leaves the agreed one out.
[[nodiscard]] std::optional<SideNewsDay>
newsSince(const KnownReason& reason, const SideSeries& series, const SideContext& context);

} // namespace levelbar
