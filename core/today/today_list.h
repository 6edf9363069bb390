// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/review/review.h"
#include "core/today/settled.h"

#include <map>
#include <span>
#include <string>
#include <vector>

namespace levelbar {

// One person who needs attention. The first reason is the head of the line, the others follow it.
struct TodayLine {
    MemberId member;
    std::string code;
    std::string name; // may be empty
    std::vector<Attention> reasons;
};

struct TodayList {
    std::vector<TodayLine> lines; // everybody's; the first kLinesShown are for the eye
    int statistical = 0;          // reasons listed that rest on a probability
    double expectedFalse = 0.0;   // of those, how many are expected to be chance
    int aside = 0;                // reasons left out because of what was settled
};

inline constexpr std::size_t kLinesShown = 7;

// Facts of a person that a review does not hold: see due_attention.h and work_habit.h.
using FactsByMember = std::map<MemberId, std::vector<Attention>>;

// Whether a reason rests on a probability: falling, no gain, and an imbalance that is not sent on.
[[nodiscard]] bool isStatistical(const Attention& reason);

// The lines of the review's day. What is settled is left out first. Then of the statistical
// reasons the surest are kept, as many as keep the mean probability of being false, over all that
// are kept, at kFalseShare. Order: pain, what is sent on, clearance; then by how sure we are, in
// the steps of probabilityWord() (a plain fact is almost certain); then by kind, and within it by
// probability; of pain those with most repeats first. Each person has one line.
[[nodiscard]] TodayList
todayList(const Review& review, const FactsByMember& facts, std::span<const SettledReason> settled);

} // namespace levelbar
