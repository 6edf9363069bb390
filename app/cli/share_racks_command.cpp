// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/command.h"
#include "app/cli/json_print.h"
#include "app/cli/table.h"
#include "core/base/number.h"
#include "core/gym/rack_sharing.h"
#include "core/member/member.h"
#include "storage/exchange/import_rows.h"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <array>
#include <map>

namespace levelbar::cli {

namespace {

constexpr std::array<std::string_view, 3> kColumns = {"member_id", "load_kg", "hook_hole"};
constexpr std::array<std::string_view, 2> kNeeded = {"member_id", "load_kg"};

// The lifters of the file; what is wrong with a row goes into the report.
std::vector<RackLifter> readLifters(const storage::ImportSource& source,
                                    const PlateStacks& stacks,
                                    storage::ImportReport& report)
{
    std::vector<RackLifter> lifters;
    std::map<std::string, int> lines; // where each stood first
    storage::ImportFile file(source, report);
    file.read(kColumns, kNeeded, [&] {
        RackLifter lifter;
        if (auto id = file.take("member_id", checkMemberCode(file.cell("member_id")))) {
            lifter.id = std::move(*id);
            const auto [first, isNew] = lines.emplace(lifter.id, file.line());
            if (!isNew) {
                file.refuse("member_id", {FaultCode::RepeatedKey, {std::to_string(first->second)}});
            }
        }
        const std::string_view load = file.numberCell("load_kg");
        const auto mass =
            load.empty() ? refuse(FaultCode::Empty) : parseMass(load, MassUnit::Kilogram);
        lifter.load = file.take("load_kg", mass).value_or(Mass());
        if (mass) {
            (void)file.take("load_kg", stacks.stackFor(*mass));
        }
        if (!file.cell("hook_hole").empty()) {
            const auto hole = file.take("hook_hole", parseWhole(file.cell("hook_hole"), 1, 99));
            lifter.hookHole = hole ? std::optional(static_cast<int>(*hole)) : std::nullopt;
        }
        lifters.push_back(std::move(lifter));
    });
    return lifters;
}

nlohmann::ordered_json sharingJson(const RackSharing& sharing, const RackSharingTask& task)
{
    auto racks = nlohmann::ordered_json::array();
    for (const SharedRack& rack : sharing.racks) {
        auto order = nlohmann::ordered_json::array();
        for (const RackTurn& turn : rack.turns) {
            order.push_back(task.lifters[turn.lifter].id);
        }
        racks.push_back({{"order", std::move(order)},
                         {"plate_moves", rack.plateMoves},
                         {"hook_moves", rack.hookMoves}});
    }
    return {{"racks", std::move(racks)},
            {"plate_moves", sharing.plateMoves},
            {"hook_moves", sharing.hookMoves},
            {"lower_bound", sharing.lowerBound},
            {"proved_best", sharing.isProvedBest}};
}

std::string stackText(const PlateStack& stack)
{
    std::string text;
    for (const Mass plate : stack) {
        text += (text.empty() ? "" : " ") + plate.number();
    }
    return text;
}

void printSharing(const RackSharing& sharing, const RackSharingTask& task)
{
    for (std::size_t rack = 0; rack < sharing.racks.size(); ++rack) {
        const SharedRack& shared = sharing.racks[rack];
        fmt::print("Rack {}: {} plate moves and {} hook moves in a round\n\n",
                   rack + 1,
                   shared.plateMoves,
                   shared.hookMoves);
        Table table({{"turn", Table::Align::Right, 4},
                     {"id", Table::Align::Left, 20},
                     {"load kg", Table::Align::Right, 8},
                     {"hole", Table::Align::Right, 4},
                     {"plates moved", Table::Align::Right, 12},
                     {"hooks", Table::Align::Right, 5},
                     {"each side, from the inside", Table::Align::Left, 34}});
        for (std::size_t at = 0; at < shared.turns.size(); ++at) {
            const RackTurn& turn = shared.turns[at];
            const RackLifter& lifter = task.lifters[turn.lifter];
            table.add({std::to_string(at + 1),
                       lifter.id,
                       lifter.load.number(),
                       lifter.hookHole ? std::to_string(*lifter.hookHole) : "",
                       std::to_string(turn.plateMoves),
                       std::to_string(turn.hookMoves),
                       stackText(turn.stack)});
        }
        fmt::print("{}\n", table.text());
    }
    const int moves = sharing.plateMoves + sharing.hookMoves;
    fmt::print("In all {} plate moves and {} hook moves in a round; what is moved before a turn "
               "stands beside it.\n",
               sharing.plateMoves,
               sharing.hookMoves);
    if (sharing.isProvedBest) {
        fmt::print("Proved: no other sharing has fewer than {} moves.\n", moves);
    } else {
        fmt::print("Not proved best: no sharing has fewer than {} moves, this one has {}.\n",
                   sharing.lowerBound,
                   moves);
    }
}

} // namespace

int runShareRacks(const ShareRacksOptions& options)
{
    const auto bytes = readFile(options.lifters);
    if (!bytes) {
        return kInputAtFault;
    }
    RackSharingTask task;
    task.racks = options.racks;
    task.bar = options.bar;
    task.plates = options.plates.empty() ? commonPlates() : options.plates;
    const auto stacks = PlateStacks::make(task.bar, task.plates);
    if (!stacks) {
        fmt::print(stderr, "{}\n", sentence(stacks.error()));
        return kWrongUsage;
    }
    storage::ImportReport report;
    task.lifters = readLifters({options.lifters, *bytes}, *stacks, report);
    printFaults(report);
    if (!report.faults.empty()) {
        return kInputAtFault;
    }
    const auto sharing = shareRacks(task);
    if (!sharing) {
        return atFault(options.lifters, sentence(sharing.error()));
    }
    if (options.json) {
        printJson(sharingJson(*sharing, task));
    } else {
        printSharing(*sharing, task);
    }
    return kDone;
}

} // namespace levelbar::cli
