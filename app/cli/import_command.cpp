// SPDX-FileCopyrightText: 2026 The Levelbar developers
// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/cli/command.h"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <cerrno>
#include <cstring>
#include <fstream>
#include <sstream>

namespace levelbar::cli {

namespace {

constexpr std::size_t kMostPrinted = 1000;

std::optional<std::string> readFile(const std::string& name)
{
    std::ifstream in(name, std::ios::binary);
    if (!in) {
        fmt::print(stderr, "{}: cannot be read ({})\n", name, std::strerror(errno));
        return std::nullopt;
    }
    std::ostringstream bytes;
    bytes << in.rdbuf();
    if (in.bad() || (bytes.fail() && in.peek() != std::ifstream::traits_type::eof())) {
        fmt::print(stderr, "{}: cannot be read\n", name);
        return std::nullopt;
    }
    return std::move(bytes).str();
}

nlohmann::ordered_json countsJson(const storage::ImportCounts& counts)
{
    return {{"added", counts.added}, {"updated", counts.updated}, {"unchanged", counts.unchanged}};
}

nlohmann::ordered_json reportJson(const storage::ImportReport& report, bool isWritten)
{
    nlohmann::ordered_json faults = nlohmann::ordered_json::array();
    for (const storage::ImportFault& fault : report.faults) {
        faults.push_back({{"file", fault.file},
                          {"line", fault.line},
                          {"column", fault.column},
                          {"text", sentence(fault.fault)}});
    }
    return {{"written", isWritten},
            {"members", countsJson(report.members)},
            {"sets", countsJson(report.sets)},
            {"tests", countsJson(report.tests)},
            {"classes_added", report.classesAdded},
            {"exercises_added", report.exercisesAdded},
            {"passed_over", report.passedOver},
            {"faults", faults}};
}

void printCounts(const char* what, const storage::ImportCounts& counts)
{
    fmt::print("{:<8} {:>9} added {:>9} updated {:>9} unchanged\n",
               what,
               counts.added,
               counts.updated,
               counts.unchanged);
}

} // namespace

void printFaults(const storage::ImportReport& report)
{
    std::size_t printed = 0;
    for (const storage::ImportFault& fault : report.faults) {
        if (printed == kMostPrinted) {
            fmt::print(stderr, "and {} faults more\n", report.faults.size() - printed);
            break;
        }
        fmt::print(stderr, "{}\n", text(fault));
        ++printed;
    }
}

namespace {

// Prints the outcome; the exit status.
int tell(const storage::ImportReport& report, const ImportOptions& options)
{
    const bool isSound = report.faults.empty();
    for (const std::string& notice : report.passedOver) {
        fmt::print(stderr, "{}\n", notice);
    }
    printFaults(report);
    if (options.json) {
        fmt::print("{}\n", reportJson(report, isSound && !options.dryRun).dump(2));
        return isSound ? kDone : kInputAtFault;
    }
    if (!isSound) {
        fmt::print(stderr, "Nothing was written: {} faults.\n", report.faults.size());
        return kInputAtFault;
    }
    printCounts("people", report.members);
    printCounts("sets", report.sets);
    printCounts("trials", report.tests);
    fmt::print("{} classes and {} exercises added.{}\n",
               report.classesAdded,
               report.exercisesAdded,
               options.dryRun ? " A dry run: nothing was written." : "");
    return kDone;
}

} // namespace

int runImport(const ImportOptions& options, const Clock& clock)
{
    if (options.members.empty() && options.sets.empty() && options.tests.empty()) {
        fmt::print(stderr, "Nothing to import: name a file with --members, --sets or --tests.\n");
        return kWrongUsage;
    }
    // The texts must outlive the import: the request only points at them.
    std::array<std::optional<std::string>, 3> texts;
    const std::array names = {&options.members, &options.sets, &options.tests};
    bool isReadable = true;
    for (std::size_t i = 0; i < names.size(); ++i) {
        if (!names.at(i)->empty()) {
            texts.at(i) = readFile(*names.at(i));
            isReadable = isReadable && texts.at(i).has_value();
        }
    }
    if (!isReadable) {
        return kInputAtFault;
    }
    storage::Logbook logbook = storage::Logbook::open(options.logbook, clock.now);
    storage::ImportRequest request;
    const auto source = [&](std::size_t i) -> std::optional<storage::ImportSource> {
        if (!texts.at(i)) {
            return std::nullopt;
        }
        return storage::ImportSource{*names.at(i), *texts.at(i)};
    };
    request.members = source(0);
    request.sets = source(1);
    request.tests = source(2);
    request.addExercises = options.addExercises;
    request.update = options.update;
    request.dryRun = options.dryRun;
    const storage::ImportReport report = storage::importCsv(logbook, request, clock.now);
    logbook.close();
    return tell(report, options);
}

} // namespace levelbar::cli
