// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/today/meeting_brief.h"

#include "core/today/due_attention.h"
#include "core/today/proposed_action.h"

#include <algorithm>

namespace levelbar {

namespace {

constexpr int kGapDays = 21;

std::optional<Phrase> painLately(const MemberReview& member)
{
    for (const Attention& reason : member.attention) {
        if (reason.kind != AttentionKind::Pain) {
            continue;
        }
        const std::string& score = reason.arguments.at(0);
        const std::string& exercise = reason.arguments.at(1);
        if (member.lastSeen == reason.evidence.day) {
            return Phrase{"Had pain last time: %1 of 10 in %2.", {score, exercise}};
        }
        // Whoever was here since without it need not be named, unless it keeps coming back.
        if (proposedAction(reason) == ProposedAction::LeaveOutAndAsk) {
            return Phrase{"Had pain on %3: %1 of 10 in %2. Leave it out until it was looked at.",
                          {score, exercise, shortText(reason.evidence.day)}};
        }
    }
    return std::nullopt;
}

std::optional<Phrase>
clearanceWords(const ExpectedMember& expected, Day today, bool keepsClearances)
{
    if (!expected.clearedUntil) {
        return keepsClearances ? std::optional(Phrase{"No clearance on file.", {}}) : std::nullopt;
    }
    const auto due = clearanceDue(expected.clearedUntil, std::nullopt, today);
    return due ? std::optional(Phrase{attentionTemplate(*due), due->arguments}) : std::nullopt;
}

std::optional<Phrase> leftWords(const ExpectedMember& expected)
{
    if (!expected.leftEarly) {
        return std::nullopt;
    }
    const std::string why(leftWhyText(*expected.leftEarly));
    return why.empty() ? Phrase{"Left early last time.", {}}
                       : Phrase{"Left early last time: %1.", {why}};
}

std::optional<Phrase> newWords(const MemberReview& member)
{
    switch (member.daysSeen) {
    case 0:
        return Phrase{"New: never seen before.", {}};
    case 1:
        return Phrase{"New: seen once before.", {}};
    case 2:
        return Phrase{"New: seen twice before.", {}};
    default:
        return std::nullopt;
    }
}

} // namespace

std::vector<BriefEntry>
meetingBrief(std::span<const ExpectedMember> expected, Day today, bool keepsClearances)
{
    std::vector<BriefEntry> brief;
    for (const ExpectedMember& one : expected) {
        const MemberReview& member = *one.review;
        const auto add = [&](BriefKind kind, std::optional<Phrase> what) {
            if (what) {
                brief.push_back({member.member.id, kind, std::move(*what)});
            }
        };
        add(BriefKind::Pain, painLately(member));
        add(BriefKind::Clearance, clearanceWords(one, today, keepsClearances));
        add(BriefKind::LeftEarly, leftWords(one));
        const int away = member.lastSeen ? today - *member.lastSeen : 0;
        if (away > kGapDays) {
            add(BriefKind::Back,
                Phrase{"Back after %1 weeks: lighter today.", {std::to_string(away / 7)}});
        }
        add(BriefKind::New, newWords(member));
    }
    std::stable_sort(brief.begin(), brief.end(), [](const BriefEntry& a, const BriefEntry& b) {
        return a.kind < b.kind;
    });
    return brief;
}

} // namespace levelbar
