// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/today/settled.h"

#include <algorithm>
#include <limits>

namespace levelbar {

namespace {

constexpr int kFourWeeks = 28;
constexpr int kWeek = 7;

std::string kindName(AttentionKind kind)
{
    switch (kind) {
    case AttentionKind::Pain:
        return "Pain";
    case AttentionKind::Imbalance:
        return "Left and right";
    case AttentionKind::Falling:
        return "Falling";
    case AttentionKind::NoGain:
        return "No gain";
    case AttentionKind::Absence:
        return "Absence";
    case AttentionKind::LoadJump:
        return "More than usual";
    case AttentionKind::Retest:
        return "Retest";
    case AttentionKind::Clearance:
        return "Clearance";
    case AttentionKind::TargetMissed:
        break;
    }
    return "Target missed";
}

} // namespace

EvidenceMark newestEvidence(std::span<const Attention> reasons, AttentionKind kind)
{
    EvidenceMark newest{Day{std::numeric_limits<std::int32_t>::min()}, 0};
    for (const Attention& reason : reasons) {
        if (reason.kind != kind) {
            continue;
        }
        if (kind == AttentionKind::Imbalance) { // several measures: the last pair, the worst tier
            newest = {std::max(newest.day, reason.evidence.day),
                      std::max(newest.amount, reason.evidence.amount)};
        } else {
            newest = std::max(newest, reason.evidence);
        }
    }
    return newest;
}

bool isNews(const Attention& reason, const SettledReason& settled)
{
    const EvidenceMark& now = reason.evidence;
    const EvidenceMark& then = settled.evidence;
    switch (reason.kind) {
    case AttentionKind::Pain:
        return now > then;
    case AttentionKind::Imbalance:
        return now.amount > then.amount || now.day - settled.day >= kFourWeeks;
    case AttentionKind::Falling:
    case AttentionKind::NoGain:
        return now.day - settled.day >= kFourWeeks;
    case AttentionKind::LoadJump:
        return now.day - then.day >= kWeek;
    case AttentionKind::Clearance:
        return now != then;
    case AttentionKind::Absence:
    case AttentionKind::Retest:
    case AttentionKind::TargetMissed:
        break;
    }
    return now.day > then.day;
}

bool isHidden(const Attention& reason, const SettledReason& settled, Day today)
{
    if (settled.kind != reason.kind) {
        return false;
    }
    if (settled.until) {
        const bool isNewPain = reason.kind == AttentionKind::Pain && isNews(reason, settled);
        return today < *settled.until && !isNewPain;
    }
    return !isNews(reason, settled);
}

Phrase settledPhrase(const SettledReason& settled)
{
    if (settled.until) {
        return {"%1: not before %2.", {kindName(settled.kind), shortText(*settled.until)}};
    }
    return {"%1: settled on %2: %3.",
            {kindName(settled.kind), shortText(settled.day), settled.because}};
}

} // namespace levelbar
