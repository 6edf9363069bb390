// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/floor/worth_eyes.h"

#include <algorithm>
#include <set>

namespace levelbar {

namespace {

constexpr std::size_t kMostForSafety = 3;

// How urgent, for the order alone; assumed.
int urgency(const EyesReasons& reasons)
{
    return 16 * (reasons.hasPain ? 1 : 0) + 8 * (reasons.isMaximum ? 1 : 0) +
           4 * (reasons.isNew ? 1 : 0) + 2 * (reasons.isBack ? 1 : 0) +
           (reasons.isFirstLoad ? 1 : 0);
}

double fallOf(const EyesQuestion& question, const StrengthParameters& parameters)
{
    if (!question.hasLoad) {
        return 0.0;
    }
    return question.fit ? expectedFall(*question.fit, question.set, parameters)
                        : expectedFallUnknown(question.set, parameters);
}

// Takes picks in order, one a person, until there are so many.
void take(const std::vector<std::pair<EyesPick, MemberId>>& from,
          std::size_t most,
          std::set<MemberId>& people,
          std::vector<EyesPick>& picks)
{
    for (const auto& [pick, member] : from) {
        if (picks.size() < most && people.insert(member).second) {
            picks.push_back(pick);
        }
    }
}

} // namespace

std::vector<EyesPick> worthEyes(std::span<const EyesQuestion> round,
                                const StrengthParameters& parameters,
                                std::size_t most)
{
    std::vector<std::pair<EyesPick, MemberId>> risky;
    std::vector<std::pair<EyesPick, MemberId>> telling;
    for (const EyesQuestion& question : round) {
        const double fall = fallOf(question, parameters);
        EyesPick pick{question.cell, question.reasons, fall, false};
        if (fall > 0.0) {
            telling.emplace_back(pick, question.member);
        }
        if (urgency(question.reasons) > 0) {
            pick.isForSafety = true;
            risky.emplace_back(pick, question.member);
        }
    }
    const auto tells = [](const auto& a, const auto& b) { return a.first.fall > b.first.fall; };
    std::stable_sort(telling.begin(), telling.end(), tells);
    std::stable_sort(risky.begin(), risky.end(), [&tells](const auto& a, const auto& b) {
        const int left = urgency(a.first.reasons);
        const int right = urgency(b.first.reasons);
        return left != right ? left > right : tells(a, b);
    });
    std::vector<EyesPick> picks;
    std::set<MemberId> people;
    take(risky, std::min(most, kMostForSafety), people, picks);
    take(telling, most, people, picks);
    take(risky, most, people, picks);
    return picks;
}

} // namespace levelbar
