// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/plan/rack_line_up.h"
#include "ui/floor/pad_hour.h"

#include <algorithm>
#include <set>
#include <tuple>

namespace levelbar::ui {

namespace {

// The search's proof takes long for many; up to here it is done within a blink.
constexpr std::size_t kMostShared = 24;

struct Lifter {
    MemberId member;
    Mass load; // what they lift first with a bar; 0: no bar planned, or no load known
    RackSetting setting;
};

Lifter lifterOf(const FloorSheet& sheet,
                const FloorReference& reference,
                const FloorRow& row,
                const RackSettings& settings)
{
    for (std::size_t at = 0; at < row.cells.size(); ++at) {
        const Exercise* exercise = reference.library.exercise(sheet.columns[at].exercise);
        const bool isBar = exercise != nullptr && exercise->implement == Implement::Barbell;
        if (isBar && row.cells[at].planned) {
            const auto known = settings.find({row.member, exercise->id});
            return {row.member,
                    row.cells[at].planned->load,
                    known == settings.end() ? RackSetting{} : known->second};
        }
    }
    return {row.member, {}, {}};
}

// By load, in groups of like size: what stands in when plates cannot be reckoned.
void shareByLoad(const std::vector<Lifter>& lifters, int racks, FloorPlaces& places)
{
    const auto count = static_cast<int>(lifters.size());
    int at = 0;
    for (int rack = 1; rack <= racks; ++rack) {
        const int size = count / racks + (rack <= count % racks ? 1 : 0);
        for (int turn = 1; turn <= size; ++turn, ++at) {
            FloorPlace& place = places[lifters[static_cast<std::size_t>(at)].member];
            place.rack = rack;
            place.turn = turn;
        }
    }
}

bool shareByPlates(const std::vector<Lifter>& lifters,
                   const FloorReference& reference,
                   int racks,
                   FloorPlaces& places)
{
    if (racks < 2 || lifters.size() > kMostShared) {
        return false;
    }
    std::vector<RackClaim> claims;
    claims.reserve(lifters.size());
    for (const Lifter& lifter : lifters) {
        claims.push_back({lifter.member, lifter.load, {}, lifter.setting});
    }
    const auto shared = lineUp(claims, reference.kit, reference.company, racks);
    if (!shared) {
        return false;
    }
    int rack = 0;
    for (const SharedRack& one : shared->sharing.racks) {
        ++rack;
        int turn = 0;
        for (const RackTurn& of : one.turns) {
            FloorPlace& place = places[lifters[of.lifter].member];
            place.rack = rack;
            place.turn = ++turn;
        }
    }
    return true;
}

void shareAll(const FloorSheet& sheet,
              const FloorReference& reference,
              int racks,
              const RackSettings& settings,
              FloorPlaces& places)
{
    std::vector<Lifter> lifters;
    for (const FloorRow& row : sheet.rows) {
        lifters.push_back(lifterOf(sheet, reference, row, settings));
    }
    if (racks > 1) {
        std::stable_sort(lifters.begin(), lifters.end(), [](const auto& a, const auto& b) {
            return a.load.kilograms() < b.load.kilograms();
        });
    }
    const int used = std::min(racks, std::max(1, static_cast<int>(lifters.size())));
    if (!shareByPlates(lifters, reference, used, places)) {
        shareByLoad(lifters, used, places);
    }
}

// Behind the others where fewest stand.
void addToShortest(FloorPlaces& places, MemberId member, int racks)
{
    std::vector<std::tuple<int, int, int>> all; // people, rack, last turn
    for (int rack = 1; rack <= racks; ++rack) {
        int people = 0;
        int turn = 0;
        for (const auto& [other, place] : places) {
            if (other != member && place.rack == rack) {
                ++people;
                turn = std::max(turn, place.turn);
            }
        }
        all.emplace_back(people, rack, turn);
    }
    const auto [people, rack, turn] = *std::min_element(all.begin(), all.end());
    places[member].rack = rack;
    places[member].turn = turn + 1;
}

} // namespace

bool hasLifted(const FloorRow& row)
{
    return std::any_of(
        row.cells.begin(), row.cells.end(), [](const FloorCell& cell) { return cell.done; });
}

FloorPlaces placesOf(const FloorSheet& sheet,
                     const FloorReference& reference,
                     int racks,
                     const FloorPlaces& before,
                     const RackSettings& settings)
{
    FloorPlaces places;
    std::set<int> worn;
    for (const auto& [member, place] : before) {
        worn.insert(place.bib);
    }
    int bib = 1;
    for (const FloorRow& row : sheet.rows) {
        const auto known = before.find(row.member);
        if (known != before.end()) {
            places[row.member] = known->second;
            continue;
        }
        while (worn.contains(bib)) {
            ++bib;
        }
        worn.insert(bib);
        places[row.member] = {bib, 0, 0};
    }
    if (std::none_of(sheet.rows.begin(), sheet.rows.end(), [](const FloorRow& row) {
            return hasLifted(row);
        })) {
        shareAll(sheet, reference, racks, settings, places);
        return places;
    }
    for (const FloorRow& row : sheet.rows) {
        const FloorPlace place = places[row.member];
        const bool isGone = place.rack > racks && !hasLifted(row);
        if (place.rack == 0 || isGone) {
            addToShortest(places, row.member, racks);
        }
    }
    return places;
}

} // namespace levelbar::ui
