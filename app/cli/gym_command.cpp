// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/command.h"
#include "app/cli/json_number.h"
#include "app/cli/json_print.h"
#include "app/cli/table.h"
#include "storage/exchange/kit_import.h"
#include "storage/gym_store.h"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

namespace levelbar::cli {

namespace {

using Json = nlohmann::ordered_json;

struct Line {
    std::string_view kind;
    Mass mass;
    int count = 1;
    std::string name;
};

std::vector<Line> linesOf(const Kit& kit)
{
    std::vector<Line> lines;
    for (const BarKind& bar : kit.bars) {
        lines.push_back({"bar", bar.mass, bar.count, bar.name});
    }
    for (const PlateKind& plate : kit.plates) {
        lines.push_back({"plate", plate.mass, plate.count, {}});
    }
    for (const HandWeight& piece : kit.handWeights) {
        const bool isDumbbell = piece.implement == Implement::Dumbbell;
        lines.push_back({isDumbbell ? "dumbbell" : "kettlebell", piece.mass, piece.count, {}});
    }
    lines.push_back({"collars", kit.collars, 1, {}});
    lines.push_back({"step", kit.stackStep, 1, {}});
    return lines;
}

void printKit(const Kit& kit, EffortScale scale)
{
    if (kit.isAssumed) {
        fmt::print("Nobody has said what this gym owns; this is assumed, as many as needed:\n\n");
    }
    Table table({{"kind", Table::Align::Left, 10},
                 {"mass", Table::Align::Right, 10},
                 {"count", Table::Align::Right, 5},
                 {"name", Table::Align::Left, 40}});
    for (const Line& line : linesOf(kit)) {
        table.add({std::string(line.kind),
                   line.mass.number() + " " + std::string(unitWord(line.mass.unit())),
                   kit.isAssumed ? "" : std::to_string(line.count),
                   line.name});
    }
    fmt::print("{}\nEffort is shown as {}.\n",
               table.text(),
               scale == EffortScale::Rpe ? "RPE, ten less the reserve" : "reps in reserve");
}

Json kitJson(const Kit& kit, EffortScale scale)
{
    Json pieces = Json::array();
    for (const Line& line : linesOf(kit)) {
        pieces.push_back({{"kind", line.kind},
                          {"mass", line.mass.number()},
                          {"unit", unitWord(line.mass.unit())},
                          {"count", line.count},
                          {"name", line.name}});
    }
    return {{"assumed", kit.isAssumed},
            {"effort", scale == EffortScale::Rpe ? "rpe" : "reserve"},
            {"pieces", pieces}};
}

// What the options ask to change; the exit status.
int change(const GymOptions& options, const Clock& clock)
{
    std::optional<Kit> kit;
    if (!options.kit.empty()) {
        const auto bytes = readFile(options.kit);
        if (!bytes) {
            return kInputAtFault;
        }
        storage::ImportReport report;
        kit = storage::readKit({options.kit, *bytes}, report);
        printFaults(report);
        if (!kit) {
            return kInputAtFault;
        }
    }
    storage::Logbook logbook = openForWriting(options.logbook, clock);
    storage::Action action(logbook, storage::ActionKind::EditGym, clock.now);
    if (kit) {
        storage::GymStore::setKit(action, *kit);
    }
    if (options.effort) {
        storage::GymStore::setEffortScale(action, *options.effort);
    }
    action.commit();
    logbook.close();
    return kDone;
}

} // namespace

int runGym(const GymOptions& options, const Clock& clock)
{
    if (!options.kit.empty() || options.effort) {
        const int status = change(options, clock);
        if (status != kDone) {
            return status;
        }
    }
    const storage::Logbook logbook = openForReading(options.logbook, clock);
    const storage::GymStore gym(logbook);
    if (options.json) {
        printJson(kitJson(gym.kit(), gym.effortScale()));
    } else {
        printKit(gym.kit(), gym.effortScale());
    }
    return kDone;
}

} // namespace levelbar::cli
