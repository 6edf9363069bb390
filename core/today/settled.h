// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/review/attention.h"
#include "core/review/wording.h"

#include <optional>
#include <span>
#include <string>

namespace levelbar {

// What the instructor said to one kind of reason of one person: not before a day, or settled
// because of something.
struct SettledReason {
    MemberId member;
    AttentionKind kind = AttentionKind::Pain;
    std::optional<Day> until; // "not before"; nothing: settled
    std::string because;      // of what is settled
    Day day;                  // when it was said
    EvidenceMark evidence;    // the newest that was known then

    friend bool operator==(const SettledReason&, const SettledReason&) = default;
};

// The newest of the evidence of one kind: what a settling is measured against later.
[[nodiscard]] EvidenceMark newestEvidence(std::span<const Attention> reasons, AttentionKind kind);

// Whether a reason says something new since it was settled:
// pain: a later day with pain, or one more painful set on the same;
// imbalance: a step up (check again, work on it, send on), or a pair four weeks after;
// falling, no gain: a set four weeks after (half of what such a call looks at);
// absence: they came, and stayed away again;
// load jump: another seven days, none of which was in the first;
// retest: the test was done, and is due again; clearance: another end, or it has ended since;
// target missed: a later miss.
[[nodiscard]] bool isNews(const Attention& reason, const SettledReason& settled);

// Not before a day: until that day, but pain that is news is always shown. Settled: until news.
[[nodiscard]] bool isHidden(const Attention& reason, const SettledReason& settled, Day today);

// "Absence: not before 4 Dec." or "Pain: settled on 20 Nov: saw a doctor."
[[nodiscard]] Phrase settledPhrase(const SettledReason& settled);

} // namespace levelbar
