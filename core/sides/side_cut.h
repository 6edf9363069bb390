// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

namespace levelbar {

// The share of a list that may be chance entries, on average.
inline constexpr double kFalseShare = 0.10;

// Someone who may be listed: how surely, and whether they were a week before.
struct ListCandidate {
    double probability = 0.0; // that the claim of the list is true
    bool wasListed = false;
};

// Who is listed, in the order given. The cut is the lowest that keeps the mean probability of being
// false, of those in the cut and those who stay together, at kFalseShare; who was listed stays
// while the probability is above the cut less 0.1. Only when nobody is in the cut may those who
// stay exceed the share. (Bayesian false discovery rate: Newton et al. 2004, Biostatistics
// 5:155-176.)
[[nodiscard]] std::vector<bool> listOf(const std::vector<ListCandidate>& candidates);

} // namespace levelbar
