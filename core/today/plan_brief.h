// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/plan/meeting_plan.h"
#include "core/review/wording.h"

#include <span>
#include <vector>

namespace levelbar {

// What is worth knowing of a meeting's plan before it begins.
struct PlanBriefEntry {
    MemberId member; // not stored: about the gym's kit
    Phrase what;
};

// First pieces that more people want at once than there are, by round; then loads that differ from
// the person's last one in that exercise, by item: "Bench press: 62.5 kg, last time 60 kg." items:
// those that the answer was made from.
[[nodiscard]] std::vector<PlanBriefEntry>
planBrief(const MeetingPlanAnswer& answer, std::span<const PlanItem> items, const Library& library);

} // namespace levelbar
