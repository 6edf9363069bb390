// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/base/id.h"
#include "core/gym/rack_rules.h"

#include <optional>
#include <span>
#include <utility>
#include <vector>

namespace levelbar {

// What must be set at a rack for somebody; nothing: as it is.
struct RackSetting {
    std::optional<int> hookHole;
    std::optional<int> safetyHole;
    std::optional<int> benchAngle; // degrees

    friend bool operator==(const RackSetting&, const RackSetting&) = default;
};

// One person's place in a barbell exercise.
struct RackClaim {
    MemberId member;
    Mass load;
    std::vector<Mass> ramp; // warm-up loads, lightest first
    RackSetting setting;
};

// Who may stand with whom.
struct RackCompany {
    std::vector<std::pair<MemberId, MemberId>> apart; // never at one rack
    std::vector<MemberId> spotters;                   // one of them at every rack; empty: not asked

    friend bool operator==(const RackCompany&, const RackCompany&) = default;
};

// Shares people out over at most that many racks of a gym: with its usual bar and collars, and,
// where its plates are known, no more of them than it owns. A load under the bar's is lifted with a
// lighter bar, and without plates. Without a proof it is quicker where the proof is hard.
// RackTurn::lifter: a place in `claims`. Faults: those of shareRacks(); Empty without people or
// without a bar.
[[nodiscard]] Result<RuledSharing> lineUp(std::span<const RackClaim> claims,
                                          const Kit& kit,
                                          const RackCompany& company,
                                          int racks,
                                          bool isProofWanted = true);

} // namespace levelbar
