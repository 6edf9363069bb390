// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/setup_sources.h"

#include "storage/member_store.h"
#include "storage/setup_store.h"
#include "storage/station_store.h"

#include <algorithm>

namespace levelbar::ui {

namespace {

void takeStations(SetupSources& sources, const Stations& stations)
{
    sources.racks = stations.racks;
    sources.isAssumed = sources.racks.empty();
    if (sources.isAssumed) {
        sources.racks = {assumedRack()};
    }
    for (const Bench& bench : stations.benches) {
        sources.angles.insert(sources.angles.end(), bench.angles.begin(), bench.angles.end());
    }
    std::sort(sources.angles.begin(), sources.angles.end());
    sources.angles.erase(std::unique(sources.angles.begin(), sources.angles.end()),
                         sources.angles.end());
}

void takeCard(SetupSources& sources, const SetupCard& card, const Member& member)
{
    if (card.benchAngle) {
        sources.otherAngles.push_back(*card.benchAngle);
    }
    const auto rack = std::find_if(sources.racks.begin(),
                                   sources.racks.end(),
                                   [&card](const Rack& r) { return card.rack == r.id; });
    if (rack == sources.racks.end()) {
        return;
    }
    const BodySize body = bodySizeOf(member, member.intakeMass);
    const Length pitch = rack->holes.pitch;
    if (card.hookHole) {
        sources.hooks.push_back({body, rack->holes.height(*card.hookHole), pitch});
    }
    if (card.safetyHole) {
        sources.safeties.push_back({body, rack->holes.height(*card.safetyHole), pitch});
    }
}

} // namespace

BodySize bodySizeOf(const Member& member, std::optional<Mass> bodyMass)
{
    BodySize body{member.sex, std::nullopt, bodyMass};
    if (member.statureTenthMillimetres) {
        body.stature = Length{*member.statureTenthMillimetres};
    }
    return body;
}

SetupSources readSetupSources(const storage::Logbook& logbook, ExerciseId exercise, MemberId member)
{
    SetupSources sources;
    takeStations(sources, storage::StationStore(logbook).all());
    const storage::MemberStore members(logbook);
    for (const SetupCard& card : storage::SetupStore(logbook).confirmedBut(exercise, member)) {
        if (const auto other = members.byId(card.member)) {
            takeCard(sources, card, *other);
        }
    }
    return sources;
}

} // namespace levelbar::ui
