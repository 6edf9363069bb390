// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/today/meeting_brief.h"

#include "core/floor/day_changes.h"
#include "core/today/due_attention.h"
#include "core/today/proposed_action.h"

#include <algorithm>

namespace levelbar {

namespace {

constexpr int kGapDays = 21;
constexpr int kNewDays = 2;

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
        if (one.leftEarly) {
            const std::string why(leftWhyText(*one.leftEarly));
            add(BriefKind::LeftEarly,
                why.empty() ? Phrase{"Left early last time.", {}}
                            : Phrase{"Left early last time: %1.", {why}});
        }
        const int away = member.lastSeen ? today - *member.lastSeen : 0;
        if (away > kGapDays) {
            add(BriefKind::Back,
                Phrase{"Back after %1 weeks: lighter today.", {std::to_string(away / 7)}});
        }
        if (member.daysSeen == 0) {
            add(BriefKind::New, Phrase{"New: never seen before.", {}});
        } else if (member.daysSeen <= kNewDays) {
            add(BriefKind::New,
                Phrase{member.daysSeen == 1 ? "New: seen once before." : "New: seen twice before.",
                       {}});
        }
    }
    std::stable_sort(brief.begin(), brief.end(), [](const BriefEntry& a, const BriefEntry& b) {
        return a.kind < b.kind;
    });
    return brief;
}

} // namespace levelbar
