// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/report/group_summary.h"
#include "core/report/person_report.h"
#include "core/report/take_away.h"
#include "storage/logbook.h"
#include "ui/background_review.h"

#include <optional>

namespace levelbar::ui {

// From the logbook to what a report holds. `roster` is the review of its last day; nothing when
// there is no such person, or they are archived.
[[nodiscard]] std::optional<PersonReport>
readPersonReport(const storage::Logbook& logbook, const ReviewedRoster& roster, MemberId member);

[[nodiscard]] std::optional<TakeAway>
readTakeAway(const storage::Logbook& logbook, MemberId member, HomeKit kit, Day asOf);

struct SummaryQuestion {
    Day from;
    std::optional<std::string> only; // a group; nothing: everyone
};

[[nodiscard]] GroupSummary readSummary(const storage::Logbook& logbook,
                                       const ReviewedRoster& roster,
                                       const SummaryQuestion& question);

} // namespace levelbar::ui
