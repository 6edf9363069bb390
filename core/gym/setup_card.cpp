// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/gym/setup_card.h"

#include "core/member/member.h"

namespace levelbar {

namespace {

constexpr int kLongestMark = 60;
constexpr int kLongestSetupNote = 200;

std::optional<Fault> faultOf(const std::optional<int>& value, int least, int most)
{
    if (!value || (*value >= least && *value <= most)) {
        return std::nullopt;
    }
    return Fault{FaultCode::OutOfRange,
                 {std::to_string(*value), std::to_string(least), std::to_string(most)}};
}

std::optional<Fault> faultOf(const std::string& text, int longest)
{
    const auto checked = checkName(text, longest);
    return checked ? std::nullopt : std::optional(checked.error());
}

} // namespace

Result<SetupCard> checkSetupCard(SetupCard card)
{
    constexpr int kSteepestDecline = -45;
    constexpr int kUpright = 90;
    for (const auto& fault : {faultOf(card.hookHole, 1, kMostHoles),
                              faultOf(card.safetyHole, 1, kMostHoles),
                              faultOf(card.benchAngle, kSteepestDecline, kUpright),
                              faultOf(card.gripMark, kLongestMark),
                              faultOf(card.footPosition, kLongestMark),
                              faultOf(card.note, kLongestSetupNote)}) {
        if (fault) {
            return tl::unexpected(*fault);
        }
    }
    return card;
}

int sameHeightHole(const RackHoles& from, int hole, const RackHoles& on)
{
    return nearestHole(on, from.height(hole));
}

} // namespace levelbar
