// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/floor/floor_person.h"
#include "core/review/review.h"
#include "core/review/wording.h"

#include <optional>
#include <span>
#include <vector>

namespace levelbar {

// What is worth knowing of a person before a class, the gravest first.
enum class BriefKind { Pain, Clearance, LeftEarly, Back, New };

struct BriefEntry {
    MemberId member;
    BriefKind kind = BriefKind::Pain;
    Phrase what;
};

// One person who is expected, with what the review does not know.
struct ExpectedMember {
    const MemberReview* review = nullptr;
    std::optional<Day> clearedUntil;
    std::optional<LeftWhy> leftEarly = std::nullopt; // the last time they came
};

// Had pain the last time they were seen, or pain that keeps coming back; clearance missing (only
// where the gym keeps any), ended or ending within two weeks; left early the last time; back after
// more than three weeks; new (seen on two days at most). By kind, then in the order given.
[[nodiscard]] std::vector<BriefEntry>
meetingBrief(std::span<const ExpectedMember> expected, Day today, bool keepsClearances);

} // namespace levelbar
