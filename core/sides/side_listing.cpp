// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/sides/side_listing.h"

#include "core/base/words.h"

namespace levelbar {

namespace {

constexpr Words<SideTier, 4> kTiers = {{{SideTier::None, "none"},
                                        {SideTier::Look, "look"},
                                        {SideTier::Act, "act"},
                                        {SideTier::SendOn, "send_on"}}};

constexpr Words<SideWhy, 8> kWhys = {{{SideWhy::OneDay, "one_day"},
                                      {SideWhy::NotSure, "not_sure"},
                                      {SideWhy::BeyondFive, "beyond_five"},
                                      {SideWhy::BeyondThreshold, "beyond_threshold"},
                                      {SideWhy::Hurts, "hurts"},
                                      {SideWhy::Jump, "jump"},
                                      {SideWhy::KnownReason, "known_reason"},
                                      {SideWhy::Paused, "paused"}}};

} // namespace

std::string_view tierWord(SideTier tier)
{
    return wordOf(kTiers, tier);
}

std::string_view sideWhyWord(SideWhy why)
{
    return wordOf(kWhys, why);
}

} // namespace levelbar
