// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/review/attention.h"

#include "core/base/fault.h"
#include "core/base/words.h"

namespace levelbar {

namespace {

constexpr Words<AttentionKind, 9> kKinds = {{{AttentionKind::Pain, "pain"},
                                             {AttentionKind::Imbalance, "imbalance"},
                                             {AttentionKind::Falling, "falling"},
                                             {AttentionKind::NoGain, "no_gain"},
                                             {AttentionKind::Absence, "absence"},
                                             {AttentionKind::LoadJump, "load_jump"},
                                             {AttentionKind::Retest, "retest"},
                                             {AttentionKind::Clearance, "clearance"},
                                             {AttentionKind::TargetMissed, "target_missed"}}};

std::string_view imbalanceTemplate(const Attention& attention)
{
    const bool isLeft = attention.side == Side::Left;
    switch (attention.tier) {
    case SideTier::Act:
        return isLeft ? "%1: left weaker by %2 %, %3 to %4. Work on it, left side first."
                      : "%1: right weaker by %2 %, %3 to %4. Work on it, right side first.";
    case SideTier::SendOn:
        return isLeft ? "%1: left weaker by %2 %, %3 to %4, new or painful. Send on: not ours to "
                        "train."
                      : "%1: right weaker by %2 %, %3 to %4, new or painful. Send on: not ours to "
                        "train.";
    case SideTier::Look:
    case SideTier::None:
        break;
    }
    return isLeft ? "%1: left weaker by %2 %, %3 to %4. Check again, starting side swapped."
                  : "%1: right weaker by %2 %, %3 to %4. Check again, starting side swapped.";
}

} // namespace

std::string_view attentionWord(AttentionKind kind)
{
    return wordOf(kKinds, kind);
}

std::string_view attentionTemplate(const Attention& attention)
{
    switch (attention.kind) {
    case AttentionKind::Pain:
        return "Pain %1 of 10 in %2 on %3; sets with pain in four weeks: %4.";
    case AttentionKind::Imbalance:
        return imbalanceTemplate(attention);
    case AttentionKind::Falling:
        return "%1: falling %2 % a week, %3 to %4.";
    case AttentionKind::NoGain:
        return "%1: no gain we can see in %2 weeks.";
    case AttentionKind::Absence:
        return "Not seen for %1 weeks.";
    case AttentionKind::LoadJump:
        return "%1 in seven days: %2; usually %3 a week, at most %4 in eight weeks.";
    case AttentionKind::Retest:
        return attention.arguments.size() > 2 ? "%1 and %3 more: due for a retest since %2."
                                              : "%1: due for a retest since %2.";
    case AttentionKind::Clearance:
        return attention.evidence.amount > 1 ? "Clearance ended on %1." : "Clearance ends on %1.";
    case AttentionKind::TargetMissed:
        return "%1: fewer reps than planned on %2 and %3.";
    }
    return "";
}

std::string sentence(const Attention& attention)
{
    return fill(attentionTemplate(attention), attention.arguments);
}

} // namespace levelbar
