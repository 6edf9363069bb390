// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/today/today_list.h"

#include <algorithm>
#include <array>
#include <functional>
#include <tuple>

namespace levelbar {

namespace {

// Safety first.
int rankOf(const Attention& reason)
{
    if (reason.kind == AttentionKind::Pain) {
        return 0;
    }
    if (reason.kind == AttentionKind::Imbalance && reason.tier == SideTier::SendOn) {
        return 1;
    }
    return reason.kind == AttentionKind::Clearance ? 2 : 3;
}

// The steps of the ladder of words, the surest first.
int doubtOf(const Attention& reason)
{
    constexpr std::array kSteps = {0.99, 0.90, 0.75, 0.60};
    return static_cast<int>(std::count_if(
        kSteps.begin(), kSteps.end(), [&](double step) { return reason.certainty < step; }));
}

bool comesBefore(const Attention& a, const Attention& b)
{
    const auto keyOf = [](const Attention& reason) {
        return std::tuple(rankOf(reason),
                          doubtOf(reason),
                          reason.kind,
                          -reason.repeats,
                          -reason.certainty,
                          -reason.evidence.day.sinceEpoch);
    };
    return keyOf(a) < keyOf(b);
}

using SettledByMember = std::multimap<MemberId, const SettledReason*>;

std::vector<Attention>
openReasons(std::vector<Attention> reasons, MemberId member, const SettledByMember& all, Day today)
{
    const auto [begin, end] = all.equal_range(member);
    std::erase_if(reasons, [&, first = begin, last = end](const Attention& reason) {
        return std::any_of(
            first, last, [&](const auto& entry) { return isHidden(reason, *entry.second, today); });
    });
    return reasons;
}

// The lowest probability that is kept, so that the false share of all kept is as it should be.
double cutOf(std::vector<double> certainties)
{
    std::sort(certainties.begin(), certainties.end(), std::greater<>());
    double falseSum = 0.0;
    double cut = 2.0; // nobody
    for (std::size_t i = 0; i < certainties.size(); ++i) {
        falseSum += 1.0 - certainties[i];
        const bool isLastOfItsKind =
            i + 1 == certainties.size() || certainties[i + 1] < certainties[i];
        if (isLastOfItsKind && falseSum <= kFalseShare * static_cast<double>(i + 1)) {
            cut = certainties[i];
        }
    }
    return cut;
}

} // namespace

bool isStatistical(const Attention& reason)
{
    return reason.kind == AttentionKind::Falling || reason.kind == AttentionKind::NoGain ||
           (reason.kind == AttentionKind::Imbalance && reason.tier != SideTier::SendOn);
}

TodayList
todayList(const Review& review, const FactsByMember& facts, std::span<const SettledReason> settled)
{
    SettledByMember settledOf;
    for (const SettledReason& entry : settled) {
        settledOf.emplace(entry.member, &entry);
    }
    TodayList list;
    std::vector<double> certainties;
    for (const MemberReview& member : review.members) {
        std::vector<Attention> reasons = member.attention;
        if (const auto more = facts.find(member.member.id); more != facts.end()) {
            reasons.insert(reasons.end(), more->second.begin(), more->second.end());
        }
        const std::size_t found = reasons.size();
        reasons = openReasons(std::move(reasons), member.member.id, settledOf, review.asOf);
        list.aside += static_cast<int>(found - reasons.size());
        for (const Attention& reason : reasons) {
            if (isStatistical(reason)) {
                certainties.push_back(reason.certainty);
            }
        }
        if (!reasons.empty()) {
            list.lines.push_back(
                {member.member.id, member.member.code, member.member.name, std::move(reasons)});
        }
    }
    const double cut = cutOf(std::move(certainties));
    for (TodayLine& line : list.lines) {
        std::erase_if(line.reasons, [cut](const Attention& reason) {
            return isStatistical(reason) && reason.certainty < cut;
        });
        std::stable_sort(line.reasons.begin(), line.reasons.end(), comesBefore);
        for (const Attention& reason : line.reasons) {
            if (isStatistical(reason)) {
                ++list.statistical;
                list.expectedFalse += 1.0 - reason.certainty;
            }
        }
    }
    std::erase_if(list.lines, [](const TodayLine& line) { return line.reasons.empty(); });
    std::stable_sort(
        list.lines.begin(), list.lines.end(), [](const TodayLine& a, const TodayLine& b) {
            return comesBefore(a.reasons.front(), b.reasons.front());
        });
    return list;
}

} // namespace levelbar
