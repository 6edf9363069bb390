// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/plan/rack_line_up.h"

#include <algorithm>
#include <string>

namespace levelbar {

namespace {

// The usual bar with its collars.
Mass barOf(const Kit& kit)
{
    const Mass bar = kit.bars.front().mass;
    return kit.collars.unit() == bar.unit()
               ? Mass::ofThousandths(bar.thousandths() + kit.collars.thousandths(), bar.unit())
               : bar;
}

Mass onBar(const Mass& load, const Mass& bar)
{
    return exactWeight(load) < exactWeight(bar) ? bar : load;
}

RackRules rulesFor(std::span<const RackClaim> claims, const Kit& kit, const RackCompany& company)
{
    const auto placeOf = [claims](MemberId member) {
        const auto found = std::find_if(claims.begin(), claims.end(), [member](const auto& claim) {
            return claim.member == member;
        });
        return static_cast<std::size_t>(found - claims.begin());
    };
    RackRules rules;
    for (const auto& [one, other] : company.apart) {
        const std::pair places{placeOf(one), placeOf(other)};
        if (places.first < claims.size() && places.second < claims.size()) {
            rules.apart.push_back(places);
        }
    }
    for (const MemberId spotter : company.spotters) {
        if (placeOf(spotter) < claims.size()) {
            rules.spotters.push_back(placeOf(spotter));
        }
    }
    if (!kit.isAssumed) {
        rules.stock = kit.plates;
    }
    return rules;
}

} // namespace

Result<RuledSharing> lineUp(std::span<const RackClaim> claims,
                            const Kit& kit,
                            const RackCompany& company,
                            int racks,
                            bool isProofWanted)
{
    if (claims.empty() || kit.bars.empty()) {
        return refuse(FaultCode::Empty);
    }
    RackSharingTask task;
    task.isProofWanted = isProofWanted;
    task.racks = std::min(racks, static_cast<int>(claims.size()));
    task.bar = barOf(kit);
    for (const PlateKind& plate : kit.plates) {
        task.plates.push_back(plate.mass);
    }
    for (const RackClaim& claim : claims) {
        RackLifter lifter{std::to_string(claim.member.value),
                          onBar(claim.load, task.bar),
                          claim.setting.hookHole,
                          claim.setting.safetyHole,
                          claim.setting.benchAngle,
                          {}};
        for (const Mass& load : claim.ramp) {
            lifter.ramp.push_back(onBar(load, task.bar));
        }
        task.lifters.push_back(std::move(lifter));
    }
    return shareRacks(task, rulesFor(claims, kit, company));
}

} // namespace levelbar
