// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/review/history.h"
#include "storage/logbook.h"

#include <functional>
#include <optional>

namespace levelbar::storage {

// Hands every person's history over, in id order, from one pass over the sets and one over the
// trials, in one read transaction. Archived people are left out. 2 million sets
// take about a second; only one person's sets are held at a time. All that was ever done, and the
// rep curve that the gym has taught as a question of day `asOf` knows it (repCurveOn).
void forEachHistory(const Logbook& logbook,
                    Day asOf,
                    const std::function<void(MemberHistory&)>& visit);

// One person's, or nothing when there is no such member.
[[nodiscard]] std::optional<MemberHistory>
historyOf(const Logbook& logbook, MemberId member, Day asOf);

// The same with the published rep curve, for whoever estimates no strength by it.
[[nodiscard]] std::optional<MemberHistory> bareHistoryOf(const Logbook& logbook, MemberId member);

} // namespace levelbar::storage
